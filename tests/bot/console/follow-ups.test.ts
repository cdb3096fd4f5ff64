import { describe, expect, it } from "vitest";
import { followUpWords } from "../../../bot/console/answer-text.ts";
import { splitWords } from "../../../bot/console/split-words.ts";
import { temporaryFolder } from "../store/temporary-folder.ts";
import { answerIn, askIn, EVENING, worldIn } from "./asked.ts";

/** A label on a button takes so many characters (Discord's documentation, "Button"). */
const LABEL_LENGTH = 80;

/** Questions whose answers suggest others. */
const QUESTIONS: readonly (readonly string[])[] = [
  ["tonight"],
  ["tonight", "--rig", "250mm f/4.8 visual"],
  ["night"],
  ["night", "--nights", "30"],
  ["forecast"],
  ["target", "--target", "NGC 6888"],
  ["target", "--target", "IC 434"],
  ["target", "--target", "Jupiter"],
  ["target", "--target", "20h12m +38d21m"],
  ["season", "--target", "the Veil"],
  ["framing", "--target", "M33"],
  ["framing", "--target", "Barnard's Loop"],
  ["exposure", "--target", "M27", "--filter", "h-alpha"],
  ["align"],
  ["site", "list"],
  ["site", "horizon"],
  ["rig", "list"],
  ["club"],
  ["notify"],
  ["about"],
  ["mydata"],
];

describe("what an answer suggests", { timeout: 60_000 }, () => {
  it.each(QUESTIONS)("after %s %s %s can be asked as it stands", async (...words) => {
    const world = await worldIn(temporaryFolder());
    const asked = words.filter((word): word is string => typeof word === "string");
    for (const follow of (await answerIn(world, ...asked, "--at", EVENING)).next) {
      expect(follow.label.length).toBeLessThanOrEqual(LABEL_LENGTH);
      const outcome = await askIn(world, [...splitWords(followUpWords(follow)), "--at", EVENING]);
      const said = outcome.kind === "answered" ? "" : outcome.message;
      expect(`${followUpWords(follow)} → ${outcome.kind} ${said}`).toBe(
        `${followUpWords(follow)} → answered `,
      );
    }
  });
});
