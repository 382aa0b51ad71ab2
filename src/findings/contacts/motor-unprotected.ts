import type { CutoutPart, MotorPart } from '../../plan/part-types.ts';
import { protectorRule } from '../../ratings/overload.ts';
import { restartsAfterTrip } from '../../study/self-starts.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import {
  cutoutsOf,
  isIdle,
  isNamed,
  isOverload,
  isSignalWired,
  startsAlone,
  stops,
} from './overload-relays.ts';

const entry: FindingEntry = {
  id: 'motor-unprotected',
  title: 'nothing stops a stalled motor, or it restarts by itself',
  severity: 'caution',
  question: 6,
  base: 'dc-chain',
  meaning:
    'A gate starts this motor with nobody beside it, and no overload protector is stated; or what protects it resets by itself, and the motor starts again while someone clears the blockage. It is a warning where the plan says that there is none and the rules ask for one, and where an overload relay resets by itself. Choose a motor with a reset button, or an overload relay whose break contact 95-96 lies in the coil circuit; its contact 97-98 only signals.',
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
  return motors.flatMap((motor) => [...unguarded(study, motor), ...tripsUndone(study, motor)]);
}

function unguarded(study: Study, motor: MotorPart): Finding[] {
  const cutouts = cutoutsOf(study);
  const idle = cutouts.filter((c) => isIdle(study, c));
  if (idle.length > 0) return [tripUnused(study, motor, idle)];
  if (motor.protector === 'manual') return [];
  if (motor.protector === 'automatic') return [resetsItself(study, motor)];
  const stopping = cutouts.filter((c) => stops(study, c, motor));
  if (stopping.some((c) => isOverload(study, c))) return [];
  const named = stopping.filter((c) => isNamed(study, c, motor));
  return [unprotected(study, motor, named)];
}

/** Overload relays that stop the motor and let it start again as soon as they have cooled. */
function tripsUndone(study: Study, motor: MotorPart): Finding[] {
  return cutoutsOf(study)
    .filter((c) => c.reset !== 'manual' && isOverload(study, c) && stops(study, c, motor))
    .filter((c) => !study.verified || startsAgain(study, c, motor))
    .map((c) =>
      c.reset === 'automatic' ? relayResetsItself(study, motor, c) : resetUnsaid(study, motor, c),
    );
}

const startsAgain = (study: Study, cutout: CutoutPart, motor: MotorPart) =>
  restartsAfterTrip(study, cutout.name).some(({ wanted }) =>
    [motor.name, motor.pluggedInto].includes(wanted.target),
  );

type Words = Pick<Finding, 'message' | 'why' | 'fix'> & { readonly severity?: 'warning' };

function caution(study: Study, motor: MotorPart, words: Words): Finding {
  return found(study.plan, entry, {
    parts: [motor.name],
    at: motor.where.get('protector') ?? motor.at,
    ...words,
    basis: entry.basis,
  });
}

/** A bin switch and a stop that latches are cut-outs too; wired by COM and NC they all look the same. */
function unprotected(study: Study, motor: MotorPart, named: readonly CutoutPart[]): Finding {
  const alone = startsAlone(study, motor);
  const rule = motor.protector === 'none' ? protectorRule(motor, study.plan.practice, alone) : undefined;
  const stated =
    motor.protector === 'none' ? 'it has no overload protector' : 'no overload protector is stated';
  const names = listOf(named.map((c) => c.name));
  const why = `Nobody stands by when a gate starts it; a stalled motor burns${rule ? ` before the breaker opens, and ${rule}` : ''}.`;
  return {
    ...caution(study, motor, {
      ...(rule !== undefined && { severity: 'warning' }),
      message: alone ? `${motor.name} starts by itself and ${stated}` : `of ${motor.name}: ${stated}`,
      why:
        named.length === 0
          ? why
          : `${why} ${names} can stop it, but nothing says that an overload relay does: a stop or a bin switch does not see a stall.`,
      fix:
        named.length === 0
          ? `${motor.name} has to have a protector that is reset by hand (protector: manual), or an overload relay whose break contact 95-96 lies in line with the coil.`
          : `Use a motor with a manual-reset protector (protector: manual), or an overload relay. If one of ${names} is such a relay, its cores go on 95 and 96; a stop or a bin switch is none.`,
    }),
    parts: [motor.name, ...named.map((c) => c.name)],
  };
}

function resetsItself(study: Study, motor: MotorPart): Finding {
  return caution(study, motor, {
    message: `the overload protector of ${motor.name} resets by itself: the motor can start again when it cools`,
    why: 'A gate left open starts it while someone clears the blockage.',
    fix: `${motor.name} has to have a protector that is reset by hand (protector: manual).`,
  });
}

/** Who forbids that an overload relay that resets by itself starts a motor. */
const FORBIDS = { nec: 'NEC 430.43 forbids', iec: 'IEC 60204-1 clause 7.3 (from memory) forbids' } as const;

function relayResetsItself(study: Study, motor: MotorPart, relay: CutoutPart): Finding {
  return ofRelay(study, motor, relay, {
    severity: 'warning',
    message: `${relay.name} resets by itself and starts ${motor.name} again when it cools`,
    why: `What calls for the motor stays put, so it starts while someone clears the blockage; ${FORBIDS[study.plan.practice]} that where it can hurt.`,
    fix: `Turn the reset knob of ${relay.name} to manual (reset: manual).`,
  });
}

function resetUnsaid(study: Study, motor: MotorPart, relay: CutoutPart): Finding {
  return ofRelay(study, motor, relay, {
    message: `nothing says that ${relay.name} stays tripped until it is reset by hand`,
    why: `One that resets by itself starts ${motor.name} again while someone clears the blockage; many have a knob for it.`,
    fix: `Turn the reset knob of ${relay.name} to manual, and state reset: manual.`,
  });
}

function ofRelay(study: Study, motor: MotorPart, relay: CutoutPart, words: Words): Finding {
  return {
    ...caution(study, motor, words),
    parts: [motor.name, relay.name],
    ...placeOf(relay),
  };
}

function placeOf(relay: CutoutPart): Pick<Finding, 'line' | 'column'> {
  const { line, column } = relay.where.get('reset') ?? relay.at;
  return { line, column };
}

function tripUnused(study: Study, motor: MotorPart, idle: readonly CutoutPart[]): Finding {
  const names = listOf(idle.map((c) => c.name));
  const signals = idle.some((c) => isSignalWired(study, c));
  // A relay that opens nothing is none; where the plan says that the motor has none either, the rule is broken.
  const rule =
    motor.protector === 'none'
      ? protectorRule(motor, study.plan.practice, startsAlone(study, motor))
      : undefined;
  return {
    ...caution(study, motor, {
      ...(rule !== undefined && { severity: 'warning' }),
      message: `${names} cannot stop ${motor.name}: nothing goes through its break contact 95-96`,
      why: `${signals ? 'Its contact 97-98 only signals a trip' : 'No circuit passes its trip contact'}; the motor stays on and burns although the overload relay has tripped.`,
      fix: 'Wire 95-96 in line with the coil, ahead of every gate and override, and press its test button: the coil has to drop.',
    }),
    parts: [motor.name, ...idle.map((c) => c.name)],
    terminals: idle.flatMap((c) => [`${c.name}.95`, `${c.name}.96`]),
  };
}
