/**
 * The parts of a typed log line, each in the ways people write it.
 *
 * Every function takes its part out of the line when it finds it.
 *
 * @packageDocumentation
 */
import type { EntryText } from "./entry-text.ts";

/** A night as it was typed. */
export type TypedNight =
  | { readonly kind: "date"; readonly date: string }
  | { readonly kind: "nights-ago"; readonly count: number };

export type Shot = { readonly count: number; readonly seconds: number };

/** How many were kept, and of how many when that was said too. */
export type Kept = { readonly kept: number; readonly of: number | null };

/** A number, or a fraction of a second as cameras show it. */
const NUMBER = String.raw`(1\/\d+|\d+(?:\.\d+)?)`;
/** With the space before it. `180 m 31` is Messier 31; `5m 3 rejected` is five minutes. */
const UNIT = String.raw`(\s*(?:seconds?|secs?|s|"|″|minutes?|mins?|'|′|hours?|hrs?|h)(?![a-z])|m(?![a-z])|\sm(?![a-z]|\s*\d))`;
const SUBS = "(?:subs?|sub-?frames?|frames?|lights?|exposures?|shots?|pics?|images?)";
const LOST =
  "(?:rejected|rejects?|dropped|discarded|binned|tossed|lost|bad|culled|thr(?:own|ew) (?:out|away))";
const KEPT = "(?:kept|keepers?|good|used|accepted)";
const AFTER_SUB = String.raw`(?:\s*(?:each|${SUBS})\b)*`;

/** A comma between the digits of one number, and not between a designation and `24x180`. */
const DECIMAL_COMMA = new RegExp(
  String.raw`(?<=(?<![\p{L}\d.])\d{1,5}),(?=\d{1,2}(?!\d|\s*x|\s*${LOST}|\s*${KEPT}|\s*${SUBS}))`,
  "giu",
);
const MINUTES_AND_SECONDS = /(?<![\d.])(\d+)\s*m(?:in)?\s*(\d{1,2})\s*s(?:ec(?:ond)?s?)?\b/gi;

/** Regular expressions over the pieces above, letter case apart. */
const shaped = (source: string) => new RegExp(source, "i");

/** One way of writing what has several: signs, times, degrees, decimal commas, `1m30s`. */
export function tidyLine(line: string): string {
  return line
    .normalize("NFC")
    .replaceAll("℃", "°C")
    .replace(/[º˚]/g, "°")
    .replace(/[−–—](?=\s*\d)/g, "-")
    .replace(/\bminus\s+(?=\d)/gi, "-")
    .replace(/[×✕✖]/g, " x ")
    .replace(/(?<=\d)\s*\*\s*(?=\d)/g, " x ")
    .replace(DECIMAL_COMMA, ".")
    .replace(MINUTES_AND_SECONDS, (_, minutes, seconds) => `${Number(minutes) * 60 + Number(seconds)}s`)
    .replace(/\s+/g, " ")
    .trim();
}

/** What people note beside the subs and the log does not keep. */
export function takeIgnored(text: EntryText): readonly string[] {
  return [
    /\bbin(?:ning|ned)?\s*\d(?:\s*x\s*\d)?\b/i,
    /\boffset\s*[:=]?\s*\d+\b/i,
    /\b\d+(?:\.\d+)?\s*nm\b/i,
    /\bf\s*\/\s*\d+(?:\.\d+)?\b/i,
    /[=(]\s*\d+(?:\.\d+)?\s*(?:hours?|hrs?|h|minutes?|mins?|m)(?:\s*\d+\s*m(?:in)?)?(?:\s*total)?\s*\)?(?!\w)/i,
    /\btotal\s*[:=]?\s*\d+(?:\.\d+)?\s*(?:hours?|hrs?|h|minutes?|mins?|m)\b/i,
  ].flatMap((shape) => text.take(shape)?.[0].trim() ?? []);
}

/** `2026-10-03`, `3.10.2026`, `last night`, `yesterday`, `tonight`, `today`. */
export function takeNight(text: EntryText): TypedNight | null {
  const iso = text.take(/\b\d{4}-\d{2}-\d{2}\b/);
  if (iso) return { kind: "date", date: iso[0] };
  const dotted = text.take(/\b(\d{1,2})\.(\d{1,2})\.(\d{4})\b/);
  if (dotted) {
    const [, day = "", month = "", year = ""] = dotted;
    return { kind: "date", date: `${year}-${month.padStart(2, "0")}-${day.padStart(2, "0")}` };
  }
  if (text.take(/\b(?:last night|yesterday)\b/i)) return { kind: "nights-ago", count: 1 };
  if (text.take(/\b(?:tonight|today)\b/i)) return { kind: "nights-ago", count: 0 };
  return null;
}

