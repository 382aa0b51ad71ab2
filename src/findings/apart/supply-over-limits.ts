import { isMainsOutput } from '../../circuit/thresholds.ts';
import { extraLowLimit } from '../../ratings/limits.ts';
import type { Study } from '../../study/study.ts';
import { highestVolts } from '../../study/working-volts.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import { lowSupplies } from '../loop/low-supplies.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'supply-over-limits',
  title: 'the loop is not low voltage',
  severity: 'danger',
  question: 1,
  ofWiring: false,
  base: 'ac-contactor',
  meaning:
    'The supply can rise above 30 V AC or 60 V DC. A small transformer gives a good deal more than its label while no coil is in, and that is what the fingers meet. Bell wire and bare switch tabs belong below those limits.',
  wrong: 'no-load: 34 V',
  right: 'no-load: 25.5 V',
  basis: 'NEC Chapter 9 Tables 11(A), 11(B); IEC 60364-4-41 clause 414.4.5 (limits partly from memory)',
  followsFrom: [],
};

export const supplyOverLimits: Check = { entry, find };

function find(study: Study): Finding[] {
  return lowSupplies(study.plan).flatMap((s) => {
    // What is fed at mains volts is mains, and judged as that.
    if (isMainsOutput(s.output)) return [];
    const highest = highestVolts(study, s);
    const { volts: limit, basis } = extraLowLimit(s.output.kind, study.plan.practice);
    if (highest <= limit) return [];
    const kind = s.output.kind.toUpperCase();
    return [
      found(study.plan, entry, {
        parts: [s.name],
        at: s.where.get('output'),
        message: `${s.name} gives ${highest} V ${kind}: that is no low-voltage loop`,
        why: `Bare gate switches and bell wire belong on at most ${limit} V ${kind}, with no load on the supply.`,
        fix: 'Choose a coil and a supply of 24 V or less.',
        figures: [
          { name: 'highest output', value: highest, unit: 'V' },
          { name: 'limit', value: limit, unit: 'V' },
        ],
        basis: `${basis} (partly from memory)`,
      }),
    ];
  });
}
