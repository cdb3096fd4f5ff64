/**
 * Which answers may be shown to the whole channel by whoever asked.
 *
 * A shared question is asked once more, so only what changes nothing stands here,
 * and nothing that lists a member's own records.
 *
 * @packageDocumentation
 */
export const SHAREABLE_COMMANDS: ReadonlySet<string> = new Set([
  "tonight",
  "forecast",
  "night",
  "target",
  "season",
  "framing",
  "exposure",
  "align",
  "sun",
  "moon",
  "planets",
  "events",
]);

/** Which answers speak of weather, and do so in the club's units. */
export const WEATHER_COMMANDS: ReadonlySet<string> = new Set(["tonight", "forecast", "club", "outreach"]);
