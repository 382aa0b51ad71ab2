import { describe, expect, it, test } from 'vitest';
import { patternsMeant, properName, receptacleByName } from '../../src/ratings/pattern-names.ts';
import { judgePlug } from '../../src/ratings/receptacle.ts';
import { tables } from '../../src/ratings/tables.ts';
import { planOf } from '../helpers/plan-of.ts';

const { rows } = tables.receptacles();

describe('names of patterns', () => {
  test.each([
    ['nema 14-30R', 'NEMA 14-30'],
    ['14-30', 'NEMA 14-30'],
    ['L6-30P', 'NEMA L6-30'],
    ['dryer outlet', 'NEMA 14-30'],
    ['Dryer Outlet', 'NEMA 14-30'],
    ['Schuko', 'CEE 7/4'],
    ['CEE 7/4 or 7/7 (Type F/E)', 'CEE 7/4'],
    ['Type I', 'AS/NZS 3112 10 A'],
    ['as/nzs 3112', 'AS/NZS 3112 10 A'],
    ['CEE 16A blue 3-pin', 'IEC 60309 16 A blue 2P+E'],
    ['32 A red 5 pin', 'IEC 60309 32 A red 3P+N+E'],
    ['IEC 60309 400 V 16 A 3P+E', 'IEC 60309 16 A red 3P+E'],
    ['IEC 60309 16 A yellow', 'IEC 60309 16 A yellow 2P+E'],
    ['Europlug', 'CEE 7/16'],
  ])('%s is %s', (typed, name) => expect(receptacleByName(typed)?.names[0]).toBe(name));

  it('that leave open how many amperes are meant settle nothing, and say what they may be', () => {
    for (const name of ['generator outlet', 'CEE 17 blue', 'red 5-pin', 'caravan plug', 'IEC 60309']) {
      expect(receptacleByName(name), name).toBeUndefined();
      expect(judgePlug({ pattern: name, volts: 240, phases: 1, running: 1, practice: 'nec' })).toMatchObject([
        { verdict: 'cannot-tell' },
      ]);
    }
    expect(patternsMeant('generator outlet')).toEqual(['NEMA L14-20', 'NEMA L14-30']);
  });

  it('that do not exist are taken for slips', () => {
    for (const name of ['NEMA L14-15', 'NEMA L14-3', 'NEMA 5-21', 'L15-15']) {
      expect(receptacleByName(name), name).toBeUndefined();
      expect(patternsMeant(name), name).toHaveLength(1);
    }
    expect(patternsMeant('something else altogether')).toEqual([]);
  });

  it('that are everyday ones are told by their proper name', () => {
    expect(properName('dryer outlet')).toBe('NEMA 14-30');
    expect(properName('14-30R')).toBeUndefined();
    expect(properName('generator outlet')).toBeUndefined();
  });

  // what reading makes of a name and what the table has under it are two pieces of code
  test.each(rows.flatMap((r) => [...r.names, ...(r.also ?? [])].map((name) => [name, r] as const)))(
    'a plug called %s has the live terminals of its row',
    (name, row) => {
      const plan = planOf(`parts: {P1: {kind: plug, volts: 240 V AC, pattern: "${name}"}}\nruns: []\n`);
      const live = plan.terminals.get('P1')!.names.filter((t) => t.startsWith('L'));
      expect(live).toEqual(row.contacts.filter((c) => c.startsWith('L')));
    },
  );
});

describe('contacts that a pattern has not', () => {
  const judged = (pattern: string, wired: string[], volts = 240, phases: 1 | 3 = 1) =>
    judgePlug({ pattern, volts, phases, running: 5, practice: 'nec', wired }).filter(
      (j) => j.aspect === 'contacts',
    );
  it('fail where a core lands on them', () => {
    expect(judged('NEMA 6-20', ['L1', 'N', 'PE'])).toMatchObject([{ verdict: 'fail', missing: 'N' }]);
    expect(judged('NEMA 14-20', ['L1', 'N', 'PE'])).toEqual([]);
    expect(judged('NEMA 10-30', ['L1', 'L2', 'PE'])).toMatchObject([{ verdict: 'fail', missing: 'PE' }]);
    expect(judged('NEMA 10-30', ['L1', 'N'])).toEqual([]);
    expect(judged('IEC 60309 16 A red 3P+E', ['N'], 400, 3)).toMatchObject([{ missing: 'N' }]);
    expect(judged('IEC 60309 16 A red 3P+N+E', ['N'], 400, 3)).toEqual([]);
  });
  it('are no fault where a pattern that has them may be meant', () => {
    expect(judged('IEC 60309 16 A red', ['N'], 400, 3)).toEqual([]);
    expect(judged('generator outlet', ['N'])).toEqual([]);
  });
});
