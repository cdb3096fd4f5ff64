"""Swiss Ephemeris (DE431 files) through ctypes, for the scripts that make the tables here.

Needs Debian's libswe2.0 and swe-basic-data.
"""
import ctypes
import datetime
import math

LIBRARY = ctypes.CDLL("libswe.so.2")
LIBRARY.swe_set_ephe_path(b"/usr/share/libswe/ephe")
# Civil time has had no leap second since 2017: TT - UTC = 37 s + 32.184 s; UTC stands in for UT1.
LIBRARY.swe_set_delta_t_userdef.argtypes = [ctypes.c_double]
LIBRARY.swe_set_delta_t_userdef(69.184 / 86400)

Six = ctypes.c_double * 6
Three = ctypes.c_double * 3
Twenty = ctypes.c_double * 20
Text = ctypes.c_char * 256

LIBRARY.swe_set_topo.argtypes = [ctypes.c_double] * 3
LIBRARY.swe_calc_ut.argtypes = [ctypes.c_double, ctypes.c_int32, ctypes.c_int32, Six, Text]
LIBRARY.swe_azalt.argtypes = [ctypes.c_double, ctypes.c_int32, Three, ctypes.c_double, ctypes.c_double, Three, Three]
LIBRARY.swe_pheno_ut.argtypes = [ctypes.c_double, ctypes.c_int32, ctypes.c_int32, Twenty, Text]

SWISS_FILES = 2
EQUATORIAL = 2048
TOPOCENTRIC = 32768
BODIES = {"Sun": 0, "Moon": 1, "Mercury": 2, "Venus": 3, "Mars": 4, "Jupiter": 5, "Saturn": 6, "Uranus": 7, "Neptune": 8}
AU_KM = 149597870.7
UNIX_EPOCH_JD = 2440587.5

# name, latitude, longitude, metres, zone
SITES = [
    ("south-polar-coast", -78.0, 166.67, 24, "Antarctica/McMurdo"),
    ("antarctic-circle", -67.57, -68.13, 4, "Antarctica/Rothera"),
    ("beagle-channel", -54.8, -68.3, 20, "America/Argentina/Ushuaia"),
    ("cape", -33.93, 18.42, 10, "Africa/Johannesburg"),
    ("lord-howe", -31.55, 159.08, 5, "Australia/Lord_Howe"),
    ("equator", -0.18, -78.47, 2850, "America/Guayaquil"),
    ("high-island", 19.82, -155.47, 4205, "Pacific/Honolulu"),
    ("himalaya", 27.7, 85.3, 1400, "Asia/Kathmandu"),
    ("west-of-its-zone", 39.47, 75.99, 1289, "Asia/Shanghai"),
    ("great-lakes", 43.65, -79.38, 76, "America/Toronto"),
    ("avalon", 47.56, -52.71, 100, "America/St_Johns"),
    ("fells", 54.5, -2.6, 250, "Europe/London"),
    ("baltic", 59.33, 18.07, 15, "Europe/Stockholm"),
    ("iceland", 64.13, -21.9, 30, "Atlantic/Reykjavik"),
    ("finnmark", 70.0, 23.3, 20, "Europe/Oslo"),
]


def julian_day(seconds):
    """Of Unix seconds."""
    return seconds / 86400 + UNIX_EPOCH_JD


def unix_seconds(text):
    return datetime.datetime.fromisoformat(text.replace("Z", "+00:00")).timestamp()


def iso(seconds):
    moment = datetime.datetime.fromtimestamp(seconds, datetime.timezone.utc)
    return moment.isoformat(timespec="milliseconds").replace("+00:00", "Z")


def calc(body, seconds, flags):
    out, error = Six(), Text()
    got = LIBRARY.swe_calc_ut(julian_day(seconds), BODIES[body], SWISS_FILES | flags, out, error)
    # Without its files the library falls back to a poorer theory: that must not pass unseen.
    if got < 0 or not got & SWISS_FILES:
        raise RuntimeError(error.value)
    return out


def pheno(body, seconds, flags):
    """Phase angle, lit fraction, elongation, diameter (degrees), magnitude."""
    out, error = Twenty(), Text()
    if LIBRARY.swe_pheno_ut(julian_day(seconds), BODIES[body], SWISS_FILES | flags, out, error) < 0:
        raise RuntimeError(error.value)
    return out


def topocentric(body, seconds, latitude, longitude, metres):
    """Right ascension and declination of date, AU, true altitude, azimuth from north; degrees."""
    LIBRARY.swe_set_topo(longitude, latitude, metres)
    place = calc(body, seconds, EQUATORIAL | TOPOCENTRIC)
    seen = Three()
    LIBRARY.swe_azalt(julian_day(seconds), 1, Three(longitude, latitude, metres), 0, 10, Three(place[0], place[1], 1), seen)
    return place[0], place[1], place[2], seen[1], (seen[0] + 180) % 360


RADIUS_KM = {"Sun": math.sin(math.radians(959.63 / 3600)) * AU_KM, "Moon": 1737.4}


def heights(body, seconds, site):
    """Altitude of the centre, and of the upper limb lifted by 34', over a site at height 0."""
    _, latitude, longitude, _, _ = site
    _, _, distance, altitude, _ = topocentric(body, seconds, latitude, longitude, 0)
    semidiameter = math.degrees(math.asin(RADIUS_KM[body] / (distance * AU_KM)))
    return altitude, altitude + semidiameter + 34 / 60
