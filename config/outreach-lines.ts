/**
 * What the public is shown, how much guests like it, and one true sentence to say about each.
 *
 * Objects are named as the catalogue finds them. Appeal, 1 to 10, is this project's own judgement
 * (common practice). Distances and ages are rounded; all lines are from memory, of figures that every
 * handbook gives. Places of the figures for the bare eye: J2000, their middle, to a degree.
 *
 * @packageDocumentation
 */
import type { EyeFigure } from "../core/outreach/showable.ts";
import type { BodyName, ObjectKind } from "../core/targets/sky-object.ts";

export type ShowpieceLine = { readonly appeal: number; readonly line: string };

export type NamedLine = ShowpieceLine & {
  /** What guests are told it is called. */
  readonly shown: string;
};

/** Moon and planets worth a queue, at their usual appeal. */
export const BODY_LINES: Readonly<Partial<Record<BodyName, ShowpieceLine>>> = {
  Moon: {
    appeal: 10,
    line: "It always turns the same face to us; along the line between day and night every hill throws a long shadow.",
  },
  Saturn: {
    appeal: 10,
    line: "The rings are ice and rock, mostly pieces no larger than a house, in a sheet far thinner than it is wide.",
  },
  Jupiter: {
    appeal: 9,
    line: "Galileo saw the same four moons in January 1610; they change their places from hour to hour.",
  },
  Venus: {
    appeal: 6,
    line: "It is wrapped in cloud and shows phases like the Moon's, because it circles the Sun inside our path.",
  },
  Mars: { appeal: 5, line: "Its colour is rust; a day there is 40 minutes longer than ours." },
  Mercury: {
    appeal: 4,
    line: "The planet nearest the Sun: it goes round in 88 days, and few people have ever knowingly seen it.",
  },
  Uranus: {
    appeal: 2,
    line: "The first planet found with a telescope, by William Herschel from his garden in Bath in 1781.",
  },
  Neptune: { appeal: 1, line: "It was found in 1846 where mathematics had said to look." },
};

