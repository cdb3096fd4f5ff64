"""Writes pole-stars.txt: places of the pole stars by the IAU SOFA routines.

Run with Debian's python3-erfa: python3 pole-stars.py > pole-stars.txt
Each row goes through eraAtco13 (catalogue to observed), with UT1 = UTC, no polar
motion and no air.
"""
import erfa
import numpy as np

# name, RA and declination J2000 (degrees), proper motion in RA times cos(dec) and in
# declination (arcsec a year), parallax (arcsec), radial velocity (km/s)
STARS = [
    ("Polaris", 37.9545608, 89.264109, 0.04448, -0.01185, 0.00754, -16.4),
    ("sigma Octantis", 317.1952649, -88.9564995, 0.026323, 0.004721, 0.0111, 11.9),
    ("tau Octantis", 352.0157729, -87.4822131, 0.016782, 0.011957, 0.0068, 31.0),
    ("chi Octantis", 283.6964193, -87.60584331, -0.036555, -0.135715, 0.01251, 33.6),
    ("upsilon Octantis", 337.9063, -85.9673, 0.0, 0.0, 0.0, 0.0),
]
NORTHERN_SITES = [(54.5, -2.6), (28.3, -16.5), (69.65, 18.95), (0.2, 36.8)]
SOUTHERN_SITES = [(-33.93, 18.42), (-45.87, 170.5), (-0.2, -78.5)]
YEARS = [1990, 2000, 2013, 2026, 2040, 2060]
MOMENTS = [(1, 15, 5, 30), (4, 2, 21, 10), (7, 20, 0, 45), (10, 3, 22, 0)]

print("# quantity: hour angle (hours), distance from the pole (arcmin), airless altitude and azimuth (deg)")
print("# authority: IAU SOFA routines through ERFA %s, eraAtco13, UT1 = UTC, no polar motion, no air" % erfa.__version__)
print("# columns: star; instant UTC; latitude; longitude; hour angle; pole distance; altitude; azimuth")
for name, ra, dec, pm_ra, pm_dec, parallax, velocity in STARS:
    sites = NORTHERN_SITES if dec > 0 else SOUTHERN_SITES
    for year in YEARS:
        for month, day, hour, minute in MOMENTS:
            for latitude, longitude in sites:
                utc1, utc2 = erfa.dtf2d("UTC", year, month, day, hour, minute, 0.0)
                motion_ra = np.radians(pm_ra / 3600) / np.cos(np.radians(dec))
                azimuth, zenith, hour_angle, declination, _, _ = erfa.atco13(
                    np.radians(ra), np.radians(dec), motion_ra, np.radians(pm_dec / 3600),
                    parallax, velocity, utc1, utc2, 0.0,
                    np.radians(longitude), np.radians(latitude), 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.55)
                print("%s;%04d-%02d-%02dT%02d:%02dZ;%g;%g;%.6f;%.4f;%.6f;%.6f" % (
                    name, year, month, day, hour, minute, latitude, longitude,
                    np.degrees(hour_angle) / 15 % 24, (90 - abs(np.degrees(declination))) * 60,
                    90 - np.degrees(zenith), np.degrees(azimuth)))
