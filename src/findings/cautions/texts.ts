/**
 * The cautions as texts, apart from the rules that choose them (`choose.ts`).
 *
 * `level` is the signal word of ISO 3864-2 / ANSI Z535 for the harm the text warns of. Each entry of `basis` says how
 * far it was followed up: `read` (the rule, or a reproduction of it, was read), `memory` (known, the clause still to be
 * looked up in the edition in force) or `practice` (custom of the trade, no source). US workplace rules (29 CFR) bind
 * employers; in a private shop they are good practice. Clause numbers are those of the edition named, or of NEC 2020.
 */
import { BOX_TEXTS } from './box-texts.ts';
import type { CautionText } from './caution-text.ts';
import { CORD_TEXTS } from './cord-texts.ts';
import { LOOP_TEXTS } from './loop-texts.ts';
import { MOTOR_TEXTS } from './motor-texts.ts';
import { PLACE_TEXTS } from './place-texts.ts';

// In the order in which they are printed.
const triggered = [...LOOP_TEXTS, ...BOX_TEXTS, ...MOTOR_TEXTS, ...CORD_TEXTS, ...PLACE_TEXTS] as const;

/** Cautions that a plan must give cause for; the rule for each stands in `choose.ts`. */
export type TriggeredId = (typeof triggered)[number]['id'];

/** Printed when the plan gives cause, in this order. */
export const TRIGGERED: readonly (CautionText & { readonly id: TriggeredId })[] = triggered;
