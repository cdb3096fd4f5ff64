"""Writes the small FITS files beside it with astropy, a writer independent of the project.

Run with Debian's python3-astropy: python3 make-headers.py
"""
import os
import numpy as np
from astropy.io import fits

HERE = os.path.dirname(os.path.abspath(__file__))


def write(name, cards, extra=0):
    header = fits.Header()
    for key, value in cards:
        header[key] = value
    for line in range(extra):
        header.add_history("line %04d of a long history" % line)
    data = np.arange(6, dtype=np.int16).reshape(2, 3)
    fits.PrimaryHDU(data, header).writeto(os.path.join(HERE, name), overwrite=True)


LIGHT = [
    ("OBJECT", "NGC 6888"), ("IMAGETYP", "Light Frame"), ("EXPTIME", 180.0), ("FILTER", "OIII"),
    ("GAIN", 100), ("CCD-TEMP", -10.1), ("DATE-OBS", "2026-10-03T21:40:00.250"), ("ROTATANG", 45.5),
]

write("light.fits", LIGHT)
write("quoted.fits", [("OBJECT", "Barnard's Loop"), ("EXPOSURE", 1.5e2), ("DATE-OBS", "2026-10-04T01:02:03")])
write("flat.fits", [("IMAGETYP", "FLAT"), ("EXPTIME", 0.8), ("FILTER", "OIII"), ("GAIN", 100),
                    ("DATE-OBS", "2026-10-04T06:10:00"), ("ROTATANG", 45.4)])
write("dark.fits", [("IMAGETYP", "Dark Frame"), ("EXPTIME", 180.0), ("GAIN", 100), ("CCD-TEMP", -10.0),
                    ("DATE-OBS", "2026-10-04T02:00:00")])
write("long.fits", LIGHT, extra=400)
write("endless.fits", LIGHT, extra=1300)
write("no-exposure.fits", [("OBJECT", "M 33"), ("DATE-OBS", "2026-10-03T21:40:00")])
write("script.fits", [("OBJECT", "<script>alert(1)</script>"), ("EXPTIME", 60.0),
                      ("DATE-OBS", "2026-10-03T21:40:00")])
write("hot.fits", [("OBJECT", "M 33"), ("EXPTIME", 60.0), ("CCD-TEMP", 400.0), ("DATE-OBS", "2026-10-03T21:40:00")])