/** `22:40`, `from 22:40`, `22:40-23:55`: the first sub's wall clock. */
export function takeClock(text: EntryText): string | null {
  const clock = String.raw`((?:[01]?\d|2[0-3]):[0-5]\d)`;
  const until = String.raw`(?:\s*(?:-|to|till|until)\s*\d{1,2}:\d{2})?`;
  const lead = String.raw`(?:start(?:ed|ing)?(?: at)?\s*|from\s*|at\s*)?`;
  return text.take(shaped(String.raw`(?<![\d:])${lead}${clock}${until}(?![\d:])`))?.[1] ?? null;
}

/** `rotation 90`, `camera angle 90°`, `PA -12`; degrees as typed. */
export function takeRotation(text: EntryText): number | null {
  const lead = String.raw`\b(?:rotat(?:ion|ed|or)|rot\.?|(?:camera )?angle|p\.?a\.?|turned)\s*[:=]?\s*`;
  return numberOf(text.take(shaped(String.raw`${lead}(-?\d+(?:\.\d+)?)\s*(?:°|deg(?:rees)?\b)?`)));
}

/** `ISO 1600`, `iso:1600`, `1600 iso`. */
export function takeIso(text: EntryText): number | null {
  return numberOf(text.take(/\biso\s*[:=-]?\s*(\d+)\b/i)) ?? numberOf(text.take(/\b(\d+)\s*iso\b/i));
}

/** `gain100`, `gain 100`, `g100`; not `G 20x60`, which is green. */
export function takeGain(text: EntryText): number | null {
  return (
    numberOf(text.take(/\bgain\s*[:=]?\s*(\d+(?:\.\d+)?)(?![\d.]|\s*x)/i)) ??
    numberOf(text.take(/\bg(\d+)(?!\d|\s*x)/i))
  );
}

/** `kept 20 of 24`, `20 of 24 kept`, `20/24x180`, `kept 21`, `21 good`. */
export function takeKept(text: EntryText): Kept | null {
  const noUnit = String.raw`(?!\d|\s*x|${UNIT})`;
  const both =
    text.take(shaped(String.raw`\b${KEPT}\s*(\d+)\s*(?:of|out of|\/)\s*(\d+)${noUnit}`)) ??
    text.take(shaped(String.raw`\b(\d+)\s*(?:${KEPT}\s*)?(?:of|out of)\s*(\d+)${noUnit}(?:\s*${KEPT}\b)?`));
  if (both) return { kept: Number(both[1]), of: Number(both[2]) };
  const before = text.take(
    shaped(String.raw`(?<![\d.]|x\s?)(\d+)\s*(?:${KEPT}\s*)?(?:\/|of|out of)\s*(?=\d+\s*(?:${SUBS}\s*)?x)`),
  );
  const alone =
    before ??
    text.take(shaped(String.raw`\b${KEPT}\s*[:=]?\s*(\d+)(?!\d|\s*x|${UNIT})`)) ??
    text.take(shaped(String.raw`(?<![\d.]|x\s*)(\d+)\s*(?:${SUBS}\s*)?(?:were\s*)?${KEPT}\b`));
  return alone ? { kept: Number(alone[1]), of: null } : null;
}

/** `3 rejected`, `rejected 3`, `none rejected`. */
export function takeLost(text: EntryText): number | null {
  if (text.take(shaped(String.raw`\b(?:none|no)\s+(?:${SUBS}\s*)?${LOST}\b`))) return 0;
  return (
    numberOf(
      text.take(
        shaped(String.raw`-?(?<![\d.]|x\s*)(\d+)\s*(?:${SUBS}\s*)?(?:were\s*)?${LOST}\b(?!\s*[:=]?\s*\d)`),
      ),
    ) ?? numberOf(text.take(shaped(String.raw`\b${LOST}\s*[:=]?\s*(\d+)(?!\d|\s*x)(?:\s*${SUBS}\b)?`)))
  );
}

/**
 * How many and how long: `24x180`, `24 subs of 3 min`, `180s x 24`, `2h in 300s subs`.
 *
 * @param shotBefore - how many were shot, where the line has said so already
 */
