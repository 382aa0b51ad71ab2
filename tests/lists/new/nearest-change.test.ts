/** What `new` proposes where its answers cannot pass: every case by hand, from what a person holds in the hand. */
import { describe, expect, it } from 'vitest';
import { newPlan } from '../../../src/lists/new/new-plan.ts';
import type { Key } from '../../../src/lists/new/questions.ts';
import { asText } from '../../../src/report/forms/text.ts';
import { impossiblePlan } from '../../../src/report/new-plan.ts';
import { WHOLE } from '../../helpers/share.ts';

const SHOP: readonly (readonly [Key, string])[] = [
  ['practice', 'nec'],
  ['motor', '1 hp 13 A'],
  ['protector', 'manual'],
  ['lever', 'open'],
  ['gates', 'saw 6 ft'],
];

function made(answers: Partial<Record<Key, string>>) {
  const plan = newPlan(new Map([...SHOP, ...(Object.entries(answers) as [Key, string][])]));
  if ('problems' in plan) throw new Error(plan.problems.map((p) => p.problem).join('\n'));
  return plan;
}

const passes = (answers: Partial<Record<Key, string>>) => made(answers).passes;

/** The answers with a change taken. */
const taken = (answers: Partial<Record<Key, string>>, change: readonly { key: Key; to: string }[]) => ({
  ...answers,
  ...Object.fromEntries(change.map(({ key, to }) => [key, to])),
});

it.runIf(WHOLE)('what stands in the way is told gravest first, a doubt never above a danger', () => {
  const { against } = made({
    ...{ mains: '240 V', motor: '3 hp 17 A', circuit: 'NEMA 6-15' },
    ...{ supply: '12 V DC 1 A', relay: 'coil 12 V DC 155 ohm, 30 A 240 V AC, 3 hp 240 V AC' },
  });
  const order = ['danger', 'warning', 'fault', 'doubt'];
  const places = against.map((f) => order.indexOf(f.severity));
  expect(new Set(places).size).toBeGreaterThan(1);
  expect(places).toEqual([...places].sort((a, b) => a - b));
});

describe('the nearest change', () => {
  it.runIf(WHOLE)(
    'asks for the mark that is missing on the supply at hand, and leaves the rest of it',
    () => {
      const { nearest } = made({ supply: '12 V DC 1 A' });
      expect(nearest).toMatchObject([
        {
          key: 'supply',
          to: '12 V DC 1 A regulated',
          differs: ['regulated, which yours does not say'],
          since: { id: 'value-unsaid' },
        },
      ]);
    },
  );

  it.runIf(WHOLE)('asks for more current alone where the supply at hand gives too little', () => {
    const { nearest } = made({ supply: '12 V DC 30 mA regulated' });
    expect(nearest).toMatchObject([
      {
        key: 'supply',
        to: '12 V DC 0.5 A regulated',
        differs: ['0.5 A in place of 30 mA'],
        since: { id: 'supply-overloaded' },
      },
    ]);
  });

  it.runIf(WHOLE)(
    'leaves alone what is right: a good supply beside a relay and a plug that will not do',
    () => {
      const answers = {
        mains: '240 V',
        motor: '3 hp 17 A',
        supply: '12 V DC 2 A regulated class 2',
        relay: 'coil 12 V DC 155 ohm, 10 A 240 V AC',
        circuit: 'NEMA 6-15',
      };
      const { nearest } = made(answers);
      expect(nearest?.map((one) => [one.key, one.to])).toEqual([
        ['relay', 'choose'],
        ['circuit', 'choose'],
      ]);
      expect(nearest?.map((one) => one.since.question)).toEqual([6, 7]);
      expect(passes(taken(answers, nearest!))).toBe(true);
      for (const left of nearest!)
        expect([
          left.key,
          passes(
            taken(
              answers,
              nearest!.filter((one) => one !== left),
            ),
          ),
        ]).toEqual([left.key, false]);
    },
  );

  it.runIf(WHOLE)('says of another supply all that is printed on it, what differs and why', () => {
    const plan = made({ supply: '5 V DC 2 A' });
    const printed = asText(impossiblePlan(plan), { width: 1000 });
    expect(printed).toContain(
      'supply: choose in place of 5 V DC 2 A, which comes to 12 V DC, 0.5 A, regulated to 3 %, marked Class 2. What differs: 12 V DC in place of 5 V DC; 0.5 A in place of 2 A; regulated, which yours does not say; tolerance 3 %, which yours does not say; marked Class 2, which yours does not say. Left as it was: ',
    );
    expect(printed).toMatch(/Left as it was: .*\[coil-too-low\]/);
  });
});
