"""Makes fixed-objects.txt: airless altitude and azimuth of J2000 places. Run:
    python3 fixed_objects.py > fixed-objects.txt
"""
import datetime

from sofa import AUTHORITY, SETTINGS, apparent, iso, moment_of, observed

# J2000 degrees, round numbers: near M31, M33, M42, NGC 6888, the Veil, M27, the Magellanic Clouds,
# the ecliptic, both poles and 0h.
PLACES = [
    (10.68, 41.27), (23.46, 30.66), (83.82, -5.39), (303.03, 38.35), (312.75, 30.7), (299.9, 22.72),
    (80.9, -69.75), (13.2, -72.8), (201.3, -47.48), (266.4, -29.0), (56.75, 24.12), (0.02, 0.01),
    (359.98, 61.4), (38.4, 61.4), (120.0, 88.9), (240.0, -88.7), (180.0, 2.0), (148.9, 69.07),
]
SITES = [
    (-78.0, 166.67, 24), (-67.57, -68.13, 4), (-54.8, -68.3, 20), (-33.93, 18.42, 10), (-0.18, -78.47, 2850),
    (19.82, -155.47, 4205), (27.7, 85.3, 1400), (43.65, -79.38, 76), (54.5, -2.6, 250), (64.13, -21.9, 30),
    (70.0, 23.3, 20),
]

print("# quantity: airless altitude, azimuth from north, hour angle west positive, and apparent place of date")
print(f"# authority: {AUTHORITY}")
print(f"# settings: {SETTINGS}; atco13, atci13; no proper motion, no parallax; made by fixed_objects.py")
print(f"# made: {datetime.date.today()}")
print("# ra-deg dec-deg instant latitude longitude metres altitude-deg azimuth-deg hour-angle-deg")
print("#   ra-of-date-deg dec-of-date-deg")
moment = moment_of(2024, 1, 2, 20, 41, 7)
index = 0
while moment.year < 2034:
    ra, dec = PLACES[index % len(PLACES)]
    latitude, longitude, metres = SITES[index % len(SITES)]
    altitude, azimuth, hour = observed(ra, dec, (0, 0), 0.0, moment, latitude, longitude, metres)
    ra_of_date, dec_of_date = apparent(ra, dec, (0, 0), 0.0, moment)
    print(
        ra, dec, iso(moment), latitude, longitude, metres, f"{altitude:.7f} {azimuth:.7f} {hour:.6f}",
        f"{ra_of_date:.7f} {dec_of_date:.7f}",
    )
    moment += datetime.timedelta(days=9, hours=3, minutes=47, seconds=11)
    index += 1
