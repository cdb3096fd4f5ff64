"""Writes places.txt: OpenNGC's places and extents of the NGC and IC objects that the overlay names.

OpenNGC (CC BY-SA 4.0, from NED, SIMBAD and HyperLeda) is compiled into Debian's
libastrometry0 (0.93, package astrometry.net); its table `ngc_entries` is read here.

    python3 make_places.py LIBASTROMETRY_SO SHOWPIECE_TABLE... > places.txt
"""
import re
import struct
import subprocess
import sys

library, *tables = sys.argv[1:]
symbols = subprocess.run(["nm", "-DS", library], capture_output=True, text=True, check=True).stdout
offset, size = next((int(a, 16), int(b, 16)) for a, b in re.findall(r"(\w+) (\w+) D ngc_entries", symbols))
content = open(library, "rb").read()
# The writable segment is mapped where it lies in the file, so an address is an offset.
known = {}
for start in range(offset, offset + size, 20):
    is_ngc, number, ra, dec, major = struct.unpack("<iifff", content[start : start + 20])
    known["NGC" if is_ngc & 255 else "IC", number] = (ra, dec, major)

print("# quantity: J2000 place, degrees, and major axis, arcminutes (0: unknown), of NGC and IC objects")
print("# authority: OpenNGC (https://github.com/mattiaverga/OpenNGC, CC BY-SA 4.0), in libastrometry0 0.93")
print("# settings: make_places.py beside this file")
print("# retrieved: 2026-11-25")
for table in sorted(tables):
    for line in open(table, encoding="utf-8"):
        fields = line.rstrip("\n").split("\t")
        if line.startswith("#") or fields[0] == "id":
            continue
        for name in [fields[0], *fields[11].split("|")]:
            match = re.fullmatch(r"(NGC|IC) (\d+)", name)
            if match and (match[1], int(match[2])) in known:
                ra, dec, major = known[match[1], int(match[2])]
                print(f"{match[1]}{match[2]} {ra:.4f} {dec:.4f} {major:.2f}")
                break
