"""Gnomonic projections and position angles by astropy (wcslib's TAN, IAU routines).

Run with Debian's python3-astropy; prints the table of gnomonic.txt.
"""

import itertools

import astropy
import numpy as np
from astropy import units as u
from astropy.coordinates import SkyCoord
from astropy.wcs import WCS

CONTACTS = [
    (0.02, 0.0),
    (359.9, 41.3),
    (38.2, 61.45),
    (120.0, 85.0),
    (12.5, -89.2),
    (200.0, 90.0),
    (83.8, -5.4),
]
OFFSETS = [(0.0, 0.0), (3.0, 0.0), (-3.0, 0.0), (0.0, 2.5), (-4.0, -3.0), (6.0, 5.5)]
STEP_DEG = 1e-4

print("# quantity: J2000 place of a point on the tangent plane, position angle there of the plane's north")
print(f"# authority: astropy {astropy.__version__}: WCS with RA---TAN, DEC--TAN (wcslib); SkyCoord.position_angle")
print("# settings: lonpole 180; xi towards east, eta towards north, degrees; the angle is the mean of those")
print("#   over a step of 1e-4 deg before and after")
print("# columns: contact ra, contact dec, xi, eta, ra, dec, angle; degrees")
for (ra, dec), (xi, eta) in itertools.product(CONTACTS, OFFSETS):
    plane = WCS(naxis=2)
    plane.wcs.ctype = ["RA---TAN", "DEC--TAN"]
    plane.wcs.crval = [ra, dec]
    plane.wcs.crpix = [0, 0]
    plane.wcs.lonpole = 180
    plane.wcs.cdelt = [1, 1]
    plane.wcs.cunit = ["deg", "deg"]
    plane.wcs.set()

    def place(x, y):
        lon, lat = plane.wcs.p2s([[x, y]], 1)["world"][0]
        return SkyCoord(lon * u.deg, lat * u.deg)

    here, before, after = place(xi, eta), place(xi, eta - STEP_DEG), place(xi, eta + STEP_DEG)
    angles = [here.position_angle(after).rad, (here.position_angle(before).rad + np.pi)]
    angle = np.degrees(np.angle(np.mean(np.exp(1j * np.array(angles))))) % 360
    print(f"{ra} {dec} {xi} {eta} {here.ra.deg:.9f} {here.dec.deg:.9f} {angle:.6f}")
