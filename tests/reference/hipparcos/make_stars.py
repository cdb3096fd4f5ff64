"""Writes bright-stars.txt from the star table of PyEphem (Debian's python3-ephem 4.1.4).

PyEphem's table is made from the Hipparcos catalogue (ESA 1997, I/239), moved to
2000.0: a second source beside SIMBAD's values, which rest on the new reduction of 2007.
"""
from ephem import stars

print("# quantity: J2000 place, degrees; proper motion, milliarcseconds a year (in right ascension times cos dec); V or Hp-based magnitude")
print("# authority: Hipparcos catalogue (ESA 1997, CDS I/239), by way of PyEphem 4.1.4")
print("# settings: make_stars.py beside this file")
print("# retrieved: 2026-11-25")
for line in stars.db.strip().splitlines():
    name, _, ra, dec, magnitude = line.split(",")
    ra_hours, pm_ra = ra.split("|")
    dec_degrees, pm_dec = dec.split("|")
    place = f"{float(ra_hours) * 15:.6f} {float(dec_degrees):.6f}"
    print(f"{name.replace(chr(32), chr(95))} {place} {pm_ra} {pm_dec} {magnitude}")
