"""Makes solar-eclipses.txt and lunar-eclipses.txt from Swiss Ephemeris's own eclipse routines. Run:
    python3 eclipses.py solar > solar-eclipses.txt
    python3 eclipses.py lunar > lunar-eclipses.txt
"""
import ctypes
import datetime
import sys

from swiss import LIBRARY, SITES, SWISS_FILES, Text, Three, Twenty, UNIX_EPOCH_JD, iso, julian_day, unix_seconds

Ten = ctypes.c_double * 10
LIBRARY.swe_sol_eclipse_when_loc.argtypes = [ctypes.c_double, ctypes.c_int32, Three, Ten, Twenty, ctypes.c_int32, Text]
LIBRARY.swe_lun_eclipse_when.argtypes = [ctypes.c_double, ctypes.c_int32, ctypes.c_int32, Ten, ctypes.c_int32, Text]
LIBRARY.swe_lun_eclipse_how.argtypes = [ctypes.c_double, ctypes.c_int32, Three, Twenty, Text]

TOTAL, ANNULAR, PARTIAL, PENUMBRAL = 4, 8, 16, 64
FROM, TO = "2024-01-01T00:00:00Z", "2042-01-01T00:00:00Z"
# In the paths of 2024, 2026, 2027 and 2030 besides.
PATHS = [("texas", 31.1, -97.7, 250, "-"), ("castile", 42.34, -3.7, 860, "-"), ("upper-egypt", 25.7, 32.64, 80, "-"),
         ("snaefellsnes", 64.8, -23.7, 20, "-"), ("algeria", 36.7, 3.1, 150, "-"), ("rapa-nui", -27.12, -109.35, 50, "-")]


def shown(day):
    return "-" if day == 0 else iso((day - UNIX_EPOCH_JD) * 86400)


def header(quantity, columns):
    print(f"# quantity: {quantity}")
    print("# authority: Swiss Ephemeris 2.10.03 with its DE431 files (Debian libswe2.0, swe-basic-data)")
    print("# settings: TT - UTC 69.184 s, UT1 = UTC; made by eclipses.py")
    print(f"# made: {datetime.date.today()}")
    print(f"# {columns}")


def solar():
    header("local circumstances of solar eclipses, contacts of the discs without regard to the horizon",
           "site latitude longitude metres kind first second greatest third fourth magnitude obscuration sun-altitude")
    for name, latitude, longitude, metres, _ in SITES + PATHS:
        day, end = julian_day(unix_seconds(FROM)), julian_day(unix_seconds(TO))
        while True:
            times, looks, error = Ten(), Twenty(), Text()
            got = LIBRARY.swe_sol_eclipse_when_loc(day, SWISS_FILES, Three(longitude, latitude, metres), times, looks, 0, error)
            if got < 0:
                raise RuntimeError(error.value)
            if times[0] > end:
                break
            kind = "total" if got & TOTAL else "annular" if got & ANNULAR else "partial"
            # Near the limit of visibility the routine gives the greatest phase above the horizon, which is no
            # true greatest; and of a mere graze its contacts do not come in order: both are left out.
            if looks[5] > 1 and times[1] < times[0] < times[4]:
                print(name, latitude, longitude, metres, kind, shown(times[1]), shown(times[2]), shown(times[0]),
                      shown(times[3]), shown(times[4]), f"{looks[8]:.5f} {looks[2]:.5f} {looks[5]:.4f}")
            day = times[0] + 5


def lunar():
    header("lunar eclipses: contacts of the Moon with penumbra and umbra, magnitudes",
           "kind penumbra-begins partial-begins total-begins greatest total-ends partial-ends penumbra-ends umbral penumbral")
    day, end = julian_day(unix_seconds(FROM)), julian_day(unix_seconds(TO))
    while True:
        times, looks, error = Ten(), Twenty(), Text()
        got = LIBRARY.swe_lun_eclipse_when(day, SWISS_FILES, 0, times, 0, error)
        if got < 0:
            raise RuntimeError(error.value)
        if times[0] > end:
            break
        LIBRARY.swe_lun_eclipse_how(times[0], SWISS_FILES, Three(0, 0, 0), looks, error)
        kind = "total" if got & TOTAL else "partial" if got & PARTIAL else "penumbral"
        print(kind, *(shown(times[i]) for i in (6, 2, 4, 0, 5, 3, 7)), f"{looks[0]:.5f} {looks[1]:.5f}")
        day = times[0] + 5


solar() if sys.argv[1] == "solar" else lunar()
