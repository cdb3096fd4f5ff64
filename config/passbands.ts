/**
 * How people write their filters in a log.
 *
 * The names are those that `exposure` and `rig` know; compared without case, spaces,
 * hyphens and brackets.
 *
 * @packageDocumentation
 */
import type { PassbandNames } from "../core/log/passband.ts";
import { LINE_SPELLINGS, NO_FILTER } from "./filters.ts";

export const PASSBANDS: readonly PassbandNames[] = [
  ...Object.entries(LINE_SPELLINGS).map(([name, aliases]) => ({ name, aliases })),
  { name: "luminance", aliases: ["lum", "l", "clear", "uv/ir", "ir cut", "ir-cut"] },
  { name: "red", aliases: ["r"] },
  { name: "green", aliases: ["g"] },
  { name: "blue", aliases: ["b"] },
  {
    name: NO_FILTER.name,
    aliases: ["no filter", "without filter", "unfiltered", "osc", "rgb", "colour", "color"],
  },
];
