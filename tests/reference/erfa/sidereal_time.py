"""Makes sidereal-time.txt: apparent sidereal time at Greenwich. Run:
    python3 sidereal_time.py > sidereal-time.txt
"""
import datetime
import math

import erfa

from sofa import AUTHORITY, SETTINGS, iso, moment_of, tt, utc

print("# quantity: apparent sidereal time at Greenwich (IAU 2006 precession, IAU 2000A nutation), degrees")
print(f"# authority: {AUTHORITY}")
print(f"# settings: {SETTINGS}; gst06a; made by sidereal_time.py")
print(f"# made: {datetime.date.today()}")
moment = moment_of(1990, 3, 1, 5, 17, 33)
while moment.year < 2061:
    print(iso(moment), f"{math.degrees(erfa.gst06a(*utc(moment), *tt(moment))):.7f}")
    moment += datetime.timedelta(days=511, hours=7, minutes=13)
