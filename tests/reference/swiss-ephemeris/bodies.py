"""Makes bodies.txt: topocentric places of Sun, Moon and planets from Swiss Ephemeris. Run:
    python3 bodies.py > bodies.txt
"""
import datetime

from swiss import BODIES, SITES, TOPOCENTRIC, iso, pheno, topocentric, unix_seconds

print("# quantity: topocentric apparent place (true equator of date), true altitude, azimuth from north,")
print("#   distance, semidiameter, magnitude, lit share, phase angle")
print("# authority: Swiss Ephemeris 2.10.03 with its DE431 files (Debian libswe2.0, swe-basic-data)")
print("# settings: TT - UTC 69.184 s, UT1 = UTC; made by bodies.py")
print(f"# made: {datetime.date.today()}")
print("# body instant latitude longitude metres ra-deg dec-deg altitude-deg azimuth-deg au semidiameter-arcsec")
print("#   magnitude lit phase-angle-deg")
instant = unix_seconds("2024-01-05T03:17:00Z")
count = 0
while instant < unix_seconds("2033-01-01T00:00:00Z"):
    name, latitude, longitude, metres, _ = SITES[count % len(SITES)]
    for body in BODIES:
        ra, dec, au, altitude, azimuth = topocentric(body, instant, latitude, longitude, metres)
        looks = pheno(body, instant, TOPOCENTRIC)
        print(
            body, iso(instant), latitude, longitude, metres, f"{ra:.6f} {dec:.6f} {altitude:.6f} {azimuth:.6f} {au:.8f}",
            f"{looks[3] * 1800:.3f} {looks[4]:.3f} {looks[1]:.5f} {looks[0]:.4f}",
        )
    instant += 86400 * 53 + 3600 * 7 + 1234.5
    count += 1
