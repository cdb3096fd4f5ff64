/**
 * Meteor showers worth watching for.
 *
 * Source: the International Meteor Organization's working list (from memory): maximum by the
 * Sun's longitude (equinox of 2000), radiant and its drift, speed, population index, rate.
 * Showers of the day, and those of two or three meteors an hour, are left out.
 *
 * @packageDocumentation
 */
import type { MeteorShower } from "../core/outreach/meteor-showers.ts";

/** code | name | from | to | longitude | ra | dec | drift ra | drift dec | km/s | r | ZHR (var: varies) */
const TABLE = `
QUA | Quadrantids | 12-28 | 01-12 | 283.15 | 230 | 49 | 0.6 | -0.2 | 41 | 2.1 | 80
ACE | α-Centaurids | 01-31 | 02-20 | 319.2 | 211 | -58 | 1.2 | -0.3 | 58 | 2.0 | 6
GNO | γ-Normids | 02-25 | 03-28 | 354 | 239 | -50 | 1.1 | 0.1 | 56 | 2.4 | 6
LYR | Lyrids | 04-14 | 04-30 | 32.32 | 271 | 34 | 1.1 | 0 | 49 | 2.1 | 18
PPU | π-Puppids | 04-15 | 04-28 | 33.5 | 110 | -45 | 0.6 | -0.2 | 18 | 2.0 | var
ETA | η-Aquariids | 04-19 | 05-28 | 45.5 | 338 | -1 | 0.9 | 0.4 | 66 | 2.4 | 50
JBO | June Bootids | 06-22 | 07-02 | 95.7 | 224 | 48 | 0 | 0 | 18 | 2.2 | var
GDR | July γ-Draconids | 07-25 | 07-31 | 125.13 | 280 | 51 | 0.2 | 0 | 27 | 3.0 | 5
PAU | Piscis Austrinids | 07-15 | 08-10 | 125 | 341 | -30 | 1.0 | 0.2 | 35 | 3.2 | 5
SDA | Southern δ-Aquariids | 07-12 | 08-23 | 127 | 340 | -16 | 0.8 | 0.2 | 41 | 2.5 | 25
CAP | α-Capricornids | 07-03 | 08-15 | 128 | 307 | -10 | 0.6 | 0.3 | 23 | 2.5 | 5
PER | Perseids | 07-17 | 08-24 | 140.0 | 48 | 58 | 1.4 | 0.2 | 59 | 2.2 | 100
AUR | Aurigids | 08-28 | 09-05 | 158.6 | 91 | 39 | 1.1 | 0 | 66 | 2.5 | 6
SPE | September ε-Perseids | 09-05 | 09-21 | 166.7 | 48 | 40 | 1.2 | 0.2 | 64 | 3.0 | 5
OCT | October Camelopardalids | 10-05 | 10-06 | 192.58 | 164 | 79 | 0 | 0 | 47 | 2.5 | 5
DRA | October Draconids | 10-06 | 10-10 | 195.4 | 263 | 56 | 0.4 | 0 | 21 | 2.6 | 5
ORI | Orionids | 10-02 | 11-07 | 208 | 95 | 16 | 0.7 | 0.1 | 66 | 2.5 | 20
STA | Southern Taurids | 09-20 | 11-20 | 223 | 52 | 15 | 0.8 | 0.2 | 27 | 2.3 | 7
NTA | Northern Taurids | 10-20 | 12-10 | 230 | 58 | 22 | 0.8 | 0.1 | 29 | 2.3 | 5
LEO | Leonids | 11-06 | 11-30 | 235.27 | 152 | 22 | 0.7 | -0.4 | 71 | 2.5 | 10
AMO | α-Monocerotids | 11-15 | 11-25 | 239.32 | 117 | 1 | 0.8 | -0.2 | 65 | 2.4 | var
PHO | Phoenicids | 11-28 | 12-09 | 250.0 | 8 | -27 | 0.8 | 0.2 | 15 | 2.8 | var
PUP | Puppid-Velids | 12-01 | 12-15 | 255 | 123 | -45 | 0.5 | 0 | 40 | 2.9 | 10
HYD | σ-Hydrids | 12-03 | 12-20 | 257 | 125 | 2 | 0.7 | -0.2 | 58 | 3.0 | 7
GEM | Geminids | 12-04 | 12-20 | 262.2 | 112 | 33 | 1.0 | -0.1 | 35 | 2.6 | 150
DLM | December Leonis Minorids | 12-05 | 02-04 | 268 | 161 | 30 | 0.9 | -0.4 | 64 | 3.0 | 5
URS | Ursids | 12-17 | 12-26 | 270.7 | 217 | 76 | 0 | 0 | 33 | 2.8 | 10
`;

/** Every shower, in the order of the list's year. */
export const METEOR_SHOWERS: readonly MeteorShower[] = TABLE.trim().split("\n").map(showerOf);

function showerOf(row: string): MeteorShower {
  const [code = "", name = "", activeFrom = "", activeTo = "", ...numbers] = row.split(" | ");
  const rate = numbers.at(-1) ?? "";
  const [longitude, ra, dec, driftRa, driftDec, speed, index] = numbers.map(Number);
  return {
    code,
    name,
    activeFrom,
    activeTo,
    peakLongitudeDeg: longitude ?? 0,
    raDeg: ra ?? 0,
    decDeg: dec ?? 0,
    driftRaDeg: driftRa ?? 0,
    driftDecDeg: driftDec ?? 0,
    speedKmPerSecond: speed ?? 0,
    populationIndex: index ?? 0,
    zhr: rate === "var" ? null : Number(rate),
  };
}
