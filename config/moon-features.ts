/**
 * Named features of the Moon worth showing, with their selenographic places.
 *
 * Source: IAU Gazetteer of Planetary Nomenclature (USGS). Craters of 50 km and more and the
 * seas carry its numbers; the rest are from memory, good to 0.3° and a tenth of their size.
 * Latitude north and longitude east positive, degrees; diameters in km, of a range or rille
 * its length. The plain lines are ours.
 *
 * @packageDocumentation
 */
import type { LunarFeature, LunarFeatureKind } from "../core/outreach/lunar-terminator.ts";

/** name | kind | latitude | longitude | km | line */
const TABLE = `
Mare Imbrium | sea | 34.72 | -14.91 | 1145.53 | A basin dug by one great blow, flooded with lava; its rim is the Apennines, the Alps and the Caucasus.
Mare Serenitatis | sea | 27.29 | 18.36 | 674.28 | Low light shows a long winding ridge down its eastern side.
Mare Tranquillitatis | sea | 8.35 | 30.83 | 875.75 | The first people on the Moon landed near its south-western shore in 1969.
Mare Crisium | sea | 16.18 | 59.10 | 555.92 | Cut off from all the other seas, plain to the bare eye near the edge of the Moon.
Mare Fecunditatis | sea | -7.83 | 53.67 | 840.35 | A broad plain, best two to four days after new Moon.
Mare Nectaris | sea | -15.19 | 34.60 | 339.39 | A round sea in an old basin; the Altai scarp is part of the basin's outer ring.
Mare Humorum | sea | -24.48 | -38.57 | 419.67 | A round sea with cracks along its shore and Gassendi on its northern edge.
Mare Nubium | sea | -20.59 | -17.29 | 714.50 | A plain of drowned craters; the Straight Wall stands on its eastern side.
Mare Cognitum | sea | -10.53 | -22.31 | 350.01 | Named the Known Sea after the first close pictures, taken here in 1964.
Mare Vaporum | sea | 13.20 | 4.09 | 242.46 | A small round sea close to the middle of the disc.
Mare Insularum | sea | 7.79 | -30.64 | 511.93 | Lava around the bright rays of Copernicus and Kepler.
Mare Frigoris | sea | 57.59 | -0.01 | 1446.41 | A long narrow sea across the north, behind Plato and the Alps.
Oceanus Procellarum | sea | 20.67 | -56.68 | 2592.24 | The only ocean of the Moon: the largest plain of lava there is on it.
Mare Humboldtianum | sea | 56.92 | 81.54 | 230.78 | At the very edge, seen well only when libration turns the north-east towards us.
Mare Orientale | sea | -19.87 | -94.67 | 294.16 | The bull's-eye basin beyond the western edge: a sliver shows at a favourable libration.
Mare Smythii | sea | -1.71 | 87.05 | 373.97 | On the eastern edge, where the Moon's equator leaves the face we see.
Mare Marginis | sea | 12.70 | 86.52 | 357.63 | A dark patch on the eastern edge behind Mare Crisium.
Mare Australe | sea | -47.77 | 91.99 | 996.84 | Scattered dark floors on the south-eastern edge.
Lacus Mortis | sea | 45.13 | 27.32 | 158.78 | A ruined ring with Bürg in its middle and a fault across its floor.
Sinus Iridum | bay | 45.01 | -31.67 | 249.29 | Half a great crater: at sunrise its rim hangs in the dark as a golden handle.
Sinus Medii | bay | 1.63 | 1.03 | 286.67 | The middle of the face we see; from there the Earth stands overhead.
Sinus Aestuum | bay | 12.10 | -8.34 | 316.50 | One of the smoothest plains, at the foot of the Apennines.
Montes Apenninus | mountains | 19.87 | 0.03 | 599.67 | The grandest range: peaks of some 5 km over the plain of Imbrium.
Montes Alpes | mountains | 48.36 | -0.58 | 334.48 | Peaks on the north-eastern rim of Imbrium, cut through by the Alpine Valley.
Montes Caucasus | mountains | 37.52 | 9.93 | 443.51 | The range between the seas of Rains and Serenity.
Montes Jura | mountains | 47.49 | -36.11 | 420.80 | The curved range around the Bay of Rainbows.
Montes Carpatus | mountains | 14.57 | -23.62 | 333.59 | Broken hills on the southern shore of Imbrium, north of Copernicus.
Montes Haemus | mountains | 17.11 | 12.03 | 384.66 | The south-western shore of the Sea of Serenity.
Montes Taurus | mountains | 27.32 | 40.34 | 166.16 | Rough highland east of Serenity.
Montes Pyrenaeus | mountains | -14.05 | 41.51 | 251.33 | Low mountains between the seas of Nectar and Fertility.
Montes Riphaeus | mountains | -7.48 | -27.60 | 190.12 | A slim branching ridge standing in the lava.
Montes Teneriffe | mountains | 47.89 | -13.19 | 111.98 | A few bright peaks alone in the lava south of Plato.
Montes Recti | mountains | 48.30 | -19.72 | 83.24 | A short straight row of peaks in northern Imbrium.
Mons Piton | mountain | 40.72 | -0.92 | 22.50 | A lone peak that throws a long pointed shadow at sunrise.
Mons Pico | mountain | 45.82 | -8.87 | 24.42 | A bright peak south of Plato, some 2 km high.
Mons La Hire | mountain | 27.66 | -25.51 | 21.71 | A lone bright peak in the middle of Imbrium.
Mons Rümker | mountain | 40.76 | -58.38 | 73.25 | A low swelling of old volcanic domes, seen only in grazing light.
Mons Gruithuisen Gamma | mountain | 36.56 | -40.72 | 19.65 | A rounded dome of stiff lava, like an upturned bowl.
Promontorium Laplace | cape | 46.84 | -25.51 | 50 | The eastern cape of the Bay of Rainbows, about 2.5 km high.
Promontorium Heraclides | cape | 40.60 | -34.10 | 50 | The western cape of the Bay of Rainbows.
Rupes Recta | scarp | -21.67 | -7.70 | 116 | The Straight Wall: a fault over 100 km long, black before full Moon and bright after.
Rupes Altai | scarp | -24.32 | 23.12 | 545 | A scarp that curves for hundreds of kilometres around the Sea of Nectar.
Rupes Cauchy | scarp | 9.31 | 37.08 | 169.85 | A fault beside a rille, with two low domes close by.
Vallis Alpes | valley | 49.21 | 3.63 | 155.42 | A straight gash through the Alps, about 10 km wide.
Vallis Schröteri | valley | 26.16 | -51.58 | 185.32 | The largest winding valley on the Moon, cut by lava that began at the Cobra's Head.
Vallis Rheita | valley | -42.51 | 51.65 | 509.07 | A chain of craters run together into a valley.
Rima Hyginus | rille | 7.62 | 6.77 | 203.96 | A bent rille with a rimless crater at its elbow.
Rima Ariadaeus | rille | 6.48 | 13.44 | 247.45 | A straight sunken strip over 200 km long, easy in a small telescope.
Rimae Triesnecker | rille | 5.10 | 4.83 | 200 | A net of fine cracks: a test for steady air.
Rima Hadley | rille | 25.72 | 3.15 | 116.09 | A winding lava channel; people drove along its edge in 1971.
Reiner Gamma | swirl | 7.39 | -58.96 | 73.44 | A bright mark without any height, where the rock is magnetised.
Statio Tranquillitatis | landing-site | 0.67 | 23.47 | 1 | Where people first stood on the Moon; nothing of it can be seen from here.
Copernicus | crater | 9.62 | -20.08 | 96.07 | Terraced walls nearly 4 km deep, peaks in the middle, and rays all around.
Tycho | crater | -43.30 | -11.22 | 85.29 | Young: its rays cross half the face at full Moon.
Clavius | crater | -58.62 | -14.73 | 230.77 | A plain with an arc of ever smaller craters on it.
Plato | crater | 51.62 | -9.38 | 100.68 | A dark smooth floor; at sunrise its rim's shadows lie on it as spires.
Archimedes | crater | 29.72 | -3.99 | 81.04 | Filled with lava almost to the rim; no peak shows.
Aristillus | crater | 33.88 | 1.21 | 54.37 | Three peaks in the middle and ribs of thrown-out rock outside.
Autolycus | crater | 30.68 | 1.49 | 38.88 | The smaller partner of Aristillus.
Cassini | crater | 40.25 | 4.64 | 56.88 | A shallow ring with two neat craters inside.
Aristoteles | crater | 50.24 | 17.32 | 87.57 | Wide terraces, and ridges running outward from the rim.
Eudoxus | crater | 44.27 | 16.23 | 70.16 | A rugged partner to Aristoteles.
Posidonius | crater | 31.88 | 29.99 | 95.06 | A cracked, tilted floor on the shore of Serenity.
Le Monnier | crater | 26.66 | 30.50 | 68.40 | A crater whose seaward wall the lava drowned.
Bürg | crater | 45.07 | 28.21 | 41.03 | The sharp crater in the middle of the Lake of Death.
Atlas | crater | 46.74 | 44.38 | 88.12 | A cracked floor with dark spots of old ash.
Hercules | crater | 46.82 | 39.21 | 68.32 | Partner of Atlas, with one fresh crater on its dark floor.
Franklin | crater | 38.73 | 47.64 | 55.92 | A worn crater south of Atlas.
Endymion | crater | 53.61 | 56.48 | 122.10 | A dark flat floor near the north-eastern edge.
Cleomedes | crater | 27.60 | 55.50 | 130.77 | A great ring north of Mare Crisium.
Geminus | crater | 34.42 | 56.66 | 81.98 | Terraced walls near the eastern edge.
Messala | crater | 39.31 | 60.06 | 122.40 | A worn walled plain near the north-eastern edge.
Gauss | crater | 36.01 | 79.08 | 170.72 | A large ring seen almost edge-on.
Macrobius | crater | 21.26 | 45.97 | 62.79 | A terraced crater north-west of Mare Crisium.
Proclus | crater | 16.09 | 46.89 | 26.91 | Very bright, with rays on all sides but one: the blow came in low.
Picard | crater | 14.57 | 54.72 | 22.35 | The largest sharp crater on the floor of Mare Crisium.
Taruntius | crater | 5.50 | 46.54 | 57.32 | A shallow ring with a second ring inside.
Cauchy | crater | 9.56 | 38.63 | 11.80 | A small bright crater between a rille and a scarp.
Plinius | crater | 15.36 | 23.61 | 41.31 | Stands guard between Serenity and Tranquillity.
Menelaus | crater | 16.26 | 15.93 | 27.13 | A bright ring on the shore of Serenity.
Manilius | crater | 14.45 | 9.07 | 38.34 | A bright terraced crater in the Sea of Vapours.
Bessel | crater | 21.73 | 17.92 | 15.56 | The largest crater out on the plain of Serenity, on a bright ray.
Linné | crater | 27.75 | 11.81 | 2.23 | Tiny, but a bright spot at full Moon: people once thought that it had changed.
Dionysius | crater | 2.77 | 17.29 | 17.25 | Bright, with dark rays as well as light ones.
Julius Caesar | crater | 9.17 | 15.21 | 84.72 | A ruined ring with a dark northern floor.
Arago | crater | 6.15 | 21.43 | 25.51 | Two low domes swell beside it in grazing light.
Lamont | crater | 5.14 | 23.32 | 83.23 | A ghost ring of ridges, seen only close to the terminator.
Maskelyne | crater | 2.16 | 30.04 | 22.42 | A small sharp crater east of where people first landed.
Messier | crater | -1.90 | 47.65 | 13.80 | With Messier A a pair made by one grazing blow; two rays point away like a comet's tail.
Censorinus | crater | -0.42 | 32.71 | 4.11 | Small and among the brightest spots on the Moon.
Langrenus | crater | -8.86 | 61.04 | 131.98 | A great terraced crater near the eastern edge with a double peak.
Vendelinus | crater | -16.46 | 61.55 | 141.21 | An old broken ring between Langrenus and Petavius.
Petavius | crater | -25.39 | 60.78 | 184.06 | A broad rille runs like a clock's hand from its peaks to the wall.
Furnerius | crater | -36.00 | 60.54 | 135.03 | The last of the great chain down the eastern edge.
Humboldt | crater | -27.02 | 80.96 | 199.46 | On the very edge, with a web of cracks on its floor.
Stevinus | crater | -32.49 | 54.14 | 71.54 | A deep young crater in the south-east.
Snellius | crater | -29.33 | 55.70 | 85.98 | A worn crater beside Stevinus, with a valley leading away.
Goclenius | crater | -10.05 | 45.03 | 73.04 | A flooded crater crossed by rilles.
Gutenberg | crater | -8.61 | 41.25 | 70.65 | A broken ring, open to the east.
Colombo | crater | -15.26 | 46.02 | 79.02 | An old crater with a younger one broken into its wall.
Theophilus | crater | -11.45 | 26.28 | 98.59 | Over 4 km deep with a group of peaks: the youngest of a chain of three.
Cyrillus | crater | -13.29 | 24.07 | 98.09 | The second of the three, broken into by Theophilus.
Catharina | crater | -17.98 | 23.55 | 98.77 | The oldest and most worn of the three.
Mädler | crater | -11.04 | 29.76 | 27.60 | A small crater on the shore of the Sea of Nectar.
Fracastorius | crater | -21.36 | 33.07 | 120.58 | A bay of the Sea of Nectar: its northern wall has sunk.
Piccolomini | crater | -29.70 | 32.20 | 87.58 | At the southern end of the Altai scarp, with a fine peak.
Sacrobosco | crater | -23.75 | 16.64 | 97.67 | A worn ring with three craters on its floor.
Abulfeda | crater | -13.87 | 13.91 | 62.23 | A chain of small craters leads away from it to the south-east.
Delambre | crater | -1.94 | 17.39 | 51.49 | A deep crater on the shore of Tranquillity.
Torricelli | crater | -4.76 | 28.42 | 30.87 | Shaped like a pear: two craters in one.
Rheita | crater | -37.10 | 47.17 | 70.81 | A sharp crater at the end of the Rheita valley.
Metius | crater | -40.42 | 43.37 | 83.81 | Twin of Fabricius in the rough south-east.
Fabricius | crater | -42.75 | 41.84 | 78.90 | Lies inside the huge ruin of Janssen.
Janssen | crater | -44.96 | 40.82 | 200.65 | A great ruin with a curved rille on its floor.
Vlacq | crater | -53.39 | 38.69 | 89.21 | One of a cluster of old craters in the south-east.
Stöfler | crater | -41.24 | 5.93 | 129.87 | A flat floor, its eastern wall broken by younger craters.
Maurolycus | crater | -41.77 | 13.92 | 115.35 | A deep crater on top of an older one.
Walther | crater | -33.25 | 0.62 | 134.23 | A great square-shouldered ring with its peak off the middle.
Aliacensis | crater | -30.60 | 5.13 | 79.65 | Partner of Werner: at first quarter a lit X hangs near it for a few hours.
Werner | crater | -28.03 | 3.29 | 70.59 | A sharp round crater among worn ones.
Regiomontanus | crater | -28.28 | -1.09 | 126.64 | An oval ring with a pitted peak.
Purbach | crater | -25.51 | -2.03 | 114.97 | An old ring; its rim is part of the lit X of first quarter.
Deslandres | crater | -32.55 | -5.57 | 227.02 | So large and worn that it was long not seen as a crater.
Ptolemaeus | crater | -9.16 | -1.84 | 153.67 | A vast flat floor with one sharp pit; low light shows saucers in it.
Alphonsus | crater | -13.39 | -2.85 | 110.54 | Dark patches of ash on its floor; a probe took pictures down to its crash in 1965.
Arzachel | crater | -18.26 | -1.93 | 96.99 | The sharpest of the chain of three, with terraces and a rille.
Albategnius | crater | -11.24 | 4.01 | 130.84 | A great ring drawn from the first telescopes on.
Hipparchus | crater | -5.36 | 4.91 | 143.95 | A shallow ruin beside Albategnius.
Herschel | crater | -5.69 | -2.09 | 39.09 | A deep crater just north of Ptolemaeus.
Thebit | crater | -22.01 | -4.02 | 54.64 | Three craters in a row, each broken into the last.
Birt | crater | -22.36 | -8.59 | 15.81 | The small crater beside the Straight Wall.
Pitatus | crater | -29.88 | -13.53 | 100.63 | A flooded crater on the southern shore of the Sea of Clouds.
Hell | crater | -32.43 | -7.97 | 33.31 | Named after a priest and astronomer called Hell.
Bullialdus | crater | -20.75 | -22.26 | 60.72 | A handsome terraced crater alone in the Sea of Clouds.
Kies | crater | -26.31 | -22.63 | 45.54 | A drowned ring, with a low dome to its west.
Hippalus | crater | -24.92 | -30.42 | 57.36 | Half drowned, crossed by curved cracks.
Gassendi | crater | -17.55 | -39.96 | 111.39 | A floor full of fine cracks and a group of peaks.
Letronne | crater | -10.50 | -42.49 | 117.59 | A bay of the Ocean: half of its ring is gone.
Mersenius | crater | -21.49 | -49.34 | 84.46 | Its floor bulges upward.
Doppelmayer | crater | -28.48 | -41.51 | 65.08 | Sunk and tilted towards the Sea of Moisture.
Vitello | crater | -30.42 | -37.55 | 42.51 | A crater with a ring of cracks inside.
Schickard | crater | -44.38 | -55.11 | 212.18 | A huge plain in two shades of grey.
Wargentin | crater | -49.53 | -60.44 | 84.69 | Filled to the brim: a plateau instead of a pit.
Schiller | crater | -51.72 | -39.78 | 179.36 | Shaped like the sole of a shoe, over twice as long as wide.
Hainzel | crater | -41.23 | -33.52 | 70.56 | Three craters run together.
Phocylides | crater | -52.79 | -57.31 | 115.18 | A deep old plain near the south-western edge.
Longomontanus | crater | -49.55 | -21.88 | 145.50 | A great worn ring west of Tycho.
Wilhelm | crater | -43.21 | -20.94 | 100.83 | A worn ring covered by what Tycho threw out.
Maginus | crater | -50.03 | -5.98 | 155.58 | A battered ring that all but vanishes at full Moon.
Moretus | crater | -70.63 | -5.95 | 114.45 | A deep crater near the south pole with a peak over 2 km high.
Scheiner | crater | -60.35 | -27.81 | 110.07 | A deep ring west of Clavius.
Blancanus | crater | -63.77 | -21.63 | 105.82 | A deep ring south-west of Clavius.
Newton | crater | -76.52 | -17.44 | 83.85 | So deep and far south that its floor is mostly in shadow.
Bailly | crater | -66.82 | -68.90 | 300.56 | The largest ring we call a crater on this side, on the south-western edge.
Copernicus H | crater | 6.89 | -18.29 | 4.60 | A tiny crater with a dark halo south-east of Copernicus.
Eratosthenes | crater | 14.47 | -11.32 | 58.77 | A deep crater at the end of the Apennines; it fades away at full Moon.
Stadius | crater | 10.48 | -13.77 | 68.48 | A ghost: a ring of small pits in the lava.
Reinhold | crater | 3.28 | -22.86 | 43.28 | A terraced crater south-west of Copernicus.
Lansberg | crater | -0.31 | -26.63 | 38.75 | On the Moon's equator, with heavy walls.
Fra Mauro | crater | -6.06 | -16.97 | 96.76 | A worn ring; people landed on the hills north of it in 1971.
Kepler | crater | 8.12 | -38.01 | 29.49 | Small, with a wide splash of rays.
Encke | crater | 4.57 | -36.68 | 28.27 | A shallow many-sided ring south of Kepler.
Marius | crater | 11.90 | -50.84 | 40.12 | A plain ring among hundreds of small volcanic hills.
Aristarchus | crater | 23.73 | -47.49 | 40.00 | The brightest large spot on the Moon: seen even by earthlight.
Herodotus | crater | 23.24 | -49.84 | 35.87 | The lava-filled neighbour of Aristarchus.
Prinz | crater | 25.49 | -44.14 | 46.13 | Half a ring, with fine winding rilles north of it.
Timocharis | crater | 26.72 | -13.10 | 34.14 | Its middle is not a peak but another crater.
Lambert | crater | 25.77 | -20.99 | 30.12 | Beside it grazing light brings out a ghost ring.
Pytheas | crater | 20.57 | -20.59 | 18.81 | A small many-sided crater in southern Imbrium.
Euler | crater | 23.26 | -29.23 | 26.03 | A sharp crater with faint rays in western Imbrium.
Harpalus | crater | 52.73 | -43.49 | 39.77 | A young crater in the Sea of Cold.
Bianchini | crater | 48.79 | -34.37 | 37.59 | On the mountain rim of the Bay of Rainbows.
Mairan | crater | 41.62 | -43.48 | 39.49 | A sharp crater west of the Bay of Rainbows.
J. Herschel | crater | 62.31 | -41.86 | 154.44 | A wide rough ruin in the north.
Pythagoras | crater | 63.68 | -62.98 | 144.55 | Seen from the side near the north-western edge, with a great twin peak.
Babbage | crater | 59.56 | -57.38 | 146.56 | A wide old ring beside Pythagoras.
Philolaus | crater | 72.22 | -32.88 | 71.44 | A deep terraced crater near the north pole.
Anaxagoras | crater | 73.48 | -10.17 | 51.90 | A young bright crater in the far north, with rays.
Goldschmidt | crater | 73.04 | -3.37 | 115.26 | A worn ring that Anaxagoras broke into.
Meton | crater | 73.57 | 19.63 | 124.70 | Several rings run together in the far north, shaped like a clover leaf.
W. Bond | crater | 65.41 | 3.52 | 170.53 | A square-looking ruin north of the Sea of Cold.
Thales | crater | 61.72 | 50.27 | 30.75 | A bright rayed crater in the north-east.
Hevelius | crater | 2.20 | -67.46 | 113.87 | A ring on the western shore of the Ocean, with crossed cracks.
Grimaldi | crater | -5.38 | -68.36 | 173.49 | One of the darkest floors on the Moon, near the western edge.
Riccioli | crater | -2.90 | -74.42 | 155.66 | A ring beyond Grimaldi with a dark patch.
Sirsalis | crater | -12.49 | -60.51 | 44.17 | Beside it runs one of the longest rilles.
Byrgius | crater | -24.73 | -65.38 | 84.46 | A small bright rayed crater sits on its eastern rim.
Crüger | crater | -16.68 | -66.96 | 45.94 | A very dark smooth floor in bright highland.
Billy | crater | -13.83 | -50.24 | 45.57 | A black floor on the southern shore of the Ocean.
Flamsteed | crater | -4.49 | -44.34 | 19.34 | A small crater on the edge of a drowned ring.
Krafft | crater | 16.56 | -72.72 | 51.15 | A straight chain of pits joins it to a partner in the south.
Otto Struve | crater | 23.41 | -76.65 | 164.34 | A long ruin on the western edge of the Ocean.
Mösting | crater | -0.70 | -5.88 | 24.38 | Close to the middle of the disc.
Triesnecker | crater | 4.18 | 3.60 | 24.97 | Fine cracks lie to the east of it.
Agrippa | crater | 4.10 | 10.47 | 43.75 | A shield-shaped crater with a peak, near the middle of the disc.
Neper | crater | 8.76 | 84.58 | 144.32 | On the eastern edge between two seas, with a dark floor.
`;

const KINDS: readonly LunarFeatureKind[] = [
  "crater",
  "sea",
  "bay",
  "mountains",
  "mountain",
  "cape",
  "scarp",
  "valley",
  "rille",
  "swirl",
  "landing-site",
];

/** Every feature of the table, in its order. */
export const MOON_FEATURES: readonly LunarFeature[] = TABLE.trim().split("\n").map(featureOf);

function featureOf(row: string): LunarFeature {
  const [name = "", kindWord = "", latitude = "", longitude = "", km = "", line = ""] = row.split(" | ");
  const kind = KINDS.find((each) => each === kindWord);
  if (kind === undefined) throw new Error(`moon-features: ${name} has no known kind`);
  return {
    name,
    kind,
    latitudeDeg: Number(latitude),
    longitudeDeg: Number(longitude),
    diameterKm: Number(km),
    line,
  };
}
