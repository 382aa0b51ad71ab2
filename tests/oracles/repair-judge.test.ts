/** The judge of repairs is itself put to the test: changes whose harm is plain, and the exact undoing of a slip. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Edit } from '../../src/edit/edits.ts';
import { planAfter } from '../../src/edit/expected-plan.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read.ts';
import { sheetOf } from './repair/sheet.ts';
import { settings, settle } from './repair/states.ts';
import { breaches } from './repair-judge.ts';

function shop(name: string): Plan {
  const read = readPlan(readFileSync(`tests/repair/shops/${name}.yaml`), name);
  if (!read.ok) throw new Error(`${name} cannot be read`);
  return read.plan;
}

/** The core between two terminals, as an edit that takes the end on the first of them to `to`. */
function led(plan: Plan, from: string, other: string, to: string): Edit {
  for (const run of plan.runs)
    for (const [core, c] of run.cores.entries())
      for (const [end, far] of [
        ['a', 'b'],
        ['b', 'a'],
      ] as const)
        if (c[end].written === from && c[far].written === other)
          return { do: 'move', run: run.index, core, end, to };
  throw new Error(`no core from ${from} to ${other}`);
}

const rules = (before: Plan, edits: readonly Edit[], meant: Plan) => [
  ...new Set(breaches(before, planAfter(before, edits)!, edits, meant).map((b) => b.rule)),
];

test.each([
  ['a protective conductor led to neutral', 'burdock-shed', 'box.PE', 'plug.PE', 'nut', 'earth'],
  [
    'a core before the fuse in place of behind it',
    'lovage-bench',
    'fuseA.2',
    'track.COM',
    'fuseA.1',
    'round',
  ],
  ['a core past the timer', 'hemlock-row', 'KT.18', 'Q1.A1', 'gate1.NO', 'round'],
  ['a core past the emergency stop', 'bracken-yard', 'ESTOP.NC', 'OFF.COM', 'F3.96', 'round'],
  ['a diode on a main pole', 'teasel-works', 'KM.A1', 'V1.K', 'KM.2', 'sides'],
  ['a lamp fed all the time', 'clover-loft', 'go', 'called.1', 'pos', 'lamp'],
  ['a core to a gate that its cable does not come to', 'thrift-quay', 'b3.NC', 'b4.NC', 'K.A1', 'reach'],
  ['the last core but one off a gate', 'woad-cellar', 'planer.NO', 't3', 't4', 'loose'],
])('%s is a breach', (_, name, from, other, to, rule) => {
  const right = shop(name);
  expect(rules(right, [led(right, from, other, to)], right)).toContain(rule);
});

test('to undo a slip is no breach, and to undo more than it is unneeded', () => {
  const right = shop('sallow-pier');
  const slip = led(right, 'rib-planer.NC', 'mast-saw.NO', 'rib-planer.NO');
  const wrong = planAfter(right, [slip])!;
  const back = led(wrong, 'rib-planer.NO', 'mast-saw.NO', 'rib-planer.NC');
  expect(rules(wrong, [back], right)).toEqual([]);
  const more = led(wrong, 'wht', 'X1.N', 'P1.N');
  expect(rules(wrong, [back, more], right)).toContain('unneeded');
});

// Each shop passes the whole check (common practice, no source): what the judge's own simulation says of it must agree.
test.each([
  ['teasel-works', 'fan', ['S1', 'S2', 'S3', 'S4']],
  ['yarrow-barn', 'blower', ['thicknesser', 'saw', 'lathe']],
  ['fennel-garage', 'collector', ['north-saw', 'north-planer', 'south-lathe', 'south-sander']],
  ['juniper-dock', 'fan', ['rasp', 'adze', 'bow-saw']],
])('the simulation of %s runs %s on each gate and only then', (name, load, gates) => {
  const sheet = sheetOf(shop(name));
  for (const setting of settings(sheet)) {
    const open = gates.some((g) => setting.get(g) === 'moved');
    expect(settle(sheet, setting, new Set())!.loads.has(load)).toBe(open);
  }
});
