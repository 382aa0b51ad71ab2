import { describe, expect, it } from 'vitest';
import { judge } from '../../../src/findings/judge.ts';
import { type NewPlan, newPlan } from '../../../src/lists/new/new-plan.ts';
import type { Key } from '../../../src/lists/new/questions.ts';
import { readPlan } from '../../../src/plan/read.ts';
import { Study } from '../../../src/study/study.ts';
import { share, WHOLE } from '../../helpers/share.ts';
import { judge as everyState } from '../../oracles/brute.ts';
import { answerSet, numbers } from './answer-sets.ts';
import { BORNE, OF_ANSWERS } from './cautions-borne.ts';

/** Sets of the committed run; PULLIN_NEW_SETS=2000 tries as many, PULLIN_NEW_FROM begins further on. */
const SETS = Number(process.env.PULLIN_NEW_SETS ?? share(20));
const FROM = Number(process.env.PULLIN_NEW_FROM ?? 0);

type Texts = ReadonlyMap<Key, string>;

const made = (texts: Texts): NewPlan => {
  const result = newPlan(texts);
  if ('problems' in result) throw new Error(JSON.stringify(result.problems));
  return result;
};

const plans = new Map<Texts, NewPlan>();
/** As `made`, once for what several tests look at. */
const once = (texts: Texts): NewPlan => {
  const plan = plans.get(texts) ?? made(texts);
  plans.set(texts, plan);
  return plan;
};

/** What the check says of a text, read anew. */
function checked(text: string) {
  const read = readPlan(text, 'shop.yaml');
  if (!read.ok) throw new Error(read.errors.map((e) => e.message).join('\n'));
  return { plan: read.plan, report: judge(Study.of(read.plan)) };
}

/** Cautions for which neither the shop nor an answer accounts. */
function unaccounted(texts: Texts, report: NewPlan['report']): string[] {
  const ids = [
    ...report.findings.filter((f) => f.severity === 'caution').map((f) => f.id as string),
    ...report.cautions.map((c) => c.id),
  ];
  // What a person says of plug, supply and relay is no default.
  const bound = (['circuit', 'supply', 'relay'] as const).some(
    (key) => !/^choose$/.test(texts.get(key) ?? 'choose'),
  );
  return ids.filter((id) => {
    if (BORNE.has(id)) return false;
    const [key, answer] = OF_ANSWERS.get(id) ?? [];
    const accounted = key !== undefined && answer!.test(texts.get(key as Key) ?? '');
    return !accounted && !bound;
  });
}

describe('what a plate says', () => {
  const texts = (more: readonly (readonly [Key, string])[]): Texts =>
    new Map([['gates', 'a 3 m, b 2 m'], ['lever', 'open'], ['layout', 'chain'], ...more] as const);
  it('amps alone, as on a shop vacuum, are enough', () => {
    const vacuum = texts([
      ['practice', 'nec'],
      ['mains', '120 V'],
      ['motor', '11 A'],
      ['type', 'universal'],
    ]);
    const { text } = made(vacuum);
    expect(text).not.toContain('power: undefined');
    expect(checked(text).report.verdict).toBe('pass');
  });
  it('a contactor for Europe is looked for by AC-3 and not by horsepower', () => {
    const { text } = made(
      texts([
        ['practice', 'iec'],
        ['mains', '230 V'],
        ['motor', '1.1 kW 7.3 A'],
      ]),
    );
    expect(text).toContain('ac-3:');
    expect(text).not.toMatch(/\d hp\b/);
  });
});

describe('answers of invented shops', () => {
  it(`give a plan that passes, or an impossibility that the check confirms (${SETS} sets)`, {
    timeout: 3_600_000,
  }, () => {
    const wrong: string[] = [];
    const counts = { pass: 0, fail: 0, near: 0 };
    for (let seed = FROM; seed < FROM + SETS; seed++) {
      const texts = answerSet(numbers(seed)) as Map<Key, string>;
      const plan = made(texts);
      const { report } = checked(plan.text);
      if (plan.passes !== (report.verdict === 'pass'))
        wrong.push(`${seed}: told ${plan.passes}, the check says ${report.verdict}`);
      if (plan.passes) {
        counts.pass += 1;
        const stray = unaccounted(texts, report);
        if (stray.length > 0) wrong.push(`${seed}: ${stray.join(' ')}`);
        continue;
      }
      counts.fail += 1;
      if (plan.against.length === 0) wrong.push(`${seed}: nothing told against it`);
      // With nothing laid down the parts are there to be found.
      if (plan.nearest === null && !texts.has('circuit')) wrong.push(`${seed}: nothing near`);
      if (plan.nearest === null) continue;
      counts.near += 1;
      const changed = new Map(plan.answers);
      for (const { key, to } of plan.nearest) changed.set(key, to);
      if (changed.get('layout') !== 'ring') changed.delete('return');
      if (checked(made(changed).text).report.verdict !== 'pass')
        wrong.push(`${seed}: the nearest change does not pass`);
      // What could stay as it was answered stays.
      if (plan.nearest.length > 1)
        for (const { key } of plan.nearest)
          if (made(new Map([...changed, [key, plan.answers.get(key)!]])).passes)
            wrong.push(`${seed}: ${key} is changed for nothing`);
    }
    expect(wrong).toEqual([]);
    expect(counts.pass).toBeGreaterThan(0);
    if (WHOLE) expect(counts.near).toBeGreaterThan(0);
  });
});

