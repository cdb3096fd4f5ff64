/**
 * Charts as descriptions: what to draw and its figures. `bot/charts` draws them.
 *
 * Every chart has a title that is a sentence, a text alternative that says what
 * it shows, and the cautions that stand above the drawing.
 *
 * @packageDocumentation
 */
import type { Interval } from "../core/interval.ts";

type Described = {
  /** File name without ending, such as `night`. */
  readonly name: string;
  /** A sentence: `Good from 22:40 to 02:10`. */
  readonly title: string;
  /** What the picture shows, for those who cannot see it. */
  readonly alt: string;
  /** Caution texts, drawn whole above the picture. */
  readonly cautions: readonly string[];
  /** A smaller line under the title, or empty. */
  readonly caption: string;
};

/** How a stretch of an object's path is drawn: heavy, thin, dotted. */
export type PathState = "usable" | "poor" | "hidden";

export type NightChart = Described & {
  readonly kind: "night";
  readonly timeZone: string;
  readonly span: Interval;
  /**
   * The twilights in order along the ruler, in words, each beginning at `at`. One that began
   * before the span names its beginning: `dark all day` in the polar night.
   */
  readonly twilights: readonly {
    readonly at: Date;
    readonly label: string;
    /** How deep the step lies: 0 day, 1 civil, 2 nautical, 3 astronomical, 4 dark. Without it, steps deepen to the middle of the list. */
    readonly depth?: 0 | 1 | 2 | 3 | 4;
  }[];
  /** At most three objects; the first is the one the answer is about. */
  readonly paths: readonly {
    readonly name: string;
    readonly points: readonly {
      readonly at: Date;
      readonly altitudeDeg: number;
      readonly state: PathState;
    }[];
  }[];
  readonly window: (Interval & { readonly label: string }) | null;
  /** Oktas 0–8 by the hour; `null` where unknown; empty without a forecast. */
  readonly cloud: readonly { readonly at: Date; readonly oktas: number | null }[];
  readonly moon: {
    readonly points: readonly { readonly at: Date; readonly altitudeDeg: number }[];
    readonly illuminatedFraction: number;
    readonly waxing: boolean;
    /** Seen from south of the equator: a waxing Moon is lit on the left. */
    readonly southern?: boolean;
  };
};

export type SeasonChart = Described & {
  readonly kind: "season";
  /** Twelve bars: dark, Moon-free hours a night above the skyline. */
  readonly months: readonly { readonly label: string; readonly hoursPerNight: number }[];
  /** Bracketed weeks, from and to in [0, 12] months; `toMonth` before `fromMonth` runs over the year's end. */
  readonly best: { readonly fromMonth: number; readonly toMonth: number; readonly label: string } | null;
};

/** A star as charts draw it; a tint follows from the colour index. */
export type ChartStar = {
  /** Degrees on the tangent plane, east positive. */
  readonly xiDeg: number;
  /** Degrees on the tangent plane, north positive. */
  readonly etaDeg: number;
  readonly magnitude: number;
  readonly colourIndex: number | null;
};

export type ChartEllipse = {
  readonly name: string;
  readonly kindWords: string;
  readonly xiDeg: number;
  readonly etaDeg: number;
  readonly majorDeg: number;
  readonly minorDeg: number;
  readonly positionAngleDeg: number;
};

export type FramingChart = Described & {
  readonly kind: "framing";
  /** Position angle of the frame's up; the sky is turned so that the sensor stands upright. */
  readonly positionAngleDeg: number;
  readonly fieldWidthDeg: number;
  readonly fieldHeightDeg: number;
  readonly stars: readonly ChartStar[];
  readonly target: ChartEllipse | null;
  readonly neighbours: readonly ChartEllipse[];
  /** Centres on the tangent plane; `order` is drawn large. One panel for a single frame. */
  readonly panels: readonly {
    readonly order: number;
    readonly xiDeg: number;
    readonly etaDeg: number;
    readonly widthDeg: number;
    readonly heightDeg: number;
    /** Turn of this panel against the chart's up, north through east; 0 when parallel. */
    readonly turnDeg: number;
  }[];
  /**
   * PNG or JPEG of the sky as the frame sees it, already turned, its middle on the tangent
   * point and `spanDeg` across its width; drawn in bone on umber; `null` without.
   */
  readonly picture: {
    readonly bytes: Uint8Array;
    readonly mediaType: string;
    readonly spanDeg: number;
  } | null;
};

