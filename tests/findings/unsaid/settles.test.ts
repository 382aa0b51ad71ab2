/** That what a doubt asks for settles it: the value told and no worse one, all the figures told and not fewer, whatever else is wrong. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judge } from '../../../src/findings/judge.ts';
import type { Finding } from '../../../src/findings/report-model.ts';
import { sameIn } from '../../../src/findings/unsaid/settle.ts';
import { Study } from '../../../src/study/study.ts';
import { planOf } from '../../helpers/plan-of.ts';
import { loop } from '../threshold-plans.ts';
import { wired } from '../wired-plans.ts';

const grave = ['danger', 'warning', 'fault', 'doubt'];
/** What is grave or open about the volts of the coil K1, as sentences. */
const open = (text: string) =>
  judge(Study.of(planOf(text))).findings.filter(
    (f) => f.question === 4 && grave.includes(f.severity) && f.parts.includes('K1'),
  );

type Field = 'pull-in' | 'hot-rise' | 'coil tolerance' | 'supply tolerance' | 'contact resistance';
/** Each as good as such a part can be, and how a doubt names it. */
const FIELDS: Readonly<Record<Field, readonly [best: string, asked: string]>> = {
  'pull-in': ['30 %', 'coil: {pull-in: ...} of K1'],
  'hot-rise': ['0 K', 'coil: {hot-rise: ...} of K1'],
  'coil tolerance': ['0 %', 'coil: {tolerance: ...} of K1'],
  'supply tolerance': ['0 %', 'tolerance: of PS1'],
  'contact resistance': ['0.1 mohm', 'contact: {resistance: ...} of g'],
};

/** A coil at the end of thin wire, with the fields that are stated. */
function plan(metres: number, stated: Partial<Record<Field, string>>): string {
  const of = (field: Field, name: string) =>
    stated[field] === undefined ? '' : `, ${name}: ${stated[field]}`;
  return loop({
    ...{ gauge: '24 AWG', metres },
    supply: `kind: supply, output: 12 V DC, limit: 2 A, regulation: regulated, class-2: true${of('supply tolerance', 'tolerance')}`,
    coil: `rated: 12 V DC, resistance: 120 ohm, most: 200 %, suppressor: diode${of('pull-in', 'pull-in')}${of('hot-rise', 'hot-rise')}${of('coil tolerance', 'tolerance')}`,
    contact: `ratings: [5 A 250 V AC, 5 A 30 V DC], least: 1 mA 5 V DC${of('contact resistance', 'resistance')}`,
  });
}

/** Those that the one doubt of the coil asks for. */
function asked(metres: number): Field[] {
  const [doubt, ...more] = open(plan(metres, {}));
  expect([doubt?.id, more.length]).toEqual(['value-unsaid', 0]);
  return (Object.keys(FIELDS) as Field[]).filter((f) => doubt!.fix.includes(FIELDS[f][1]));
}

const best = (fields: readonly Field[]) => Object.fromEntries(fields.map((f) => [f, FIELDS[f][0]]));

describe('several figures that only together settle it', () => {
  it.each([40, 60, 80, 100, 150, 190])('%s m of wire', (metres) => {
    const fields = asked(metres);
    expect(fields.length).toBeGreaterThan(1);
    expect(open(plan(metres, best(fields)))).toEqual([]);
  });
});

describe('one figure that settles it alone', () => {
  it('does so at the value told, and does not above it', () => {
    const [doubt] = open(plan(20, {}));
    const [, told] = /pull-in: \.\.\.\} of K1 \(([\d.]+) % of rated or less settles it\)/.exec(doubt!.fix)!;
    expect(open(plan(20, { 'pull-in': `${told} %` }))).toEqual([]);
    expect(open(plan(20, { 'pull-in': `${Number(told) + 2} %` })).map((f) => f.severity)).toEqual(['doubt']);
  });
});

