"""Makes moon-phases.txt: new, quarter and full Moons from Swiss Ephemeris. Run:
    python3 moon_phases.py > moon-phases.txt
"""
import datetime

from swiss import calc, iso, unix_seconds

NAMES = {0: "new", 90: "first-quarter", 180: "full", 270: "last-quarter"}


def ahead(at):
    """Apparent geocentric longitude of the Moon less the Sun's."""
    return (calc("Moon", at, 0)[0] - calc("Sun", at, 0)[0]) % 360


print("# quantity: instants at which the Moon's apparent longitude exceeds the Sun's by 0, 90, 180, 270 degrees")
print("# authority: Swiss Ephemeris 2.10.03 with its DE431 files (Debian libswe2.0, swe-basic-data)")
print("# settings: TT - UTC 69.184 s; geocentric, apparent; made by moon_phases.py")
print(f"# made: {datetime.date.today()}")
STEP = 86400
at = unix_seconds("2024-01-01T00:00:00Z")
before = ahead(at)
while at < unix_seconds("2033-01-01T00:00:00Z"):
    after = ahead(at + STEP)
    for target, name in NAMES.items():
        if (before - target + 180) % 360 < 180 <= (after - target + 180) % 360:
            low, high = at, at + STEP
            while high - low > 0.001:
                middle = (low + high) / 2
                if (ahead(middle) - target + 180) % 360 < 180:
                    low = middle
                else:
                    high = middle
            print(name, iso((low + high) / 2))
    before = after
    at += STEP
