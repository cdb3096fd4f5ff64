/**
 * A filter of a rig: its bands, the subs taken through it, the sky measured through it.
 *
 * @packageDocumentation
 */
import {
  FILTER_TRANSMISSION,
  FILTERS_AT_MOST,
  MEASURED_ADU,
  MEASURED_SKY_ELECTRONS,
  SUB_SECONDS,
} from "../../config/input-limits.ts";
import type { CameraRig, Filter, MeasuredSky } from "../../core/rig/rig.ts";
import { AskError } from "../ask-error.ts";
import type { Request } from "../request.ts";
import type { CameraFacts } from "./camera-facts.ts";
import { parseBands, parseFilter } from "./filter.ts";
import { cleanName, matchKey } from "./names.ts";
import { flagOption, numberOption, textOption } from "./numbers.ts";
import { defineFlag, defineNumber, defineText, RIG } from "./options.ts";

export const RIG_FILTER_OPTIONS = [
  { ...RIG, description: "One of your saved rigs", required: true },
  defineText("name", "What you call the filter; none for no filter", { required: true }),
  defineText("bands", "Centre/width in nm: 656/7, or 656/7+501/7"),
  defineNumber("transmission", "Share of the light it passes at its peak (0.85)"),
  defineNumber("sub", "The sub you usually take through it, seconds"),
  defineNumber("measured-adu", "Measured sky: background of one of your subs, ADU"),
  defineNumber("measured-offset", "Measured sky: level of a dark frame of the same length, ADU"),
  defineNumber("measured-seconds", "Measured sky: the length of that sub, seconds"),
  defineFlag("remove", "Forget the filter"),
];

/** Electrons measured are of the sky alone: the dark frame's level has taken the rest off. */
type FilterChange = { readonly facts: CameraFacts; readonly done: string };

/**
 * The rig's facts with the filter kept, changed or forgotten.
 *
 * @throws AskError naming the option at fault
 */
export function changedFilter(request: Request, said: CameraFacts, rig: CameraRig): FilterChange {
  const asked = textOption(request, "name") ?? "";
  const name = matchKey(asked) === "none" ? "none" : cleanName("name", asked);
  const before = said.filters.find((filter) => matchKey(filter.name) === matchKey(name));
  const kept = before?.name ?? name;
  if (flagOption(request, "remove"))
    return forgotten(said, kept, before !== undefined || Object.hasOwn(said.subSeconds, kept));

  const filter = kept === "none" ? null : filterMade(request, kept, before, said);
  const seconds = numberOption(request, "sub", { ...SUB_SECONDS, unit: "seconds" });
  const measured = measuredSky(request, kept, rig);
  return {
    done: kept === "none" ? "Your subs without a filter are kept" : `The filter ${kept} is kept`,
    facts: {
      ...said,
      filters:
        filter === null
          ? said.filters
          : [...said.filters.filter((one) => one !== before), filter].sort(byCentre),
      subSeconds: seconds === null ? said.subSeconds : { ...said.subSeconds, [kept]: seconds },
      measuredSkies:
        measured === null
          ? said.measuredSkies
          : [...said.measuredSkies.filter(({ filterName }) => filterName !== kept), measured],
    },
  };
}

function filterMade(request: Request, name: string, before: Filter | undefined, said: CameraFacts): Filter {
  if (before === undefined && said.filters.length >= FILTERS_AT_MOST) {
    throw new AskError(
      "too-many-filters",
      "name",
      `A rig keeps at most ${FILTERS_AT_MOST} filters: forget one first.`,
    );
  }
  const bands = textOption(request, "bands");
  const transmission = numberOption(request, "transmission", FILTER_TRANSMISSION);
  const known =
    before ??
    (bands === null ? knownByName(name) : { transmission: parseFilter(bands, "bands").transmission });
  const own = bands === null ? undefined : parseBands("bands", bands);
  return {
    name,
    bands: own ?? ("bands" in known ? known.bands : []),
    transmission: transmission ?? known.transmission,
  };
}

/** A filter whose name says what it is. */
function knownByName(name: string): Filter {
  try {
    return parseFilter(name, "name");
  } catch {
    throw new AskError(
      "no-bands",
      "bands",
      `“bands” is missing: ${name} says nothing of its own; give centre/width in nm, such as 656/7.`,
    );
  }
}

function forgotten(said: CameraFacts, name: string, isKept: boolean): FilterChange {
  if (!isKept) {
    const known = said.filters.map((filter) => filter.name).join(", ") || "none yet";
    throw new AskError(
      "unknown-filter",
      "name",
      `“name”: the rig keeps no filter ${name}. It keeps: ${known}.`,
    );
  }
  const { [name]: _, ...subSeconds } = said.subSeconds;
  return {
    done: `The filter ${name} is forgotten`,
    facts: {
      ...said,
      filters: said.filters.filter((filter) => filter.name !== name),
      subSeconds,
      measuredSkies: said.measuredSkies.filter(({ filterName }) => filterName !== name),
    },
  };
}

function measuredSky(request: Request, filterName: string, rig: CameraRig): MeasuredSky | null {
  const names = ["measured-adu", "measured-offset", "measured-seconds"] as const;
  const [adu, offset, seconds] = [
    numberOption(request, names[0], { ...MEASURED_ADU, unit: "ADU" }),
    numberOption(request, names[1], { ...MEASURED_ADU, unit: "ADU" }),
    numberOption(request, names[2], { ...SUB_SECONDS, unit: "seconds" }),
  ];
  if (adu === null && offset === null && seconds === null) return null;
  if (adu === null || offset === null || seconds === null) {
    const missing = names[[adu, offset, seconds].indexOf(null)] ?? names[0];
    throw new AskError(
      "half-a-measurement",
      missing,
      `“${missing}” is missing: a measured sky needs ${names.join(", ")} together.`,
    );
  }
  const electronsPerPixelPerSecond = ((adu - offset) * rig.mode.electronsPerAdu) / seconds;
  const { min, max } = MEASURED_SKY_ELECTRONS;
  if (electronsPerPixelPerSecond < min || electronsPerPixelPerSecond > max) {
    throw new AskError(
      "out-of-range",
      names[0],
      `“${names[0]}” less the dark frame's level leaves ${Number(electronsPerPixelPerSecond.toPrecision(3))} e/s a pixel of sky: from ${min} to ${max} is believed.`,
    );
  }
  return { filterName, electronsPerPixelPerSecond };
}

function byCentre(one: Filter, other: Filter): number {
  return (other.bands[0]?.centreNm ?? 0) - (one.bands[0]?.centreNm ?? 0);
}