it('a figure whose range spans decades is closed in on from its lower end as well', () => {
  // 12 V over 120 ohm less a tenth: 111 mA, at 2 % more 113.
  const text = loop({
    gauge: '20 AWG',
    metres: 2,
    supply: 'kind: supply, output: 12 V DC, limit: 2 A, regulation: regulated, tolerance: 2 %, class-2: true',
    coil: 'rated: 12 V DC, resistance: 120 ohm, tolerance: 10 %, pull-in: 70 %, hot-rise: 20 K, most: 200 %, suppressor: diode',
    parts: ['F1: {kind: fuse}'],
    runs: [
      '{link: [PS1.+, F1.1]}',
      '{link: [F1.2, g.COM]}',
      '{link: [g.NO, K1.A1]}',
      '{link: [K1.A2, PS1.-]}',
    ],
  });
  const fixes = judge(Study.of(planOf(text))).findings.map((f) => f.fix);
  const [, told] = /rating: of F1 \(([\d.]+) A or more settles it\)/.exec(fixes.join('\n'))!;
  expect(Number(told)).toBeGreaterThanOrEqual(0.1);
  expect(Number(told)).toBeLessThan(0.14);
});

describe('the resistance of a contact alone', () => {
  // 12 V on 10 ohm: a gate of 0.015 ohm leaves 11.98 V, one of 0.1 ohm 11.88 V (switch data sheets).
  const at = (share: number, contact = '') =>
    open(
      loop({
        ambient: 20,
        supply:
          'kind: supply, output: 12 V DC, limit: 2 A, regulation: regulated, tolerance: 0 %, class-2: true',
        coil: `rated: 12 V DC, resistance: 10 ohm, tolerance: 0 %, hot-rise: 0 K, most: 200 %, suppressor: diode, pull-in: ${share} %`,
        contact: `ratings: [5 A 250 V AC, 5 A 30 V DC], least: 1 mA 5 V DC${contact}`,
      }),
    );
  it('is asked for between what the best and the worst leave', () => {
    const [doubt, ...more] = at(99.4);
    expect([doubt?.id, more]).toEqual(['value-unsaid', []]);
    expect(doubt!.fix).toContain('contact: {resistance: ...} of g');
    expect(at(99.4, ', resistance: 15 mohm')).toEqual([]);
  });
});

describe('another coil that fails whatever is stated', () => {
  it('changes nothing of what is asked for', () => {
    const text = (more: boolean) =>
      wired({
        parts: `PS1 K1 g${more ? ' PS2 h' : ''}`,
        more: more
          ? [
              'K2: {kind: relay, coil: {rated: 24 V DC, resistance: 2.4 kohm, pull-in: 80 %, suppressor: diode}, contact: {ratings: [5 A 30 V DC]}}',
            ]
          : [],
        wires: `PS1.+ g.COM, g.NO K1.A1, K1.A2 PS1.-${more ? ', PS2.+ h.COM, h.NO K2.A1, K2.A2 PS2.-' : ''}`,
        intent: ['K1: {runs-on: [g]}'],
      });
    const alone = open(text(false));
    expect(alone.map((f) => f.id)).toEqual(['value-unsaid']);
    const beside = judge(Study.of(planOf(text(true)))).findings;
    expect(beside.find((f) => f.parts.includes('K2'))?.id).toBe('coil-too-low');
    expect(beside.find((f) => f.id === 'value-unsaid')?.fix).toBe(alone[0]!.fix);
  });
});

describe('the findings of a list that are the same as one', () => {
  it('are those of its id of which one names what the other is about, or one of them names nothing; in the order of the list', () => {
    const finding = fc.record({
      id: fc.constantFrom('coil-too-low', 'gate-dead'),
      parts: fc.uniqueArray(fc.constantFrom('K1', 'K2', 'g', 'h'), { maxLength: 3 }),
    }) as fc.Arbitrary<unknown> as fc.Arbitrary<Finding>;
    fc.assert(
      fc.property(fc.array(finding, { maxLength: 8 }), finding, (list, one) => {
        const about = (f: Finding) => f.parts.slice(0, 1);
        const same = (f: Finding) =>
          f.id === one.id &&
          (f.parts.length * one.parts.length === 0 ||
            about(f).some((p) => one.parts.includes(p)) ||
            about(one).some((p) => f.parts.includes(p)));
        expect(sameIn(list, one)).toEqual(list.filter(same));
      }),
    );
  });
});
