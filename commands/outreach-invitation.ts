/**
 * A planned session in the words of an invitation, for the public.
 *
 * @packageDocumentation
 */
import { AUDIENCES } from "../config/outreach-evenings.ts";
import { intervalHours } from "../core/interval.ts";
import type { Audience } from "../core/outreach/audience.ts";
import { type Sight, worthOf } from "../core/outreach/sights.ts";
import { sunDisc } from "../core/outreach/sun-disc.ts";
import type { Site } from "../core/site.ts";
import type { Invitation } from "./announcements.ts";
import { cautionsFor } from "./cautions.ts";
import type { Chart } from "./chart.ts";
import type { Context } from "./context.ts";
import { keptOptions } from "./kept-options.ts";
import { nightPicture } from "./night-picture.ts";
import { type PublicEvening, pointingsOf, publicEvening } from "./outreach-evening.ts";
import { planCautions } from "./outreach-safety.ts";
import { type SunPlan, sunPlan } from "./outreach-sun-plan.ts";
import { endToSunriseMinutes } from "./pointings.ts";
import { isSunSession } from "./read/session.ts";
import type { Request } from "./request.ts";
import { sunChart } from "./sun.ts";
import { clockSpan, durationWords } from "./words/clock.ts";
import { listWords } from "./words/sky.ts";

/** Named in an invitation. */
const SHOWN_AT_MOST = 4;
const PICTURED = 3;
/** What is kept of a member's coordinates: 0.01°. */
const COORDINATE_STEPS = 100;

/** The options of a plan that an invitation is made with. */
export const PLAN_OPTIONS = [
  "site",
  "night",
  "hours",
  "audience",
  "instruments",
  "guests",
  "session",
  "show",
  "sky",
] as const;

export type Drafted = {
  readonly invitation: Invitation;
  /** The picture that goes with it. */
  readonly chart: Chart;
  /** The cautions of those who run it. */
  readonly crewCautions: Invitation["cautions"];
};

/** Name and place as the organiser gave them; `null` for the usual. */
export type Naming = { readonly name: string | null; readonly place: string | null };

/** Plans the session asked for and words its invitation. @throws AskError as the plan does */
export async function draftInvitation(request: Request, context: Context, naming: Naming): Promise<Drafted> {
  const asked = keptOptions(request, PLAN_OPTIONS);
  return isSunSession(request)
    ? sunDraft(await sunPlan(request, context), naming, asked)
    : eveningDraft(await publicEvening(request, context), naming, asked);
}

function eveningDraft(evening: PublicEvening, naming: Naming, asked: Invitation["asked"]): Drafted {
  const { situation, session, audience, verdict } = evening;
  const { site, times } = situation;
  const best = bestSights(evening);
  const cautions = cautionsFor({
    pointings: pointingsOf(evening),
    endToSunriseMinutes: endToSunriseMinutes(times, session.end),
    publicSession: true,
    children: AUDIENCES[audience].children,
    awayFromHome: true,
  });
  const shown = listWords(best.slice(0, SHOWN_AT_MOST).map(({ what }) => what.name));
  const invitation: Invitation = {
    name: naming.name ?? `Stars over ${site.name}`,
    night: times.night.date,
    session: "night",
    span: { start: session.start, end: session.end },
    site: rounded(site),
    place: naming.place ?? site.name,
    summary:
      shown === ""
        ? "Come and look at the night sky with us."
        : `Come and look at ${shown} with us, by eye and through the club's telescopes.`,
    lines: [
      ...audienceLines(audience),
      "Dress warmer than seems needed; bring a red torch if you have one, and no white light.",
      "It needs a clear sky: look here once more before you set out.",
    ],
    cautions,
    asked,
  };
  return {
    invitation,
    chart: nightPicture({
      site,
      times,
      hours: verdict.kind === "unknown" ? [] : verdict.hours,
      paths: best.slice(0, PICTURED).map(({ what, track, window }) => ({
        name: what.name,
        track,
        windows: [window],
      })),
      window: { ...invitation.span, label: durationWords(intervalHours(session)) },
      title: `We show the sky from ${clockSpan(session, site.timeZone)}`,
      alt: `The heights of ${shown === "" ? "the Moon" : shown} through the night. ${invitation.summary}`,
      cautions: cautions.map(({ text }) => text),
    }),
    crewCautions: planCautions(evening),
  };
}

/** What is shown, the worthiest first, each once. */
function bestSights({ stations }: PublicEvening): Sight[] {
  const shown = stations.flatMap(({ stops }) => stops.map(({ sight }) => sight));
  const byWorth = [...shown].sort((one, other) => worthOf(other) - worthOf(one));
  return byWorth.filter(
    ({ what }, index) => byWorth.findIndex((other) => other.what.name === what.name) === index,
  );
}

function sunDraft(plan: SunPlan, naming: Naming, asked: Invitation["asked"]): Drafted {
  const { site, found, audience, instruments } = plan;
  const children = AUDIENCES[audience].children;
  const cautions = cautionsFor({ solar: true, publicSession: true, children });
  const eclipse = found.events[0];
  const invitation: Invitation = {
    name: naming.name ?? `The Sun at ${site.name}`,
    night: found.day.date,
    session: "sun",
    span: found.span,
    site: rounded(site),
    place: naming.place ?? site.name,
    summary: `Come and look at ${eclipse === undefined ? "the Sun" : `the ${eclipse.title}`} with us, safely, through telescopes with filters over their fronts.`,
    lines: [
      ...audienceLines(audience),
      "Bring no telescope and no binoculars of your own; a hat and sun cream help.",
      "It needs a clear sky: look here once more before you set out.",
    ],
    cautions,
    asked,
  };
  return {
    invitation,
    chart: sunChart(
      sunDisc(site, found.span.start),
      site,
      cautions.map(({ text }) => text),
    ),
    crewCautions: cautionsFor({
      solar: true,
      publicSession: true,
      children,
      mainsPower: instruments.some(({ kind }) => kind === "solar-telescope"),
    }),
  };
}

function audienceLines(audience: Audience): string[] {
  switch (audience) {
    case "families":
      return ["For families: every child with an adult."];
    case "school":
      return ["For the class and its teachers."];
    case "adults":
      return ["For adults."];
    case "mixed":
      return ["For everybody: every child with an adult."];
  }
}

function rounded(site: Site): Site {
  const coarse = (degrees: number) => Math.round(degrees * COORDINATE_STEPS) / COORDINATE_STEPS;
  return { ...site, latitudeDeg: coarse(site.latitudeDeg), longitudeDeg: coarse(site.longitudeDeg) };
}
