/**
 * `log pool`: targets that members shoot together.
 *
 * @packageDocumentation
 */
import { WANTED_HOURS } from "../config/log-limits.ts";
import type { Answer, Figure } from "./answer.ts";
import { AskError } from "./ask-error.ts";
import type { Context } from "./context.ts";
import type { Pool, PoolShare } from "./log-books.ts";
import { filedObject, filedPassband, rigIfAny } from "./log-rows.ts";
import { flagOption, numberOption, textOption } from "./read/numbers.ts";
import { defineFlag, defineNumber, defineSubcommand, FILTER, TARGET_IF_ANY } from "./read/options.ts";
import type { Request } from "./request.ts";
import { durationWords } from "./words/clock.ts";
import { listWords } from "./words/sky.ts";

export const LOG_POOL = defineSubcommand(
  "pool",
  "Targets that members shoot together: wanted, in hand, to do",
  [
    TARGET_IF_ANY,
    FILTER,
    defineNumber("hours", "Hours wanted through the filter; 0 wants none"),
    defineFlag("join", "Count your hours of it"),
    defineFlag("leave", "Count your hours of it no more"),
    defineFlag("close", "End the pool, for organisers"),
  ],
);

export async function showPools(request: Request, context: Context): Promise<Answer> {
  const named = textOption(request, "target");
  if (named === null) {
    refuseWithoutTarget(request);
    return listPools(request, context);
  }
  const object = filedObject(named, "target", request, context);
  const done = await changePool(request, context, object);
  return describePool(request, context, object, done);
}

function refuseWithoutTarget(request: Request): void {
  const given = ["hours", "filter", "join", "leave", "close"].find(
    (option) => request.options[option] !== undefined && request.options[option] !== false,
  );
  if (given === undefined) return;
  throw new AskError("no-target", "target", `“target” is missing: “${given}” is about one pooled target.`);
}

/** What the options ask for, done; a sentence on it, or an empty one. */
async function changePool(request: Request, context: Context, object: string): Promise<string> {
  const { pools } = context.books;
  const { club, member } = request;
  const hours = numberOption(request, "hours", { min: 0, max: WANTED_HOURS.max, unit: "hours" });
  const passband = filedPassband(request, await rigIfAny(request, context));
  const [join, leave, close] = (["join", "leave", "close"] as const).map((name) => flagOption(request, name));
  if (join && leave) {
    throw new AskError("join-and-leave", "leave", "“leave” and “join” cannot both be asked for.");
  }
  if (close) {
    if (!member.organiser) {
      throw new AskError("organisers-only", "close", "“close” is for the club's organisers.");
    }
    await pools.close(club, object);
    return `The pool on ${object} is closed; everybody keeps their own log.`;
  }
  if (hours !== null && passband === null) {
    throw new AskError(
      "no-filter",
      "filter",
      "“filter” is missing: hours are wanted through a filter, or none.",
    );
  }
  if (leave) {
    await pools.leave(club, object, member.id);
    return `Your hours of ${object} are counted no more.`;
  }
  if (hours !== null && passband !== null) {
    await pools.want(club, object, passband, hours === 0 ? null : hours);
    if (hours > 0) await pools.join(club, object, { id: member.id, name: member.name });
    return hours === 0
      ? `Nothing of ${object} is wanted through ${passband} now.`
      : `${durationWords(hours)} of ${object} are wanted through ${passband}.`;
  }
  if (!join) return "";
  await pools.join(club, object, { id: member.id, name: member.name });
  return `Your hours of ${object} are counted, and the club sees them.`;
}

