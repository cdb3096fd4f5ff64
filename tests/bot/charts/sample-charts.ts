/**
 * One or two charts of every other kind, for looking at and testing: invented figures of
 * the demo club, true in shape only.
 *
 * @packageDocumentation
 */
import type {
  ChartStar,
  CurveChart,
  FramingChart,
  JupiterChart,
  MoonChart,
  OutreachStripChart,
  PoleChart,
  ProgressChart,
  SeasonChart,
  SheetChart,
  SubLengthChart,
  SunChart,
} from "../../../commands/chart.ts";

const plain = { cautions: [], alt: "An invented chart." } as const;

/** As long as the real one, so that samples show what a phone will. */
export const LONG_CAUTION =
  "Never look at or near the Sun through any telescope, binoculars or camera without a certified full-aperture solar filter fitted over the front; never use a filter at the eyepiece. Cap or remove finders. Inspect filters before use. Never leave a telescope unattended, and keep children within reach.";

export const SEASON: SeasonChart = {
  ...plain,
  kind: "season",
  name: "season",
  title: "IC 434 is best from mid-November to early February",
  caption: "Dark, Moon-free hours a night above Fell End's skyline",
  months: ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"].map(
    (label, i) => ({ label, hoursPerNight: [5.1, 3.4, 1.2, 0, 0, 0, 0, 0.1, 1.4, 3.2, 4.8, 5.6][i] ?? 0 }),
  ),
  best: { fromMonth: 10.5, toMonth: 1.2, label: "best: 15 November to 5 February" },
};

export const SUB_LENGTH: SubLengthChart = {
  ...plain,
  kind: "sub-length",
  name: "sub-length",
  title: "Two-minute subs lose 11 of your 240 minutes",
  caption: "NGC 6888, hydrogen-alpha 7 nm, 800 mm f/4",
  hoursAtHand: 4,
  choices: [
    { subSeconds: 10, hoursLost: 2.6, chosen: false },
    { subSeconds: 30, hoursLost: 1.2, chosen: false },
    { subSeconds: 60, hoursLost: 0.52, chosen: false },
    { subSeconds: 120, hoursLost: 0.19, chosen: true },
    { subSeconds: 180, hoursLost: 0.24, chosen: false },
    { subSeconds: 300, hoursLost: 0.4, chosen: false },
    { subSeconds: 600, hoursLost: 0.9, chosen: false },
  ],
};

const hoursTo = (rate: number) =>
  Array.from({ length: 41 }, (_, i) => ({ x: i / 2, y: rate * Math.sqrt(i / 2) }));

export const CURVE: CurveChart = {
  ...plain,
  kind: "curve",
  name: "signal-to-noise",
  title: "Six hours reach a signal-to-noise of 5 on the faint shell",
  caption: "NGC 6888 at 100 Rayleigh, in patches of 10″ × 10″",
  xLabel: "hours in all",
  yLabel: "signal-to-noise",
  lines: [
    { name: "no Moon", points: hoursTo(2.05) },
    { name: "tonight's Moon", points: hoursTo(1.5) },
  ],
  marks: [{ x: 6, y: 5.02, label: "5 after 6 h" }],
};

export const POLE: PoleChart = {
  ...plain,
  kind: "pole",
  name: "pole",
  title: "Polaris stands at twenty past four, 38′ from the pole",
  caption: "Saturday 10 October, 21:30",
  dials: [
    { caption: "correct image, or by eye", hours: 4.33, words: "twenty past four" },
    { caption: "inverting finder", hours: 10.33, words: "twenty past ten" },
  ],
};

export const PROGRESS: ProgressChart = {
  ...plain,
  kind: "progress",
  name: "progress",
  title: "The Crescent has 9 h 20 min of the 16 h wanted",
  caption: "One step a night",
  lines: [
    {
      name: "hydrogen-alpha",
      wantedHours: 10,
      steps: [
        { night: "2026-08-14", hours: 1.5 },
        { night: "2026-08-16", hours: 2.25 },
        { night: "2026-09-11", hours: 0.5 },
        { night: "2026-09-19", hours: 2.1 },
      ],
    },
    {
      name: "oxygen",
      wantedHours: 6,
      steps: [
        { night: "2026-09-12", hours: 1 },
        { night: "2026-09-19", hours: 0.9 },
        { night: "2026-10-03", hours: 1.1 },
      ],
    },
  ],
};

const WEEKEND: ReadonlySet<number> = new Set([0, 5, 6]);

