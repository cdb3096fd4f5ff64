/**
 * Habits of an evening outdoors (common practice).
 *
 * @packageDocumentation
 */
import type { RunCardRules } from "../core/targets/run-card.ts";

export const RUN_CARD_RULES: RunCardRules = {
  setUpMinutes: 60,
  alignMinutes: 30,
  leastHandOverMinutes: 45,
  objectsByEye: 6,
  lookMinutes: 25,
};
