import type { MotorPart } from '../../plan/part-types.ts';
import type { Plan } from '../../plan/plan.ts';
import { type PowerPlausibility, powerPlausible } from '../../ratings/horsepower.ts';
import type { Study } from '../../study/study.ts';
import { rounded } from '../../text/numbers.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'power-implausible',
  title: 'the label claims more power than its amperes give',
  severity: 'notice',
  question: 7,
  base: 'dc-chain',
  meaning:
    'Volts times amperes is less than the power on the label, and a motor cannot give more than it takes. Such labels state a peak. Go by the amperes when choosing relay and circuit.',
  wrong: '    power: 3 hp',
  right: '    power: 1.5 hp',
  basis: 'output cannot exceed volts times amperes',
  followsFrom: [],
};

export const powerImplausible: Check = { entry, find };

function find({ plan }: Study): Finding[] {
  return [...plan.parts.values()].flatMap((motor) => {
    const power = motor.kind === 'motor' ? powerPlausible(motor) : undefined;
    return motor.kind !== 'motor' || !power || power.plausible ? [] : [implausible(plan, motor, power)];
  });
}

function implausible(plan: Plan, motor: MotorPart, power: PowerPlausibility): Finding {
  const [input, output] = [Math.round(power.input), Math.round(power.output)];
  return found(plan, entry, {
    parts: [motor.name],
    at: motor.where.get('power') ?? motor.at,
    message: `${motor.name}: the power on its label is more than its volts and amperes can give`,
    why: `${motor.volts.volts} V and ${motor.amps} A give ${input} VA; the label says ${output} W at the shaft. Such labels state a peak.`,
    fix: `Go by the amperes: about ${rounded(power.bestHorsepower, 2)} hp at best.`,
    figures: [
      { name: 'label', value: output, unit: 'W' },
      { name: 'volts times amperes', value: input, unit: 'VA' },
    ],
    basis: power.basis,
    twin: { alike: '' },
  });
}