export const OUTREACH_STRIP: OutreachStripChart = {
  ...plain,
  kind: "outreach-strip",
  name: "outreach",
  title: "Friday 23 October suits families best: half Moon high, Saturn up",
  caption: "Families, until 21:30, Fell End field, October",
  evenings: Array.from({ length: 21 }, (_, i) => {
    const day = 8 + i;
    const date = new Date(Date.UTC(2026, 9, day));
    const age = (((day - 10) % 29.5) + 29.5) % 29.5;
    const rank = day === 17 ? 1 : day === 16 ? 2 : day === 23 ? 3 : null;
    return {
      night: date.toISOString().slice(0, 10),
      label: String(day),
      weekend: WEEKEND.has(date.getUTCDay()),
      darkHours: 0.9 + i * 0.07,
      illuminatedFraction: (1 - Math.cos((2 * Math.PI * age) / 29.5)) / 2,
      waxing: age < 14.75,
      planets: day < 20 ? ["Saturn"] : ["Saturn", "Jupiter"],
      rank,
      reason:
        rank === null
          ? null
          : ([
              "half Moon 25° up at dusk, Saturn all evening",
              "thick crescent, early dark",
              "bright Moon but Jupiter rises before they leave",
            ][rank - 1] ?? null),
      verdict: i < 3 ? (["no-go", "marginal", "go"][i] ?? null) : null,
    };
  }),
};

export const MOON: MoonChart = {
  ...plain,
  kind: "moon",
  name: "moon",
  title: "Copernicus catches the first light tonight",
  caption: "Moon 66 % lit, 9.2 days old, 21:00",
  brightLimbDeg: 262,
  axisDeg: 14,
  illuminatedFraction: 0.66,
  librationLongitudeDeg: -3.2,
  librationLatitudeDeg: 4.1,
  views: [
    { caption: "by eye and in binoculars", mirrored: false, turnDeg: -18 },
    { caption: "inverting telescope", mirrored: false, turnDeg: 162 },
    { caption: "with a star diagonal", mirrored: true, turnDeg: -18 },
  ],
  features: [
    { name: "Copernicus", longitudeDeg: -20.1, latitudeDeg: 9.6, diameterKm: 96, onTerminator: true },
    { name: "Tycho", longitudeDeg: -11.2, latitudeDeg: -43.3, diameterKm: 85, onTerminator: false },
    { name: "Clavius", longitudeDeg: -14.1, latitudeDeg: -58.8, diameterKm: 231, onTerminator: true },
    { name: "Mare Crisium", longitudeDeg: 59.1, latitudeDeg: 17, diameterKm: 555, onTerminator: false },
    { name: "Plato", longitudeDeg: -9.4, latitudeDeg: 51.6, diameterKm: 101, onTerminator: false },
    { name: "Theophilus", longitudeDeg: 26.3, latitudeDeg: -11.4, diameterKm: 99, onTerminator: false },
    { name: "Bullialdus", longitudeDeg: -22.3, latitudeDeg: -20.7, diameterKm: 61, onTerminator: true },
    { name: "Petavius", longitudeDeg: 60.8, latitudeDeg: -25.4, diameterKm: 184, onTerminator: false },
  ],
};

export const SUN: SunChart = {
  ...plain,
  kind: "sun",
  name: "sun",
  title: "The Sun stands 34° high in the south at 13:02",
  caption: "Through a filtered telescope, Tuesday 13 October",
  cautions: [LONG_CAUTION],
  axisDeg: 26.27,
  b0Deg: 5.99,
  l0Deg: 238.63,
  views: [
    { caption: "correct image", mirrored: false, turnDeg: 12 },
    { caption: "inverting telescope", mirrored: false, turnDeg: 192 },
    { caption: "with a star diagonal", mirrored: true, turnDeg: 12 },
    { caption: "projected on a screen", mirrored: true, turnDeg: 192 },
  ],
};

export const JUPITER: JupiterChart[] = [
  {
    ...plain,
    kind: "jupiter",
    name: "jupiter",
    title: "Io crosses Jupiter until 22:14, its shadow an hour behind",
    caption: "21:30, as an inverting telescope shows it",
    turnDeg: 205,
    mirrored: false,
    moons: [
      { numeral: "I", x: 0.35, y: -0.12, state: "transit" },
      { numeral: "II", x: -0.6, y: 0.1, state: "occulted" },
      { numeral: "III", x: -13.8, y: 0.4, state: "clear" },
      { numeral: "IV", x: 21.5, y: -0.9, state: "clear" },
    ],
    shadows: [{ numeral: "I", x: -0.4, y: -0.16 }],
  },
  {
    ...plain,
    kind: "jupiter",
    name: "jupiter",
    title: "All four moons stand clear of Jupiter",
    caption: "23:00, by a correct image",
    turnDeg: -30,
    mirrored: false,
    moons: [
      { numeral: "I", x: 5.1, y: 0.1, state: "clear" },
      { numeral: "II", x: 6.4, y: -0.1, state: "clear" },
      { numeral: "III", x: 5.8, y: 0.2, state: "clear" },
      { numeral: "IV", x: -26, y: 0.6, state: "clear" },
    ],
    shadows: [],
  },
];

