/**
 * The short messages that follow a post: a change, a warning, further mentions.
 *
 * Each carries the cautions of the post it belongs to.
 *
 * @packageDocumentation
 */
import type { Answer } from "../../commands/answer.ts";
import { clockSpan, clockTime } from "../../commands/words/clock.ts";
import type { EarlyWarning } from "./early-warning.ts";
import type { Shown } from "./watch.ts";

/** An answer that says one thing. */
function notice(title: string, summary: string, post: Answer): Answer {
  return {
    title,
    summary,
    sections: [],
    charts: [],
    cautions: post.cautions,
    next: [],
    figures: {},
    credits: post.credits,
  };
}

/** What those who are going out are told when the post changes. */
export function changeNotice(from: Shown, to: Shown, siteName: string, zone: string, post: Answer): Answer {
  const span = to.window === null ? null : clockSpan(to.window, zone);
  if (from.verdict !== to.verdict) {
    const title = `Changed at ${siteName}: now ${to.verdict}`;
    const was = `The forecast was “${from.verdict}” and is now “${to.verdict}”.`;
    return notice(title, span === null ? was : `${was} Usable from ${span}.`, post);
  }
  const title = `The window moved at ${siteName}`;
  return notice(title, span === null ? "No usable window is left." : `It is now from ${span}.`, post);
}

/** What those who are out are told an hour ahead. */
export function warningNotice(warning: EarlyWarning, siteName: string, zone: string, post: Answer): Answer {
  const time = clockTime(warning.at, zone);
  switch (warning.kind) {
    case "cloud":
      return notice(
        `Cloud from about ${time} at ${siteName}`,
        `The forecast has ${Math.round(warning.percent)} % cloud by then: finish what you are on.`,
        post,
      );
    case "dew":
      return notice(
        `Dew from about ${time} at ${siteName}`,
        "Optics that face the sky will be at their dew point: heaters on, caps at hand.",
        post,
      );
    case "frost":
      return notice(
        `Frost from about ${time} at ${siteName}`,
        "Optics that face the sky will be at their frost point: heaters on, caps at hand.",
        post,
      );
  }
}

/** Rings those whom the post itself had no room for. */
export function mentionNotice(post: Answer): Answer {
  return notice(post.title, post.summary, post);
}
