"""The IAU SOFA routines through ERFA, for the scripts that make the tables here.

Needs Debian's python3-erfa. UTC stands in for UT1; no polar motion, no air.
"""
import datetime
import math
import warnings

import erfa

# ERFA calls years past its own leap-second table dubious; none has been announced since.
warnings.simplefilter("ignore", erfa.ErfaWarning)

AUTHORITY = f"IAU SOFA routines as ERFA {erfa.__version__} (Debian python3-erfa)"
SETTINGS = "UT1 = UTC, no polar motion, pressure 0, leap seconds as in ERFA"


def utc(moment):
    second = moment.second + moment.microsecond / 1e6
    return erfa.dtf2d("UTC", moment.year, moment.month, moment.day, moment.hour, moment.minute, second)


def iso(moment):
    return moment.isoformat(timespec="milliseconds").replace("+00:00", "Z")


def moment_of(*parts):
    return datetime.datetime(*parts, tzinfo=datetime.timezone.utc)


def tt(moment):
    return erfa.taitt(*erfa.utctai(*utc(moment)))


def apparent(ra, dec, motion, parallax, moment):
    """Right ascension and declination of the true equator and equinox of date, degrees.

    motion: arcseconds a year, in right ascension times cos(dec); parallax: arcseconds.
    """
    radians = [math.radians(ra), math.radians(dec)]
    pm_ra = math.radians(motion[0] / 3600) / math.cos(radians[1])
    pm_dec = math.radians(motion[1] / 3600)
    ri, di, eo = erfa.atci13(*radians, pm_ra, pm_dec, parallax, 0.0, *tt(moment))
    return math.degrees(erfa.anp(ri - eo)), math.degrees(di)


def observed(ra, dec, motion, parallax, moment, latitude, longitude, metres):
    """Airless altitude, azimuth from north, hour angle west positive; degrees."""
    radians = [math.radians(ra), math.radians(dec)]
    pm_ra = math.radians(motion[0] / 3600) / math.cos(radians[1])
    pm_dec = math.radians(motion[1] / 3600)
    azimuth, zenith, hour, _, _, _ = erfa.atco13(
        *radians, pm_ra, pm_dec, parallax, 0.0, *utc(moment), 0.0,
        math.radians(longitude), math.radians(latitude), metres, 0.0, 0.0, 0.0, 0.0, 0.0, 0.55,
    )
    return 90 - math.degrees(zenith), math.degrees(azimuth), math.degrees(hour)