/** catalogue's name | as guests are told | appeal | line */
const TABLE = `
M42 | the Orion Nebula (M42) | 9 | Stars are being born in this cloud now; the four in its middle light all of it.
M45 | the Pleiades (M45) | 9 | The Pleiades: a family of about a thousand stars some 440 light years away, with half a dozen for the bare eye.
M13 | the great cluster in Hercules (M13) | 8 | Several hundred thousand stars in one ball, 25,000 light years away.
M31 | the Andromeda Galaxy (M31) | 7 | The farthest thing most people ever see by eye: its light left two and a half million years ago.
M57 | the Ring Nebula (M57) | 7 | A shell of gas that a dying star has thrown off: our Sun may end like this.
M27 | the Dumbbell Nebula (M27) | 6 | The first planetary nebula ever found, by Charles Messier in 1764.
Albireo | Albireo | 7 | One star gold, one blue: the colours are their temperatures, the blue one is the hotter.
Mizar | Mizar and Alcor | 6 | The eye sees two stars, Mizar and Alcor; the telescope splits Mizar itself, the first double found with one.
M44 | the Beehive (M44) | 7 | The Beehive: Galileo's telescope turned a smudge known since antiquity into stars.
NGC 869 | the Double Cluster (NGC 869) | 8 | Two clusters of young stars side by side, some 7,500 light years away.
M11 | the Wild Duck Cluster (M11) | 6 | So many stars so close that it looks like a flight of wild ducks.
M15 | the globular cluster M15 | 6 | One of the densest balls of stars known, about 12 billion years old.
M3 | the globular cluster M3 | 6 | Half a million stars that circle our galaxy together.
M5 | the globular cluster M5 | 6 | A globular cluster about 12 billion years old: older than the Sun by far.
M22 | the globular cluster M22 | 7 | One of the nearest globular clusters, some 10,000 light years away.
M2 | the globular cluster M2 | 5 | A swarm of stars 150 light years across that circles our galaxy.
M4 | the globular cluster M4 | 5 | One of the two nearest globular clusters, about 6,000 light years away.
M92 | the globular cluster M92 | 6 | A globular cluster almost as old as the universe.
M8 | the Lagoon Nebula (M8) | 7 | A cloud of hydrogen lit by the young stars inside it.
M17 | the Omega Nebula (M17) | 5 | A bright bar of gas where new stars are forming, some 5,000 light years away.
M16 | the Eagle Nebula (M16) | 4 | Its pillars of dust made a famous picture; the eye sees the cluster and a breath of haze.
M20 | the Trifid Nebula (M20) | 4 | Dark lanes of dust divide it in three, which is what its name, Trifid, means.
M51 | the Whirlpool Galaxy (M51) | 5 | A spiral galaxy and its small neighbour; the spiral was first drawn by Lord Rosse in 1845.
M81 | the galaxy M81 | 5 | A galaxy about as large as ours, twelve million light years away.
M82 | the galaxy M82 | 5 | A small galaxy seen edge on, making stars in a great hurry.
M104 | the Sombrero Galaxy (M104) | 5 | A galaxy edge on, with a dark line of dust along its middle like the brim of a hat.
M64 | the Black Eye Galaxy (M64) | 3 | The dark patch beside its middle is dust.
M66 | the galaxy M66 and its neighbours | 3 | Three galaxies stand close together here, some 35 million light years away.
M83 | the galaxy M83 | 4 | A spiral galaxy seen from above, 15 million light years away.
M33 | the Triangulum Galaxy (M33) | 3 | The third large galaxy of our own small group, and the hardest to see of the three.
NGC 253 | the Sculptor Galaxy (NGC 253) | 5 | A dusty galaxy that Caroline Herschel found in 1783 while looking for comets.
NGC 5128 | the galaxy Centaurus A (NGC 5128) | 5 | A galaxy that swallowed another: the dark band across it is what is left.
M1 | the Crab Nebula (M1) | 4 | The wreck of a star that people saw explode in the year 1054.
M35 | the star cluster M35 | 6 | Some hundreds of stars born together, about 2,800 light years away.
M37 | the star cluster M37 | 6 | The richest of three clusters in Auriga, with a reddish star at its heart.
M36 | the star cluster M36 | 4 | A cluster so young that none of its stars has become a red giant yet.
M38 | the star cluster M38 | 4 | Its brightest stars make a cross to many eyes.
M41 | the star cluster M41 | 5 | A cluster below Sirius that Aristotle may already have mentioned.
M46 | the star cluster M46 | 4 | Hundreds of faint stars of almost one brightness.
M47 | the star cluster M47 | 5 | A handful of bright blue stars, scattered wide.
M67 | the star cluster M67 | 4 | One of the oldest open clusters known, about as old as the Sun.
M6 | the Butterfly Cluster (M6) | 6 | Many see a butterfly with open wings.
M7 | Ptolemy's Cluster (M7) | 6 | Ptolemy described it in the second century.
M34 | the star cluster M34 | 5 | A loose cluster that fits a low power well.
M39 | the star cluster M39 | 4 | A near and scattered cluster, 1,000 light years away.
M48 | the star cluster M48 | 4 | Caroline Herschel found it too, in 1783.
M50 | the star cluster M50 | 3 | A cluster about 3,000 light years away, in front of the winter Milky Way.
NGC 457 | the Owl Cluster (NGC 457) | 6 | Two bright stars are its eyes, two lines of stars its wings: an owl.
NGC 7789 | Caroline's Rose (NGC 7789) | 5 | Caroline Herschel found it in 1783; loops of stars with dark gaps look like the petals of a rose.
NGC 752 | the star cluster NGC 752 | 4 | A large old cluster for binoculars.
NGC 663 | the star cluster NGC 663 | 3 | A cluster in Cassiopeia that many prefer to the ones with famous names.
NGC 2169 | the 37 Cluster (NGC 2169) | 5 | Its stars write the number 37.
NGC 2264 | the Christmas Tree (NGC 2264) | 4 | Its stars draw a Christmas tree, upside down for the north.
Cr 399 | the Coathanger | 6 | Ten stars make a coat hanger; they only happen to stand in one line of sight.
Kemble's Cascade | Kemble's Cascade | 4 | A straight run of stars that a friar, Lucian Kemble, came upon with binoculars.
Mel 20 | the stars around Mirfak | 5 | The stars around Mirfak were born together and still travel together.
Mel 111 | Berenice's Hair | 4 | A cluster so near that it fills a palm's width of sky: Queen Berenice's hair.
C41 | the Hyades | 5 | The Hyades, the nearest rich cluster: 150 light years. Orange Aldebaran only stands in front of it.
NGC 7009 | the Saturn Nebula (NGC 7009) | 4 | Its two thin arms reminded Lord Rosse of Saturn.
NGC 7662 | the Blue Snowball (NGC 7662) | 4 | A small bluish disc: gas thrown off by one dying star.
NGC 6543 | the Cat's Eye Nebula (NGC 6543) | 4 | The first nebula whose light was split, by William Huggins in 1864: it proved to be gas.
NGC 3242 | the Ghost of Jupiter (NGC 3242) | 4 | It looks as large as Jupiter, and as pale as its ghost.
NGC 2392 | the Eskimo Nebula (NGC 2392) | 4 | A dying star in a double shell of gas.
NGC 6826 | the Blinking Planetary (NGC 6826) | 4 | Look straight at it and it fades, look beside it and it is back.
Almach | Almach | 6 | A golden star with a blue companion, found in 1778.
epsilon Lyr | the Double Double in Lyra | 5 | Binoculars show two stars; a steady night and more power show that each is two again.
Cor Caroli | Cor Caroli | 5 | "Charles's heart": a blue-white pair for any small telescope.
Castor | Castor | 5 | Two bright stars here, and each of them is two again, with another pair near by: six in all.
gamma Del | Gamma Delphini | 5 | A yellow pair at the dolphin's nose.
eta Cas | Eta Cassiopeiae | 5 | A yellow star much like the Sun with a small reddish companion, only 19 light years away.
iota Cnc | Iota Cancri | 5 | Spring's Albireo: yellow and blue.
Algieba | Algieba | 5 | Two golden giants that circle one another in some five centuries.
61 Cyg | 61 Cygni | 4 | The first star whose distance was measured, by Bessel in 1838: eleven light years.
delta Cep | Delta Cephei | 4 | The star after which the universe's measuring rods, the Cepheids, are named.
NGC 5139 | Omega Centauri (NGC 5139) | 9 | The largest globular cluster of our galaxy: millions of stars.
NGC 104 | 47 Tucanae (NGC 104) | 9 | A globular cluster that the bare eye takes for a star.
NGC 6397 | the globular cluster NGC 6397 | 5 | One of the two nearest globular clusters.
NGC 6752 | the globular cluster NGC 6752 | 6 | A bright globular cluster of the far south, some 13,000 light years away.
NGC 4755 | the Jewel Box (NGC 4755) | 8 | The Jewel Box: blue stars and one that is orange.
NGC 3372 | the Carina Nebula (NGC 3372) | 9 | A cloud far larger than Orion's, around a star, Eta Carinae, that flared in the 1840s to outshine almost all others.
NGC 2070 | the Tarantula Nebula (NGC 2070) | 7 | The Tarantula lies in another galaxy; as near as Orion's nebula, it would throw shadows.
IC 2602 | the Southern Pleiades (IC 2602) | 6 | The Pleiades of the south.
NGC 3532 | the Wishing Well Cluster (NGC 3532) | 7 | The first thing the Hubble Space Telescope ever pictured, in May 1990.
NGC 2516 | the star cluster NGC 2516 | 5 | A southern beehive with a few red giants among white stars.
NGC 6231 | the star cluster NGC 6231 | 5 | A tight bunch of hot young stars in the scorpion's tail.
LMC | the Large Magellanic Cloud | 6 | A small galaxy that keeps ours company, 160,000 light years away.
SMC | the Small Magellanic Cloud | 5 | A small galaxy, 200,000 light years away; its stars taught Henrietta Leavitt how to measure the universe.
M24 | the star cloud M24 | 4 | Not a cluster but a window in the dust, with the far Milky Way behind it.
Rigil Kentaurus | Alpha Centauri | 8 | The nearest star to us that the eye can see: two suns, 4.4 light years away.
Acrux | Acrux | 6 | The foot of the Cross: two hot blue stars.
`;

