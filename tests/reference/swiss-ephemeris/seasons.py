"""Makes seasons.txt (equinoxes and solstices), solar-longitudes.txt (the Sun's longitude of 2000 at
meteor maxima) and approaches.txt (Moon and planets close together), from Swiss Ephemeris. Run:
    python3 seasons.py seasons > seasons.txt
    python3 seasons.py longitudes > solar-longitudes.txt
    python3 seasons.py approaches > approaches.txt
"""
import datetime
import itertools
import math
import sys

from swiss import EQUATORIAL, calc, iso, unix_seconds

J2000, NO_ABERRATION = 32, 1024
DAY = 86400
GOLDEN = (math.sqrt(5) - 1) / 2
FROM, TO = unix_seconds("2024-01-01T00:00:00Z"), unix_seconds("2032-01-01T00:00:00Z")
LONGITUDES = [283.15, 32.32, 45.5, 127, 140.0, 208, 235.27, 262.2, 270.7]
BRIGHT = ["Mercury", "Venus", "Mars", "Jupiter", "Saturn"]


def header(quantity, columns):
    print(f"# quantity: {quantity}")
    print("# authority: Swiss Ephemeris 2.10.03 with its DE431 files (Debian libswe2.0, swe-basic-data)")
    print("# settings: TT - UTC 69.184 s; geocentric; made by seasons.py")
    print(f"# made: {datetime.date.today()}")
    print(f"# {columns}")


def roots(longitude, wanted):
    def miss(at):
        return (longitude(at) - wanted + 180) % 360 - 180
    at = FROM
    while at < TO:
        if miss(at) < 0 <= miss(at + DAY) and miss(at) > -10:
            low, high = at, at + DAY
            while high - low > 0.5:
                middle = (low + high) / 2
                low, high = (middle, high) if miss(middle) < 0 else (low, middle)
            yield (low + high) / 2
        at += DAY


def vector(body, at):
    place = calc(body, at, EQUATORIAL)
    ra, dec = math.radians(place[0]), math.radians(place[1])
    return math.cos(dec) * math.cos(ra), math.cos(dec) * math.sin(ra), math.sin(dec)


def apart(one, other, at):
    u, v = vector(one, at), vector(other, at)
    return math.degrees(2 * math.asin(math.dist(u, v) / 2))


def approaches(one, other, limit):
    step, at = DAY / 2, FROM
    while at < TO:
        before, now, after = (apart(one, other, at + step * k) for k in (-1, 0, 1))
        if now <= before and now < after:
            low, high = at - step, at + step
            while high - low > 5:
                left, right = high - GOLDEN * (high - low), low + GOLDEN * (high - low)
                low, high = (low, right) if apart(one, other, left) < apart(one, other, right) else (left, high)
            when = (low + high) / 2
            if FROM <= when < TO and apart(one, other, when) <= limit:
                yield when, one, other, min(apart(one, "Sun", when), apart(other, "Sun", when))
        at += step


if sys.argv[1] == "seasons":
    header("apparent longitude of the Sun 0, 90, 180, 270 degrees", "degrees instant")
    for wanted in (0, 90, 180, 270):
        for at in roots(lambda when: calc("Sun", when, 0)[0], wanted):
            print(wanted, iso(at))
elif sys.argv[1] == "longitudes":
    header("geometric longitude of the Sun, equinox of 2000, at the maxima of showers", "degrees instant")
    for wanted in LONGITUDES:
        for at in roots(lambda when: calc("Sun", when, J2000 | NO_ABERRATION)[0], wanted):
            print(wanted, iso(at))
else:
    header("closest approaches: Moon and planet within 5 degrees, planets within 3, 12 or more from the Sun",
           "body body instant separation-deg elongation-deg")
    pairs = [("Moon", planet, 5) for planet in BRIGHT] + [(a, b, 3) for a, b in itertools.combinations(BRIGHT, 2)]
    for one, other, limit in pairs:
        for when, first, second, elongation in approaches(one, other, limit):
            if elongation >= 12:
                print(first, second, iso(when), f"{apart(first, second, when):.4f} {elongation:.3f}")
