/**
 * The club's own units, for the answers that speak of weather.
 *
 * @packageDocumentation
 */
import type { Answer } from "../../commands/answer.ts";
import type { ClubSettings } from "../../commands/books.ts";
import type { Request } from "../../commands/request.ts";
import { inUnits } from "../../commands/words/units.ts";
import { WEATHER_COMMANDS } from "../../config/shared-answers.ts";

export function inClubUnits(answer: Answer, { command }: Request, { units }: ClubSettings): Answer {
  return WEATHER_COMMANDS.has(command) ? inUnits(answer, units) : answer;
}
