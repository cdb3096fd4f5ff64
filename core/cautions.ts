/**
 * Which cautions an answer must carry, decided from what it invites people to do.
 *
 * The texts live in `config/`; here are only the rules. No setting reaches them.
 *
 * @packageDocumentation
 */

export type CautionId =
  | "sun"
  | "laser"
  | "mains-power"
  | "cold"
  | "lightning"
  | "dark-site"
  | "heavy-gear"
  | "children";

/** A caution as shown: the rule's name and the words from `config/`. */
export type Caution = { readonly id: CautionId; readonly text: string };