/** What is shown of the deep sky, by the catalogue's name. */
export const SHOWPIECE_LINES: ReadonlyMap<string, NamedLine> = new Map(
  TABLE.trim()
    .split("\n")
    .map((row) => {
      const [name = "", shown = "", appeal = "", line = ""] = row.split(" | ");
      return [name, { shown, appeal: Number(appeal), line }] as const;
    }),
);

/** For what an organiser asks for and the table does not name. */
export const KIND_LINES: Readonly<Record<ObjectKind, ShowpieceLine>> = {
  galaxy: { appeal: 2, line: "A galaxy: its light has been under way for millions of years." },
  "galaxy-group": { appeal: 2, line: "Several galaxies side by side, each with billions of stars." },
  "open-cluster": { appeal: 3, line: "Stars that were born together from one cloud." },
  "globular-cluster": { appeal: 4, line: "A ball of very old stars that circles our galaxy." },
  "emission-nebula": { appeal: 3, line: "A cloud of gas that hot young stars make shine." },
  "reflection-nebula": { appeal: 2, line: "Dust that shines by the light of stars near by." },
  "dark-nebula": { appeal: 1, line: "Dust that hides the stars behind it." },
  "planetary-nebula": { appeal: 4, line: "A shell of gas that a dying star has thrown off." },
  "supernova-remnant": { appeal: 2, line: "What is left of a star that exploded." },
  "star-cloud": { appeal: 3, line: "A bright part of our own galaxy." },
  asterism: { appeal: 3, line: "Stars that only happen to stand in one line of sight." },
  "double-star": { appeal: 4, line: "Two stars that look like one to the bare eye." },
  star: { appeal: 2, line: "A sun like ours, far away." },
};

