/**
 * How often the verdicts were right: for all models together and for each alone.
 *
 * @packageDocumentation
 */

export type JudgedVerdict = "go" | "marginal" | "no-go";

/** A verdict as it was given. */
export type VerdictNote = {
  /** `YYYY-MM-DD`. */
  readonly night: string;
  /** Nights ahead: tonight is 0. */
  readonly leadNights: number;
  /** `null` for the verdict of all models together. */
  readonly model: string | null;
  readonly verdict: JudgedVerdict;
  /** Share of the models of that opinion; `null` for a single one. */
  readonly agreement: number | null;
};

/** What one who was out says of the night: whether the sky was worth it. */
export type SkyAnswer = { readonly night: string; readonly member: string; readonly good: boolean };

/** How one source's verdicts at one lead turned out. */
export type RecordLine = {
  readonly model: string | null;
  readonly leadNights: number;
  readonly nights: number;
  readonly go: { readonly right: number; readonly wrong: number };
  readonly noGo: { readonly right: number; readonly wrong: number };
  /** Neither right nor wrong: how such nights turned out. */
  readonly marginal: { readonly good: number; readonly poor: number };
};

/** Forecasts of one stated share, and how often the sky was good. */
export type CalibrationBin = {
  readonly fromShare: number;
  readonly toShare: number;
  readonly nights: number;
  readonly meanShare: number;
  readonly goodShare: number;
};

export type TrackRecord = {
  readonly lines: readonly RecordLine[];
  /** Nights with an answer that settles them. */
  readonly nightsKnown: number;
  /** Of all models together, tonight's verdict; `null` until there are enough nights. */
  readonly score: { readonly brier: number; readonly bins: readonly CalibrationBin[] } | null;
};

/**
 * Sets verdicts against what those who were out said.
 *
 * @param leastNights - nights of a score before it is shown
 *
 * @remarks
 * A night on which the answers are split evenly settles nothing. For the score a go
 * with agreement a is a probability a of a good sky, a no-go 1 − a; marginal nights and
 * verdicts without an agreement have none.
 */
export function trackRecord(
  notes: readonly VerdictNote[],
  answers: readonly SkyAnswer[],
  leastNights: number,
): TrackRecord {
  const outcomes = outcomesOf(answers);
  const settled = notes.filter(({ night }) => outcomes.has(night));
  const groups = new Map<string, VerdictNote[]>();
  for (const note of settled) {
    const key = `${note.model ?? ""}|${note.leadNights}`;
    groups.set(key, [...(groups.get(key) ?? []), note]);
  }
  const pairs = settled.flatMap((note) => {
    const probability = note.model === null && note.leadNights === 0 ? probabilityOf(note) : null;
    return probability === null ? [] : [{ probability, happened: outcomes.get(note.night) === true }];
  });
  return {
    lines: [...groups.values()]
      .map((group) => recordLine(group, outcomes))
      .sort(
        (one, other) =>
          (one.model ?? "").localeCompare(other.model ?? "") || one.leadNights - other.leadNights,
      ),
    nightsKnown: outcomes.size,
    score:
      pairs.length < Math.max(1, leastNights)
        ? null
        : { brier: brierScore(pairs), bins: calibrationBins(pairs, BINS) },
  };
}

const BINS = 5;

type Pair = { readonly probability: number; readonly happened: boolean };

/**
 * The mean square of probability less outcome: 0 is perfect, 0.25 is a coin.
 *
 * @param pairs - at least one
 *
 * @remarks Source: G. W. Brier 1950, Monthly Weather Review 78, 1 (the form for two outcomes).
 */
export function brierScore(pairs: readonly Pair[]): number {
  const squares = pairs.map(({ probability, happened }) => (probability - (happened ? 1 : 0)) ** 2);
  return squares.reduce((sum, square) => sum + square, 0) / pairs.length;
}

/** Pairs in bins of equal width over [0, 1], the empty ones left out. */
export function calibrationBins(pairs: readonly Pair[], count: number): readonly CalibrationBin[] {
  return Array.from({ length: count }, (_, index) => {
    const inside = pairs.filter(
      ({ probability }) => Math.min(count - 1, Math.floor(probability * count)) === index,
    );
    return {
      fromShare: index / count,
      toShare: (index + 1) / count,
      nights: inside.length,
      meanShare: inside.reduce((sum, { probability }) => sum + probability, 0) / inside.length,
      goodShare: inside.filter(({ happened }) => happened).length / inside.length,
    };
  }).filter(({ nights }) => nights > 0);
}

/** Good or not by the majority of those who were out; a tie leaves the night out. */
function outcomesOf(answers: readonly SkyAnswer[]): ReadonlyMap<string, boolean> {
  const votes = new Map<string, number>();
  for (const { night, good } of answers) votes.set(night, (votes.get(night) ?? 0) + (good ? 1 : -1));
  return new Map([...votes].filter(([, sum]) => sum !== 0).map(([night, sum]) => [night, sum > 0]));
}

function probabilityOf({ verdict, agreement }: VerdictNote): number | null {
  if (agreement === null || verdict === "marginal") return null;
  return verdict === "go" ? agreement : 1 - agreement;
}

function recordLine(group: readonly VerdictNote[], outcomes: ReadonlyMap<string, boolean>): RecordLine {
  const count = (verdict: JudgedVerdict, good: boolean) =>
    group.filter((note) => note.verdict === verdict && outcomes.get(note.night) === good).length;
  return {
    model: group[0]?.model ?? null,
    leadNights: group[0]?.leadNights ?? 0,
    nights: group.length,
    go: { right: count("go", true), wrong: count("go", false) },
    noGo: { right: count("no-go", false), wrong: count("no-go", true) },
    marginal: { good: count("marginal", true), poor: count("marginal", false) },
  };
}
