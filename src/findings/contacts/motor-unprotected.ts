import { isLanded } from '../../circuit/terminals.ts';
import { FALSE } from '../../logic/bdd.ts';
import { inputVariable } from '../../logic/conduction.ts';
import { everIn } from '../../logic/entry-states.ts';
import { running } from '../../logic/verify.ts';
import type { CutoutPart, MotorPart } from '../../plan/part-types.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'motor-unprotected',
  title: 'nothing stops a stalled motor, or it restarts by itself',
  severity: 'caution',
  question: 6,
  base: 'dc-chain',
  meaning:
    'A gate starts this motor with nobody beside it, and no overload protector is stated; or the protector resets by itself, and the motor starts again while someone clears the blockage. Choose a motor with a reset button, or an overload relay whose break contact 95-96 lies in the coil circuit; its contact 97-98 only signals.',
  wrong: 'protector: automatic',
  right: 'protector: manual',
  basis: 'NEC 430.32(B), 430.43; IEC 60204-1 clause 7.3 (from memory)',
  followsFrom: [],
};

export const motorUnprotected: Check = { entry, find };

/** A motor that starts by itself with nothing that stops it when it stalls, or that resets itself. */
function find(study: Study): Finding[] {
  const motors = [...study.plan.parts.values()].filter(
    (p): p is MotorPart => p.kind === 'motor' && p.volts.kind === 'ac',
  );
  return motors.flatMap((motor) => unguarded(study, motor));
}

/**
 * Whether something opens the circuit of a stalled motor: its own protector, or an overload relay whose trip stops it.
 * Undefined where that is not stated.
 */
export function hasOverload(study: Study, motor: MotorPart): boolean | undefined {
  if (motor.protector === 'manual' || motor.protector === 'automatic') return true;
  const cutouts = [...study.plan.parts.values()].filter((p): p is CutoutPart => p.kind === 'cutout');
  if (cutouts.some((c) => isOverload(study, c) && stops(study, c, motor))) return true;
  return motor.protector === 'none' ? false : undefined;
}

function unguarded(study: Study, motor: MotorPart): Finding[] {
  const cutouts = [...study.plan.parts.values()].filter((p): p is CutoutPart => p.kind === 'cutout');
  const idle = cutouts.filter((c) => isIdle(study, c));
  if (idle.length > 0) return [tripUnused(study, motor, idle)];
  if (motor.protector === 'manual') return [];
  if (motor.protector === 'automatic') return [resetsItself(study, motor)];
  const stopping = cutouts.filter((c) => stops(study, c, motor));
  if (stopping.some((c) => isOverload(study, c))) return [];
  const named = stopping.filter((c) => isNamed(study, c, motor));
  return [named.length > 0 ? perhapsOverload(study, motor, named) : unprotected(study, motor)];
}

const landed = (study: Study, cutout: CutoutPart, ...terminals: readonly string[]) =>
  terminals.every((t) => isLanded(study.circuit, cutout, t));

/** Its break contact is wired by the marks of an overload relay. */
const isOverload = (study: Study, cutout: CutoutPart) => landed(study, cutout, '95', '96');

/** An overload relay whose break contact carries nothing: only the signal contact is wired, or no contact at all. */
function isIdle(study: Study, cutout: CutoutPart): boolean {
  const breaks = isOverload(study, cutout) || landed(study, cutout, 'COM', 'NC');
  const signal = landed(study, cutout, '97') || landed(study, cutout, '98');
  const half = landed(study, cutout, '95') || landed(study, cutout, '96');
  const nothing = !['COM', 'NO', 'NC'].some((t) => landed(study, cutout, t));
  return !breaks && (signal || half || nothing);
}

/** With the cut-out tripped the motor never runs, in any state the circuit can stand in. */
function stops(study: Study, cutout: CutoutPart, motor: MotorPart): boolean {
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
function isNamed(study: Study, cutout: CutoutPart, motor: MotorPart): boolean {
  const wanted = study.verified?.intents.wanted.filter((w) => w.target === motor.name) ?? [];
  return wanted.some((w) => w.blockers.some((b) => b.ref.part === cutout.name));
}

function caution(study: Study, motor: MotorPart, words: Pick<Finding, 'message' | 'why' | 'fix'>): Finding {
  return found(study.plan, entry, {
    parts: [motor.name],
    at: motor.where.get('protector') ?? motor.at,
    ...words,
    basis: entry.basis,
  });
}

function unprotected(study: Study, motor: MotorPart): Finding {
  return caution(study, motor, {
    message: `${motor.name} starts by itself and no overload protector is stated`,
    why: 'Nobody stands by when a gate starts it; a stalled motor burns.',
    fix: `${motor.name} has to have a protector that is reset by hand (protector: manual), or an overload relay whose break contact 95-96 lies in line with the coil.`,
  });
}

function resetsItself(study: Study, motor: MotorPart): Finding {
  return caution(study, motor, {
    message: `the overload protector of ${motor.name} resets by itself: the motor can start again when it cools`,
    why: 'A gate left open starts it while someone clears the blockage.',
    fix: `${motor.name} has to have a protector that is reset by hand (protector: manual).`,
  });
}

function tripUnused(study: Study, motor: MotorPart, idle: readonly CutoutPart[]): Finding {
  const names = listOf(idle.map((c) => c.name));
  const signals = idle.some((c) => landed(study, c, '97') || landed(study, c, '98'));
  return {
    ...caution(study, motor, {
      message: `${names} cannot stop ${motor.name}: nothing goes through its break contact 95-96`,
      why: `${signals ? 'Its contact 97-98 only signals a trip' : 'No circuit passes its trip contact'}; the motor stays on and burns although the overload relay has tripped.`,
      fix: 'Wire 95-96 in line with the coil, ahead of every gate and override, and press its test button: the coil has to drop.',
    }),
    parts: [motor.name, ...idle.map((c) => c.name)],
    terminals: idle.flatMap((c) => [`${c.name}.95`, `${c.name}.96`]),
  };
}

/** A bin switch and a stop that latches are cut-outs too; wired by COM and NC they all look the same. */
function perhapsOverload(study: Study, motor: MotorPart, named: readonly CutoutPart[]): Finding {
  const names = listOf(named.map((c) => c.name));
  return {
    ...caution(study, motor, {
      message: `${motor.name} starts by itself and no overload protector is stated`,
      why: `Nobody stands by when a gate starts it; a stalled motor burns. ${names} can stop it, but nothing says that an overload relay does: a stop or a bin switch does not see a stall.`,
      fix: `Use a motor with a manual-reset protector (protector: manual), or an overload relay. Where ${names} is one, land its cores on 95 and 96.`,
    }),
    parts: [motor.name, ...named.map((c) => c.name)],
  };
}