type FigureLine = EyeFigure & ShowpieceLine;

/** For the bare eye: everybody at once, with a pointing hand. */
export const EYE_FIGURES: readonly FigureLine[] = [
  figure("the Plough", 183, 55.5, 25, 3.3, 7, "The two stars at its end point to the pole star."),
  figure(
    "Polaris, the pole star",
    37.95,
    89.26,
    1,
    2.0,
    6,
    "All the sky turns around it; it is not the brightest star, but it shows north.",
  ),
  figure(
    "Cassiopeia",
    14,
    60,
    13,
    3.4,
    6,
    "Five stars, a W or an M, on the other side of the pole star from the Plough.",
  ),
  figure("Orion", 84, -1, 20, 2.3, 8, "Red Betelgeuse and blue Rigel: the red star is the cooler one."),
  figure(
    "Sirius",
    101.29,
    -16.72,
    1,
    -1.4,
    6,
    "The brightest star of the night, because it is near: 8.6 light years.",
  ),
  figure(
    "Gemini's twins, Castor and Pollux",
    114.9,
    29.9,
    4.5,
    1.6,
    5,
    "Two bright stars side by side, the heads of the twins.",
  ),
  figure(
    "Aldebaran and the head of the Bull",
    67.5,
    16.2,
    6,
    3.7,
    5,
    "The bull's eye is an orange giant some 40 times as wide as the Sun.",
  ),
  figure(
    "Capella",
    79.17,
    46,
    1,
    0.1,
    5,
    "It looks like one star and is four: two yellow giants and two faint red dwarfs.",
  ),
  figure(
    "Leo's sickle",
    152,
    20,
    13,
    3.5,
    5,
    "A question mark the wrong way round, with Regulus as its dot.",
  ),
  figure(
    "Arcturus",
    213.9,
    19.18,
    1,
    0,
    6,
    "Follow the curve of the Plough's handle: an orange giant 37 light years away.",
  ),
  figure(
    "the Northern Crown",
    235,
    29,
    7,
    4.1,
    4,
    "A half circle of stars, one of them brighter: the jewel.",
  ),
  figure(
    "the Summer Triangle",
    297.7,
    33,
    38,
    1.3,
    8,
    "Vega, Deneb and Altair; Deneb looks the faintest and is by far the most luminous.",
  ),
  figure(
    "Vega",
    279.23,
    38.78,
    1,
    0,
    5,
    "Our pole star in 12,000 years' time, when the Earth's axis has swung round.",
  ),
  figure(
    "the Square of Pegasus",
    354,
    22,
    20,
    2.8,
    5,
    "Four stars of a great square; one of its corners belongs to Andromeda.",
  ),
  figure(
    "Antares and the Scorpion",
    248,
    -27,
    20,
    2.9,
    7,
    "Antares means rival of Mars: it has the planet's colour.",
  ),
  figure("Fomalhaut", 344.41, -29.62, 1, 1.2, 3, "The lonely one: hardly another bright star around it."),
  figure(
    "the Southern Cross",
    187,
    -60,
    6,
    2.8,
    9,
    "Its long arm, drawn out four and a half times, leads to the sky's south pole.",
  ),
  figure(
    "the Pointers",
    215,
    -60.6,
    5,
    0.6,
    6,
    "Alpha and Beta Centauri show which cross is the true one; Alpha is our nearest neighbour.",
  ),
  figure(
    "Canopus",
    95.99,
    -52.7,
    1,
    -0.7,
    6,
    "The second brightest star, by which spacecraft find their way.",
  ),
  figure(
    "the Milky Way in Cygnus",
    305,
    40,
    30,
    5.6,
    7,
    "The light of stars too many and too far to be seen one by one: our galaxy from within.",
  ),
  figure(
    "the Milky Way in Sagittarius",
    270,
    -28,
    25,
    5.4,
    8,
    "There lies the middle of our galaxy, 26,000 light years away behind dust.",
  ),
];

function figure(
  name: string,
  raDeg: number,
  decDeg: number,
  extentDeg: number,
  faintestMag: number,
  appeal: number,
  line: string,
): FigureLine {
  return { name, raDeg, decDeg, extentDeg, faintestMag, appeal, line };
}