/** The same stars every time, by a plain congruential rule. */
function stars(count: number, spanDeg: number): ChartStar[] {
  let state = 20_261_010;
  const next = () => {
    state = (state * 1_103_515_245 + 12_345) % 2_147_483_648;
    return state / 2_147_483_648;
  };
  return Array.from({ length: count }, () => ({
    xiDeg: (next() - 0.5) * spanDeg,
    etaDeg: (next() - 0.5) * spanDeg,
    magnitude: 8.2 - 5.5 * next() ** 3,
    colourIndex: next() * 2 - 0.3,
  }));
}

const CRESCENT = {
  name: "NGC 6888",
  kindWords: "emission nebula",
  xiDeg: 0,
  etaDeg: 0,
  majorDeg: 0.33,
  minorDeg: 0.2,
  positionAngleDeg: 35,
};

export const FRAMING: FramingChart[] = [
  {
    ...plain,
    kind: "framing",
    name: "framing",
    title: "The Crescent fills a seventh of the frame",
    caption: "800 mm f/4, camera turned to 35°",
    positionAngleDeg: 35,
    fieldWidthDeg: 1.28,
    fieldHeightDeg: 0.86,
    stars: stars(220, 3),
    target: CRESCENT,
    neighbours: [
      {
        name: "NGC 6883",
        kindWords: "open cluster",
        xiDeg: 0.44,
        etaDeg: -0.42,
        majorDeg: 0.25,
        minorDeg: 0.25,
        positionAngleDeg: 0,
      },
      {
        name: "PN G75.5",
        kindWords: "planetary nebula",
        xiDeg: -0.5,
        etaDeg: 0.12,
        majorDeg: 0.02,
        minorDeg: 0.02,
        positionAngleDeg: 0,
      },
    ],
    panels: [{ order: 1, xiDeg: 0, etaDeg: 0, widthDeg: 1.28, heightDeg: 0.86, turnDeg: 0 }],
    picture: null,
  },
  {
    ...plain,
    kind: "framing",
    name: "framing",
    title: "The Veil needs six panels",
    caption: "800 mm f/4, overlap 15 %",
    positionAngleDeg: 0,
    fieldWidthDeg: 1.28,
    fieldHeightDeg: 0.86,
    stars: stars(400, 5),
    target: {
      name: "Veil Nebula",
      kindWords: "supernova remnant",
      xiDeg: 0,
      etaDeg: 0,
      majorDeg: 3,
      minorDeg: 2.4,
      positionAngleDeg: 10,
    },
    neighbours: [],
    panels: [0, 1, 2, 3, 4, 5].map((i) => ({
      order: i + 1,
      xiDeg: ((i < 3 ? i : 5 - i) - 1) * -1.09,
      etaDeg: i < 3 ? 0.365 : -0.365,
      widthDeg: 1.28,
      heightDeg: 0.86,
      turnDeg: 0,
    })),
    picture: null,
  },
];

export const SHEET: SheetChart = {
  ...plain,
  kind: "sheet",
  name: "sheet",
  title: "Families at Fell End field, Saturday 17 October",
  caption: "19:00 to 21:30; two telescopes and binoculars",
  cautions: ["No green lasers while aircraft are near; ask the law of the place first."],
  blocks: [
    {
      heading: "Running order",
      lines: [
        "19:10 Moon, small telescope: two fists above the south-south-west. Craters stand out along the line between light and dark; the shadows there are mountains'.",
        "19:40 Saturn, large telescope: a fist and a half above the south-east. The ring is a thin line this year.",
        "20:30 M31, binoculars: halfway up in the east. An oval mist; its light left before there were people.",
      ],
    },
    { heading: "If clouds come", lines: ["Meteorites and the Moon map under the awning."] },
    {
      heading: "Bring",
      lines: ["Red lamps, two tables, cable covers, hot water, warm gloves, a first-aid bag."],
    },
  ],
};
