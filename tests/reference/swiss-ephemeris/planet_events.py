"""Makes planet-events.txt: oppositions, conjunctions with the Sun and greatest elongations, from
Swiss Ephemeris places: steps of a day, then halving or golden section. Run:
    python3 planet_events.py > planet-events.txt
"""
import datetime
import math

from swiss import EQUATORIAL, calc, iso, unix_seconds

DAY = 86400
GOLDEN = (math.sqrt(5) - 1) / 2
FROM, TO = unix_seconds("2024-01-01T00:00:00Z"), unix_seconds("2034-01-01T00:00:00Z")


def ahead(body, at):
    """Apparent geocentric longitude less the Sun's, in [-180, 180)."""
    return (calc(body, at, 0)[0] - calc("Sun", at, 0)[0] + 180) % 360 - 180


def elongation(body, at):
    a, b = calc(body, at, EQUATORIAL), calc("Sun", at, EQUATORIAL)
    ra1, de1, ra2, de2 = (math.radians(x) for x in (a[0], a[1], b[0], b[1]))
    u = (math.cos(de1) * math.cos(ra1), math.cos(de1) * math.sin(ra1), math.sin(de1))
    v = (math.cos(de2) * math.cos(ra2), math.cos(de2) * math.sin(ra2), math.sin(de2))
    cross = (u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0])
    return math.degrees(math.atan2(math.hypot(*cross), sum(a * b for a, b in zip(u, v))))


def root(function, low, high):
    below = function(low) < 0
    while high - low > 1:
        middle = (low + high) / 2
        if (function(middle) < 0) == below:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def peak(function, low, high):
    while high - low > 60:
        left, right = high - GOLDEN * (high - low), low + GOLDEN * (high - low)
        if function(left) < function(right):
            low = left
        else:
            high = right
    return (low + high) / 2


def events(body):
    inner = body in ("Mercury", "Venus")
    at = FROM
    while at < TO:
        for target in [0] if inner else [0, 180]:
            def miss(when):
                return (ahead(body, when) - target + 180) % 360 - 180
            one, other = miss(at), miss(at + DAY)
            if (one < 0) != (other < 0) and abs(one) < 90:
                when = root(miss, at, at + DAY)
                near = calc(body, when, 0)[2] < calc("Sun", when, 0)[2]
                kind = ("inferior-conjunction" if near else "superior-conjunction") if inner else "opposition" if target else "conjunction"
                yield when, kind
        if inner:
            before, now, after = (elongation(body, at + DAY * step) for step in (-1, 0, 1))
            if before < now >= after and now > 10:
                when = peak(lambda t: elongation(body, t), at - DAY, at + DAY)
                yield when, "greatest-elongation-" + ("east" if ahead(body, when) > 0 else "west")
        at += DAY


print("# quantity: oppositions and conjunctions (apparent geocentric longitudes 180 or 0 degrees apart), greatest")
print("#   elongations (greatest geocentric angle from the Sun)")
print("# authority: Swiss Ephemeris 2.10.03 with its DE431 files (Debian libswe2.0, swe-basic-data)")
print("# settings: TT - UTC 69.184 s; made by planet_events.py")
print(f"# made: {datetime.date.today()}")
print("# planet kind instant elongation-deg")
for planet in ("Mercury", "Venus", "Mars", "Jupiter", "Saturn", "Uranus", "Neptune"):
    for when, kind in sorted(events(planet)):
        print(planet, kind, iso(when), f"{elongation(planet, when):.4f}")
