import type { MotorPart } from '../../plan/part-types.ts';
import { horsepowerOf, phasesOf } from '../../ratings/horsepower.ts';
import { startsAllowed } from '../../ratings/starts.ts';
import type { Study } from '../../study/study.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'starts-per-hour',
  title: 'the motor starts more often than it stands',
  severity: 'caution',
  question: 6,
  base: 'dc-chain',
  meaning:
    'Each start heats the winding as much as minutes of running, and a short rest does not let that heat out. The table says how many starts an hour a motor of this size stands and how long it has to rest. Let the collector run on between short cuts with an off-delay timer. With the power of the motor not stated it is a doubt.',
  wrong: extract('    protector: manual', '    starts-per-hour: 30'),
  right: '    protector: manual',
  basis: 'NEMA MG 10-2001 Table 2-3; start capacitor data, 20 an hour on one phase',
  followsFrom: [],
};

export const startsPerHour: Check = { entry, find };

/** The starts a motor is stated to make against those a motor of its size stands. */
function find(study: Study): Finding[] {
  return [...study.plan.parts.values()]
    .filter((p): p is MotorPart => p.kind === 'motor')
    .flatMap((motor) => tooManyStarts(study, motor));
}

function tooManyStarts(study: Study, motor: MotorPart): Finding[] {
  const starts = motor.startsPerHour;
  // The table is for induction motors; nothing is published for motors with brushes.
  if (starts === undefined || motor.volts.kind === 'dc' || motor.type === 'universal') return [];
  const horsepower = horsepowerOf(motor);
  if (horsepower === undefined) return [powerMissing(study, motor)];
  const allowed = startsAllowed(horsepower, phasesOf(motor));
  if (allowed === undefined || starts <= allowed.perHour * (1 + 1e-9)) return [];
  return [
    found(study.plan, entry, {
      parts: [motor.name],
      at: motor.where.get('starts-per-hour') ?? motor.at,
      message: `${motor.name} is to start ${starts} times an hour; a motor of its size stands ${allowed.perHour}, with ${allowed.rest} s of rest between`,
      why: `Each start heats the winding as much as minutes of running.${allowed.upperBound ? ' The figure is for a light fan wheel and two poles; a heavy wheel lowers it.' : ''}`,
      fix: `Let it run on between cuts with an off-delay timer, and rest at least ${allowed.rest} s before the next start.`,
      figures: [
        { name: 'starts', value: starts, unit: 'per hour' },
        { name: 'allowed', value: allowed.perHour, unit: 'per hour' },
        { name: 'rest', value: allowed.rest, unit: 's' },
      ],
      basis: allowed.basis,
    }),
  ];
}

function powerMissing(study: Study, motor: MotorPart): Finding {
  return found(study.plan, entry, {
    severity: 'doubt',
    parts: [motor.name],
    at: motor.where.get('starts-per-hour') ?? motor.at,
    message: `whether ${motor.name} stands ${motor.startsPerHour} starts an hour cannot be told: its power is not stated`,
    why: 'A figure that is not stated is never taken as enough.',
    fix: `State power: of ${motor.name}, as on its label.`,
    basis: 'NEMA MG 10 Table 2-3',
  });
}
