"""Makes transits.txt: upper transits of J2000 places. Run:
    python3 transits.py > transits.txt
"""
import datetime

from sofa import AUTHORITY, SETTINGS, iso, moment_of, observed

PLACES = [(10.68, 41.27), (83.82, -5.39), (303.03, 38.35), (201.3, -47.48), (0.02, 0.01), (120.0, 85.0), (240.0, -85.0)]
SITES = [(-78.0, 166.67), (-33.93, 18.42), (-0.18, -78.47), (54.5, -2.6), (70.0, 23.3)]


def hour_angle(place, site, moment):
    return observed(*place, (0, 0), 0.0, moment, *site, 0.0)[2]


print("# quantity: the first upper transit after an instant")
print(f"# authority: {AUTHORITY}")
print(f"# settings: {SETTINGS}; atco13's hour angle brought to zero; made by transits.py")
print(f"# made: {datetime.date.today()}")
print("# columns: ra-deg dec-deg latitude longitude from transit")
start = moment_of(2024, 1, 9, 4, 20)
for index in range(70):
    place, site = PLACES[index % len(PLACES)], SITES[index % len(SITES)]
    moment = start + datetime.timedelta(seconds=(-hour_angle(place, site, start) % 360) / 360 * 86164.0905)
    for _ in range(5):
        moment -= datetime.timedelta(seconds=hour_angle(place, site, moment) / 360 * 86164.0905)
    print(*place, *site, iso(start), iso(moment))
    start += datetime.timedelta(days=41, hours=5, minutes=17)
