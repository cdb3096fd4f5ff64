/**
 * One of the evening's messages in Discord's shape.
 *
 * @packageDocumentation
 */
import type { EveningMessage } from "../evening/evening-channel.ts";
import { goingOutId } from "./button-ids.ts";
import { type MessageWords, renderAnswer, type ShownButton } from "./render-answer.ts";

export const GOING_OUT_LABEL = "I'm going out";

/** Of the button that marks a message about a night nobody can go out in any more. */
export const NIGHT_OVER_LABEL = "The night is over";

/**
 * The words, with the button that marks the message as ours.
 *
 * @param followUps - further buttons, their rows kept already
 */
export function renderEvening(
  message: EveningMessage,
  followUps: readonly ShownButton[],
  remarks: readonly string[],
): MessageWords {
  if (message.buttons !== undefined) {
    return renderAnswer(message.answer, {
      buttons: [...message.buttons, ...followUps],
      rings: message.rings.map(({ id }) => id),
      names: null,
      remarks,
      fields: message.fields ?? [],
    });
  }
  const goingOut: ShownButton = {
    id: goingOutId(message.night, message.key),
    label: message.nightOver ? NIGHT_OVER_LABEL : GOING_OUT_LABEL,
    primary: !message.nightOver,
    disabled: message.nightOver ?? false,
  };
  return renderAnswer(message.answer, {
    buttons: message.nightOver ? [...followUps, goingOut] : [goingOut, ...followUps],
    rings: message.rings.map(({ id }) => id),
    names:
      message.goingOut === null
        ? null
        : { heading: "Going out", names: message.goingOut.map(({ name }) => name) },
    remarks,
  });
}