export type SubLengthChart = Described & {
  readonly kind: "sub-length";
  /** Hours at hand, named beside the bars; left out when unknown. */
  readonly hoursAtHand?: number;
  /** Hours lost, of the hours at hand, to each choice of sub. */
  readonly choices: readonly {
    readonly subSeconds: number;
    readonly hoursLost: number;
    readonly chosen: boolean;
  }[];
};

export type CurveChart = Described & {
  readonly kind: "curve";
  readonly xLabel: string;
  readonly yLabel: string;
  /** Words along the foot instead of figures, such as `north` at 0 and at 360. */
  readonly xMarks?: readonly { readonly at: number; readonly text: string }[];
  readonly lines: readonly {
    readonly name: string;
    /** Hatched down to the foot: a skyline, not a curve. */
    readonly filled?: boolean;
    readonly points: readonly { readonly x: number; readonly y: number }[];
  }[];
  readonly marks: readonly { readonly x: number; readonly y: number; readonly label: string }[];
};

export type PoleChart = Described & {
  readonly kind: "pole";
  /** Two dials; `hours` of a 12-hour face, in [0, 12). */
  readonly dials: readonly { readonly caption: string; readonly hours: number; readonly words: string }[];
};

export type ProgressChart = Described & {
  readonly kind: "progress";
  /** Stair lines of hours by night. */
  readonly lines: readonly {
    readonly name: string;
    readonly wantedHours: number | null;
    readonly steps: readonly { readonly night: string; readonly hours: number }[];
  }[];
};

export type OutreachStripChart = Described & {
  readonly kind: "outreach-strip";
  readonly evenings: readonly {
    readonly night: string;
    /** Short label under the post, such as `12`. */
    readonly label: string;
    readonly weekend: boolean;
    /** Dark hours before the audience leaves. */
    readonly darkHours: number;
    readonly illuminatedFraction: number;
    readonly waxing: boolean;
    /** Seen from south of the equator: a waxing Moon is lit on the left. */
    readonly southern?: boolean;
    /** Names of the planets in reach; drawn by their initials. */
    readonly planets: readonly string[];
    /** 1–3 for the best, with its reason; `null` for the rest. */
    readonly rank: number | null;
    readonly reason: string | null;
    /** The verdict as a word, as far as a forecast reaches; `null` beyond. */
    readonly verdict: string | null;
  }[];
};

/**
 * A disc as each kind of view shows it. North up and east left before turning: a position
 * angle `p` points `p + turnDeg` anticlockwise from the top, then is mirrored if so asked.
 * The first view is drawn largest and carries the names.
 */
export type DiscView = {
  readonly caption: string;
  /** Mirrored left to right, as a star diagonal does. */
  readonly mirrored: boolean;
  /** Turn of the picture, degrees anticlockwise, applied before mirroring: 0 is north up. */
  readonly turnDeg: number;
};

export type MoonChart = Described & {
  readonly kind: "moon";
  /** Position angle of the bright limb, of the axis; north through east. */
  readonly brightLimbDeg: number;
  readonly axisDeg: number;
  readonly illuminatedFraction: number;
  readonly librationLongitudeDeg: number;
  readonly librationLatitudeDeg: number;
  readonly views: readonly DiscView[];
  readonly features: readonly {
    readonly name: string;
    readonly longitudeDeg: number;
    readonly latitudeDeg: number;
    readonly diameterKm: number;
    /** Named and stressed: on the terminator. */
    readonly onTerminator: boolean;
  }[];
};

export type SunChart = Described & {
  readonly kind: "sun";
  readonly axisDeg: number;
  readonly b0Deg: number;
  readonly l0Deg: number;
  readonly views: readonly DiscView[];
};

export type JupiterChart = Described & {
  readonly kind: "jupiter";
  readonly turnDeg: number;
  readonly mirrored: boolean;
  /** In Jupiter's equatorial radii from its centre, west positive; I–IV. */
  readonly moons: readonly {
    readonly numeral: "I" | "II" | "III" | "IV";
    readonly x: number;
    readonly y: number;
    readonly state: "clear" | "transit" | "occulted" | "eclipsed";
  }[];
  readonly shadows: readonly {
    readonly numeral: "I" | "II" | "III" | "IV";
    readonly x: number;
    readonly y: number;
  }[];
};

/** A one-page sheet for those who run a public evening. */
export type SheetChart = Described & {
  readonly kind: "sheet";
  readonly blocks: readonly { readonly heading: string; readonly lines: readonly string[] }[];
};

export type Chart =
  | NightChart
  | SeasonChart
  | FramingChart
  | SubLengthChart
  | CurveChart
  | PoleChart
  | ProgressChart
  | OutreachStripChart
  | MoonChart
  | SunChart
  | JupiterChart
  | SheetChart;