export function takeShot(text: EntryText, shotBefore: number | null): Shot | null {
  const count = String.raw`(?<![\d.])(\d+)`;
  const counted =
    text.take(
      shaped(String.raw`${count}\s*(?:${SUBS}\s*)?x\s*${NUMBER}${UNIT}?(?![\d.]|\s*x)${AFTER_SUB}`),
    ) ??
    text.take(
      shaped(String.raw`${count}\s*${SUBS}[\s,:@|-]*(?:(?:of|at)\s*)?${NUMBER}${UNIT}?${AFTER_SUB}`),
    ) ??
    text.take(shaped(String.raw`${count}\s*(?:of|@)\s*${NUMBER}${UNIT}${AFTER_SUB}`));
  if (counted) return { count: Number(counted[1]), seconds: secondsOf(counted[2], counted[3]) };
  const reversed =
    text.take(shaped(String.raw`(?<![\d.])${NUMBER}${UNIT}\s*(?:${SUBS}\s*)?x\s*(\d+)\b(?:\s*${SUBS}\b)?`)) ??
    text.take(shaped(String.raw`(?<![\d.])${NUMBER}${UNIT}\s*(?:${SUBS})?\s*[,:;@-]?\s*(\d+)\s*${SUBS}\b`));
  if (reversed) return { count: Number(reversed[3]), seconds: secondsOf(reversed[1], reversed[2]) };
  const total = text.take(
    shaped(
      String.raw`(?<![\d.])${NUMBER}${UNIT}\s*(?:total\s*)?(?:of|in|as|at)\s*${NUMBER}${UNIT}${AFTER_SUB}`,
    ),
  );
  if (total) {
    const seconds = secondsOf(total[3], total[4]);
    // A hair over, so that 0.1 h holds six subs of a minute.
    return { count: Math.floor(secondsOf(total[1], total[2]) / seconds + 1e-9), seconds };
  }
  if (shotBefore === null) return null;
  const alone = text.take(shaped(String.raw`(?<![\d.])${NUMBER}${UNIT}${AFTER_SUB}`));
  return alone ? { count: shotBefore, seconds: secondsOf(alone[1], alone[2]) } : null;
}

/** With a C, or a degree sign below zero, or a bare figure below zero. */
export function takeTemperature(text: EntryText): number | null {
  const lead = String.raw`(?:(?:\bat\s*|@\s*|\bcooled to\s*|\b(?:sensor|temp(?:erature)?\.?|ccd|chip)\s*(?:at\s*|[:=]\s*)?))?`;
  const found =
    text.take(
      shaped(
        String.raw`${lead}(?<![\w.])([+-]?\s?\d{1,4}(?:\.\d+)?)\s*(?:°\s*|deg(?:rees)?\.?\s*)?c(?:elsius)?\b`,
      ),
    ) ??
    text.take(shaped(String.raw`${lead}(?<![\w.])(-\s?\d{1,4}(?:\.\d+)?)\s*(?:°(?!\w)|deg(?:rees)?\b)`)) ??
    text.take(/\b(?:temp(?:erature)?\.?|cooled to)\s*[:=]?\s*([+-]?\s?\d{1,4}(?:\.\d+)?)(?![\w.])/i) ??
    text.take(/(?<=^|[\s,;|@])(-\d{1,3}(?:\.\d+)?)(?=$|[\s,;|])/);
  return found?.[1] === undefined ? null : Number(found[1].replace(/\s/g, ""));
}

/** What is left of a piece without joining words and punctuation at its ends. */
export function withoutFillers(piece: string): string {
  const fillers = String.raw`(?:[\s,;:.()@/+-]|\b(?:of|in|with|at|on|the|and|through|thru|using|via|filter|each|for|from|my|some|shot|got|imaged|did|${SUBS})(?!\w))+`;
  return piece.replace(shaped(`^${fillers}`), "").replace(shaped(`${fillers}$`), "");
}

function numberOf(found: RegExpExecArray | null): number | null {
  return found?.[1] === undefined ? null : Number(found[1]);
}

function secondsOf(figure: string | undefined, unit: string | undefined): number {
  const [whole, part] = (figure ?? "").split("/");
  const value = part === undefined ? Number(whole) : Number(whole) / Number(part);
  const initial = (unit ?? "s").trim().charAt(0).toLowerCase();
  if (initial === "h") return value * 3600;
  return initial === "m" || initial === "'" || initial === "′" ? value * 60 : value;
}
