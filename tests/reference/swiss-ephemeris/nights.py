"""Makes nights.txt: twilights, rises and sets from Swiss Ephemeris positions.

Brute force: every two minutes from local noon to local noon, then halving. Run:
    python3 nights.py > nights.txt
"""
import datetime
import sys
import zoneinfo

from swiss import SITES, heights, iso, pheno, topocentric, TOPOCENTRIC, LIBRARY

STEP = 120
LEVELS = [("centre", -6), ("centre", -12), ("centre", -18)]
# A turn this close to a level is left out: two good ephemerides may disagree whether it is passed.
GRAZING_DEG = 6 / 3600


def noon(date, zone):
    return datetime.datetime(date.year, date.month, date.day, 12, tzinfo=zoneinfo.ZoneInfo(zone)).timestamp()


def scan(body, site, start, end):
    count = int((end - start) // STEP)
    times = [start + STEP * index for index in range(count)] + [end]
    return times, [heights(body, at, site) for at in times]


def halve(function, low, high):
    below = function(low) < 0
    while high - low > 0.0005:
        middle = (low + high) / 2
        if (function(middle) < 0) == below:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def crossings(body, site, times, seen, which, level):
    """(seconds, rising, seconds of time per arcsecond); None when a turn grazes the level."""
    def above(at):
        return heights(body, at, site)[which] - level

    values = [each[which] - level for each in seen]
    found = []
    for index in range(1, len(values)):
        if (values[index - 1] < 0) != (values[index] < 0):
            at = halve(above, times[index - 1], times[index])
            rate = abs(above(at + 1) - above(at - 1)) / 2 * 3600
            found.append((at, values[index] >= 0, 1 / rate))
        if 1 < index and abs(values[index - 1]) < 0.01:
            first, middle, last = values[index - 2], values[index - 1], values[index]
            if (middle - first) * (last - middle) <= 0:
                bend = first - 2 * middle + last
                turn = middle - (last - first) ** 2 / (8 * bend) if bend else middle
                if abs(turn) < GRAZING_DEG:
                    return None
    return found


def passage(found):
    dusk = next((each for each in found if not each[1]), None)
    dawn = next((each for each in found if each[1] and (dusk is None or each[0] > dusk[0])), None)
    return dusk, dawn


def night(site, date):
    name, latitude, longitude, metres, zone = site
    start, end = noon(date, zone), noon(date + datetime.timedelta(days=1), zone)
    events = []
    times, sun = scan("Sun", site, start, end)
    passages = []
    for which, level in [(1, 0), (0, -6), (0, -12), (0, -18)]:
        found = crossings("Sun", site, times, sun, which, level)
        if found is None:
            return None
        passages.append(passage(found))
    events = [each[0] for each in passages] + [each[1] for each in reversed(passages)]
    times, moon = scan("Moon", site, start, end)
    found = crossings("Moon", site, times, moon, 1, 0)
    if found is None:
        return None
    events.append(next((each for each in found if each[1]), None))
    events.append(next((each for each in found if not each[1]), None))
    topocentric("Moon", (start + end) / 2, latitude, longitude, metres)
    phase = pheno("Moon", (start + end) / 2, TOPOCENTRIC)
    lowest = min(each[0] for each in sun)
    return start, end, events, lowest, phase[0], phase[1]


def row(site, date, found):
    start, end, events, lowest, angle, lit = found
    shown = ["-" if each is None else f"{each[0] - start:.2f}/{each[2]:.3f}" for each in events]
    return " ".join([site[0], str(date), iso(start), iso(end), *shown, f"{lowest:.3f}", f"{lit:.5f}", f"{angle:.3f}"])


def dates_of(site):
    """Every 47th night of nine years, those with a clock change, and those at the edge of an event."""
    chosen = {datetime.date(2024, 1, 3) + datetime.timedelta(days=47 * index) for index in range(70)}
    day = datetime.date(2026, 1, 1)
    had = None
    while day < datetime.date(2027, 1, 1):
        next_day = day + datetime.timedelta(days=1)
        start, end = noon(day, site[4]), noon(next_day, site[4])
        if end - start != 86400:
            chosen.add(day)
        _, sun = scan_roughly(site, start, end)
        has = tuple((min(sun[which]) < level) + 2 * (max(sun[which]) > level) for which, level in [(1, 0), (0, -6), (0, -12), (0, -18)])
        if had is not None and has != had:
            chosen.update([day - datetime.timedelta(days=1), day])
        had = has
        day = next_day
    return sorted(chosen)


def scan_roughly(site, start, end):
    seen = [heights("Sun", start + 600 * index, site) for index in range(int((end - start) // 600) + 1)]
    return None, ([each[0] for each in seen], [each[1] for each in seen])


print("# quantity: the Sun's and the Moon's events between local noon and local noon")
print("# authority: Swiss Ephemeris 2.10.03 with its DE431 files (Debian libswe2.0, swe-basic-data)")
print("# settings: TT - UTC 69.184 s, UT1 = UTC; topocentric apparent places, true altitudes, height 0;")
print("#   twilights: centre at -6, -12, -18 degrees; rise and set: upper limb (Sun 959.63\" at 1 AU, Moon")
print("#   1737.4 km) with 34' of refraction; zones by Python's zoneinfo; made by nights.py")
print(f"# made: {datetime.date.today()}")
print("# columns: site date noon next-noon sunset civil-dusk nautical-dusk astronomical-dusk astronomical-dawn")
print("#   nautical-dawn civil-dawn sunrise moonrise moonset sun-lowest-deg moon-lit moon-phase-angle-deg")
print("#   an event: seconds after noon / seconds of time in which the body climbs or sinks 1 arcsecond; - none")
print("#   nights in which a turn comes within 6\" of a level are left out; lit share and angle: site, half-way")
for each_site in SITES:
    print(f"# site {each_site[0]} {each_site[1]} {each_site[2]} {each_site[3]} {each_site[4]}")
for each_site in SITES:
    for each_date in dates_of(each_site):
        result = night(each_site, each_date)
        if result is None:
            print(f"left out: {each_site[0]} {each_date}", file=sys.stderr)
        else:
            print(row(each_site, each_date, result))