async function listPools(request: Request, context: Context): Promise<Answer> {
  const pools = await context.books.pools.list(request.club);
  const told = await Promise.all(
    pools.map(async (pool) => ({
      pool,
      shares: await context.books.pools.shares(request.club, pool.object),
    })),
  );
  return {
    title: "Pooled targets",
    summary:
      pools.length === 0
        ? "The club pools no target yet: begin with target, filter and hours."
        : `The club pools ${listWords(pools.map(({ object }) => object))}.`,
    sections: told.map(({ pool, shares }) => ({ heading: pool.object, lines: poolLines(pool, shares) })),
    charts: [],
    cautions: [],
    next: pools.slice(0, 3).map(({ object }) => ({
      label: object,
      command: "log",
      options: { subcommand: "pool", target: object },
    })),
    figures: { pools: told.map(({ pool, shares }) => poolFigures(pool, shares)) },
    credits: [],
  };
}

async function describePool(
  request: Request,
  context: Context,
  object: string,
  done: string,
): Promise<Answer> {
  const { pools } = context.books;
  const pool = (await pools.list(request.club)).find((one) => one.object === object);
  if (pool === undefined) {
    return {
      title: `No pool on ${object}`,
      summary: done === "" ? `The club does not pool ${object}; name filter and hours to begin.` : done,
      sections: [],
      charts: [],
      cautions: [],
      next: [],
      figures: { pools: [] },
      credits: [],
    };
  }
  const shares = await pools.shares(request.club, object);
  const isIn = pool.members.some(({ id }) => id === request.member.id);
  return {
    title: `Pooled: ${object}`,
    summary: done === "" ? `${poolLines(pool, shares)[0] ?? "Nothing is wanted yet."}` : done,
    sections: [{ heading: "", lines: poolLines(pool, shares) }],
    charts: [],
    cautions: [],
    next: isIn
      ? []
      : [
          {
            label: "Count mine too",
            command: "log",
            options: { subcommand: "pool", target: object, join: true },
          },
        ],
    figures: { pools: [poolFigures(pool, shares)] },
    credits: [],
  };
}

type PoolTally = {
  readonly passband: string;
  readonly wantedHours: number | null;
  readonly inHandHours: number;
  readonly leftHours: number | null;
};

/** Wanted, in hand and to do, by filter. */
function talliesOf({ wanted }: Pool, shares: readonly PoolShare[]): readonly PoolTally[] {
  const passbands = new Set([...wanted, ...shares].map(({ passband }) => passband));
  return [...passbands].map((passband) => {
    const wantedHours = wanted.find((wish) => wish.passband === passband)?.hours ?? null;
    const inHandHours = shares
      .filter((share) => share.passband === passband)
      .reduce((sum, { clockHours }) => sum + clockHours, 0);
    const leftHours = wantedHours === null ? null : Math.max(0, wantedHours - inHandHours);
    return { passband, wantedHours, inHandHours, leftHours };
  });
}

function poolLines(pool: Pool, shares: readonly PoolShare[]): string[] {
  const members = pool.members.map(({ id, name }) => {
    const hours = shares
      .filter((share) => share.member === id)
      .reduce((sum, { clockHours }) => sum + clockHours, 0);
    return `${name} ${durationWords(hours)}`;
  });
  return [
    ...talliesOf(pool, shares).map(({ passband, wantedHours, inHandHours, leftHours }) => {
      const inHand = `${passband}: ${durationWords(inHandHours)} in hand`;
      if (wantedHours === null || leftHours === null) return `${inHand}.`;
      return `${inHand} of ${durationWords(wantedHours)} wanted, ${leftHours === 0 ? "done" : `${durationWords(leftHours)} to do`}.`;
    }),
    members.length === 0 ? "Nobody has joined yet." : `By ${listWords(members)}.`,
  ];
}

function poolFigures(pool: Pool, shares: readonly PoolShare[]): Figure {
  return {
    object: pool.object,
    filters: talliesOf(pool, shares).map((tally) => ({ ...tally })),
    members: pool.members.map(({ id, name }) => ({
      name,
      hours: shares
        .filter((share) => share.member === id)
        .reduce((sum, { clockHours }) => sum + clockHours, 0),
    })),
  };
}