const GARAGE: Texts = new Map<Key, string>([
  ['practice', 'nec'],
  ['motor', '1 hp 13 A'],
  ['protector', 'manual'],
  ['lever', 'open'],
  ['gates', 'table saw 6 ft, planer 4, lathe 3'],
]);
const SCHOOL: Texts = new Map<Key, string>([
  ['practice', 'iec'],
  ['mains', '400 V 3-phase'],
  ['motor', '4 kW 8.5 A'],
  ['lever', 'shut'],
  ['layout', 'ring'],
  ['gates', 'saw 4 m, planer 3 m, lathe 2 m'],
  ['cutouts', 'bin-full 3 m'],
  ['hand', '2 m'],
]);

describe('a plan from answers', () => {
  it.each([
    ['a garage', GARAGE],
    [
      'a garage with feeble motor protection, in a star',
      new Map([...GARAGE, ['layout', 'star'], ['protector', 'none']] as const),
    ],
    ['a ring with a cut-out and a hand switch', SCHOOL],
  ])('of %s does in every state what its intent says, by an oracle that shares no code', (_, texts) => {
    // tests/oracles/brute.ts reads the text itself and tries every state.
    const oracle = everyState(once(texts).text);
    const [collector] = oracle.targets;
    expect(collector?.wrong).toBe(0);
    expect(oracle.harmful).toBe(false);
    // With nothing open it stands still; with one gate open and nothing tripped it runs.
    const runs = collector!.states.filter((s) => s.runs).length;
    expect(runs).toBeGreaterThan(0);
    expect(runs).toBeLessThan(collector!.states.length);
  });

  it.runIf(WHOLE)('is the same for the same answers, whatever the order in which they come', () => {
    const back = new Map([...GARAGE].reverse());
    expect(made(back).text).toBe(made(GARAGE).text);
    expect(made(GARAGE).text).toBe(made(GARAGE).text);
  });

  it.runIf(WHOLE)('keeps names, distances and units as they were answered', () => {
    const { text } = once(GARAGE);
    const { plan } = checked(text);
    expect([...plan.parts.values()].filter((p) => p.kind === 'gate').map((p) => p.name)).toEqual([
      'table-saw',
      'planer',
      'lathe',
    ]);
    const lengths = plan.runs
      .filter((r) => r.cores.some((c) => c.b.terminal === 'COM' && plan.parts.get(c.b.part)?.kind === 'gate'))
      .map((r) => r.length);
    // 1 ft is 0.3048 m (international foot, exact).
    expect(lengths).toEqual([6 * 0.3048, 4 * 0.3048, 3 * 0.3048]);
    expect(text).not.toMatch(/\d m[,}]/);
    expect(once(SCHOOL).text).not.toMatch(/\d (?:ft|in)\b/);
  });

  it('takes the tab that closes as the gate opens', () => {
    // A lever pressed by the open gate closes COM-NO then; one pressed by the shut gate lets COM-NC close (EN 50005 names).
    expect(once(GARAGE).text).toContain('planer.NO');
    expect(once(GARAGE).text).not.toContain('planer.NC');
    expect(once(SCHOOL).text).toContain('planer.NC');
    expect(once(SCHOOL).text).not.toContain('planer.NO');
  });

  it.runIf(WHOLE)(
    'puts cut-outs ahead of gates and hand switch, and an overload relay where the motor has no protector',
    () => {
      const { plan } = checked(once(SCHOOL).text);
      expect(plan.intents?.[0]?.blockedBy.map((b) => b.part)).toEqual(['OL1', 'bin-full']);
      expect(checked(once(GARAGE).text).plan.parts.has('OL1')).toBe(false);
    },
  );

  it.runIf(WHOLE)('takes parts at hand as they are', () => {
    const hand = new Map<Key, string>([
      ...GARAGE,
      ['supply', '12 V DC 2 A regulated class 2'],
      ['relay', 'coil 12 V DC 155 ohm pull-in 70 %, 30 A 240 V AC, 1.5 hp 120 V AC'],
    ]);
    const { plan } = checked(made(hand).text);
    expect(plan.parts.get('PS1')).toMatchObject({
      limit: { value: 2, printed: 'A' },
      output: { volts: 12, kind: 'dc' },
    });
    expect(plan.parts.get('Q1')).toMatchObject({ coil: { resistance: 155, pullIn: { fraction: 0.7 } } });
  });

  it.runIf(WHOLE)('tells what cannot pass, and the nearest answer that does', () => {
    // A relay for 10 A has no business with a motor that starts on six times 13 A: NEC 430.83, from memory.
    const small = made(
      new Map([...GARAGE, ['relay', 'coil 12 V DC 155 ohm, 10 A 240 V AC'], ['circuit', 'NEMA 5-20']]),
    );
    expect(small.passes).toBe(false);
    expect(small.against.some((f) => f.question === 6)).toBe(true);
    expect(small.nearest).toMatchObject([{ key: 'relay', to: 'choose' }]);
    // 5 V is no voltage for which relays of this size are sold here.
    expect(made(new Map([...GARAGE, ['supply', '5 V DC 1 A regulated class 2']])).nearest).toMatchObject([
      { key: 'supply', to: 'choose' },
    ]);
  });
});
