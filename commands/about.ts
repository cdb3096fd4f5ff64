/**
 * `about`: what this is, what it rests on, whom to thank, and what it is not.
 *
 * @packageDocumentation
 */
import { CAUTION_TEXTS } from "../config/caution-texts.ts";
import { DATA_CREDITS, KNOWN_LIMITS, SOURCES } from "../config/sources.ts";
import type { Command } from "./command.ts";

export const about: Command = {
  definition: {
    name: "about",
    description: "What this is, its sources, credits, limits and cautions",
    options: [],
  },
  audience: "member",

  async answer() {
    const sources = SOURCES.map(({ what, from }) => `${what}: ${from}.`);
    return {
      title: "Duskbell, for a local astronomy club",
      summary:
        "It turns a forecast of a clear night into something to show for it: whether to set up, what fits your site and rig, for how long to expose, and what to show the public.",
      sections: [
        { heading: "Sources", lines: sources },
        { heading: "Limits", lines: KNOWN_LIMITS },
        { heading: "Cautions, shown wherever they apply", lines: Object.values(CAUTION_TEXTS) },
      ],
      charts: [],
      cautions: [],
      next: [
        { label: "The coming night", command: "night", options: {} },
        { label: "What is kept of you", command: "mydata", options: { subcommand: "export" } },
      ],
      figures: {
        sources: SOURCES,
        limits: KNOWN_LIMITS,
        credits: DATA_CREDITS,
        cautions: Object.entries(CAUTION_TEXTS).map(([id, text]) => ({ id, text })),
      },
      credits: DATA_CREDITS,
    };
  },
};
