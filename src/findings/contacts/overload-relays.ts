/** Which cut-outs are overload relays, and which motors they stop. */
import { isLanded } from '../../circuit/terminals.ts';
import { FALSE } from '../../logic/bdd.ts';
import { inputVariable } from '../../logic/conduction.ts';
import { everIn } from '../../logic/entry-states.ts';
import { running } from '../../logic/verify.ts';
import type { CutoutPart, MotorPart } from '../../plan/part-types.ts';
import type { Study } from '../../study/study.ts';

export function cutoutsOf({ plan }: Study): CutoutPart[] {
  return [...plan.parts.values()].filter((p): p is CutoutPart => p.kind === 'cutout');
}

/**
 * Whether something opens the circuit of a stalled motor: its own protector, or an overload relay whose trip stops it.
 * Undefined where that is not stated.
 */
export function hasOverload(study: Study, motor: MotorPart): boolean | undefined {
  if (motor.protector === 'manual' || motor.protector === 'automatic') return true;
  if (cutoutsOf(study).some((c) => isOverload(study, c) && stops(study, c, motor))) return true;
  return motor.protector === 'none' ? false : undefined;
}

const landed = (study: Study, cutout: CutoutPart, ...terminals: readonly string[]) =>
  terminals.every((t) => isLanded(study.circuit, cutout, t));

/** It has what only an overload relay has: a dial, a way of going back, or its marks on the break contact. */
export const isOverload = (study: Study, cutout: CutoutPart) =>
  cutout.setting !== undefined || cutout.reset !== undefined || landed(study, cutout, '95', '96');

/** Only its signal contact is wired, or that too. */
export const isSignalWired = (study: Study, cutout: CutoutPart) =>
  landed(study, cutout, '97') || landed(study, cutout, '98');

/** An overload relay whose break contact carries nothing: only the signal contact is wired, or no contact at all. */
export function isIdle(study: Study, cutout: CutoutPart): boolean {
  // Contacts of its own marks, as of an emergency stop: a core on any of them is its use.
  const own = cutout.throws?.flatMap((p) => [p.common, p.make, p.break].filter((t) => t !== undefined));
  if (own !== undefined) return !own.some((t) => landed(study, cutout, t));
  const breaks = landed(study, cutout, '95', '96') || landed(study, cutout, 'COM', 'NC');
  const half = landed(study, cutout, '95') || landed(study, cutout, '96');
  const nothing = !['COM', 'NO', 'NC'].some((t) => landed(study, cutout, t));
  return !breaks && (isSignalWired(study, cutout) || half || nothing);
}

/** With the cut-out tripped the motor never runs, in any state the circuit can stand in. */
export function stops(study: Study, cutout: CutoutPart, motor: MotorPart): boolean {
  const v = study.verified;
  const input = study.circuit.inputs.find((i) => i.part === cutout.name);
  // Where nothing could be proved, landing on the right marks has to do.
  if (!v || !input) return isOverload(study, cutout);
  const { bdd } = v.model;
  const tripped = bdd.variable(inputVariable(study.circuit, input.index));
  const runs = running(v.model, motor.name);
  return runs !== FALSE && everIn(v, bdd.and(runs, tripped)) === undefined;
}

/** Some intent names the cut-out as what keeps the motor, or what feeds it, off. */
export function isNamed(study: Study, cutout: CutoutPart, motor: MotorPart): boolean {
  const wanted = study.verified?.intents.wanted.filter((w) => w.target === motor.name) ?? [];
  return wanted.some((w) => w.blockers.some((b) => b.ref.part === cutout.name));
}

/** A gate is among what starts it, so that nobody need stand beside it; taken so where nothing was decided. */
export function startsAlone({ plan, verified }: Study, motor: MotorPart): boolean {
  if (!verified) return true;
  return verified.intents.wanted
    .filter((w) => w.target === motor.name || w.target === motor.pluggedInto)
    .some((w) => w.entries.some((e) => e.refs.some((r) => plan.parts.get(r.part)?.kind === 'gate')));
}
