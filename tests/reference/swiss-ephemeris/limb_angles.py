"""Makes limb-angles.txt: how the Moon's bright limb and celestial north lie against the zenith, seen
from a site, from Swiss Ephemeris places and plain geometry in altitude and azimuth. Run:
    python3 limb_angles.py > limb-angles.txt
"""
import datetime
import math

from swiss import iso, topocentric, unix_seconds

SITES = [("fifty-north", 50.0, 8.0, 100), ("equator", 0.0, 35.0, 1200), ("thirty-five-south", -35.0, 149.0, 600)]


def vector(altitude, azimuth):
    """North, east, up."""
    h, a = math.radians(altitude), math.radians(azimuth)
    return math.cos(h) * math.cos(a), math.cos(h) * math.sin(a), math.sin(h)


def angle_from_zenith(at, towards):
    """Degrees anticlockwise from the zenith, as one who looks at the first place sees it."""
    dot = sum(a * b for a, b in zip(at, towards))
    flat = [b - dot * a for a, b in zip(at, towards)]
    up = [(1 if i == 2 else 0) - at[2] * at[i] for i in range(3)]
    # To the left of one who looks at it: up turned a quarter about the line of sight, towards smaller azimuths.
    left = [at[1], -at[0], 0]
    norm = math.hypot(*up)
    return math.degrees(math.atan2(sum(a * b for a, b in zip(flat, left)) / math.hypot(*left),
                                   sum(a * b for a, b in zip(flat, up)) / norm))


print("# quantity: angle from the zenith, anticlockwise on the sky, of the Moon's bright limb (the great circle")
print("#   to the Sun) and of celestial north, at the Moon's centre; the Moon low, rising and setting")
print("# authority: Swiss Ephemeris 2.10.03 with its DE431 files (Debian libswe2.0, swe-basic-data)")
print("# settings: TT - UTC 69.184 s, UT1 = UTC; topocentric, airless; made by limb_angles.py")
print(f"# made: {datetime.date.today()}")
print("# site latitude longitude metres instant moon-altitude moon-azimuth limb-deg north-deg")
for name, latitude, longitude, metres in SITES:
    for offset in range(0, 29, 4):
        at = unix_seconds("2026-09-12T00:00:00Z") + 86400 * offset
        before = None
        for step in range(0, 24 * 12):
            now = at + 300 * step
            place = topocentric("Moon", now, latitude, longitude, metres)
            if before is not None and (before < 8) != (place[3] < 8):
                sun = topocentric("Sun", now, latitude, longitude, metres)
                # Where nearly full or new, the limb's angle trembles with a few arcseconds.
                moon = vector(place[3], place[4])
                limb = angle_from_zenith(moon, vector(sun[3], sun[4]))
                north = angle_from_zenith(moon, vector(latitude, 0))
                print(name, latitude, longitude, metres, iso(now), f"{place[3]:.4f} {place[4]:.4f} {limb:.4f} {north:.4f}")
            before = place[3]
