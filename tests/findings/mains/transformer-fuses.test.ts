/**
 * Fuses ahead of a control transformer in a plan: which winding is wired, whose it is, and what stands behind it. NEC 430.72(C) and
 * Table 450.3(B), by public copies of 2023 and of 2008.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { judge } from '../../../src/findings/judge.ts';
import { Study } from '../../../src/study/study.ts';
import { planOf } from '../../helpers/plan-of.ts';
import { begins, has } from '../threshold-plans.ts';

const BASE = readFileSync(new URL('../bases/control-transformer.yaml', import.meta.url), 'utf8');

interface Transformer {
  readonly va: number;
  /** A of both primary fuses */
  readonly ahead: number;
  /** of the secondary fuse */
  readonly behind?: string;
  readonly tap?: 208 | 240;
  readonly more?: readonly (readonly [string, string])[];
}

function plan({ va, ahead, behind = 'rating: 1 A, class: time-delay', tap = 240, more = [] }: Transformer) {
  const changes: (readonly [string, string])[] = [
    ['F1: {kind: fuse, rating: 1 A', `F1: {kind: fuse, rating: ${ahead} A`],
    ['F2: {kind: fuse, rating: 1 A', `F2: {kind: fuse, rating: ${ahead} A`],
    ['F3: {kind: fuse, rating: 1 A, class: time-delay}', `F3: {kind: fuse, ${behind}}`],
    ['limit: 100 VA', `limit: ${va} VA`],
    ['[F2.2, T1.240]', `[F2.2, T1.${tap}]`],
    ...more,
  ];
  return changes.reduce((text, [from, to]) => {
    expect(text.split(from).length - 1, from).toBe(1);
    return text.replace(from, () => to);
  }, BASE);
}

/** Finds the fuse too large from `most` on. */
const most = (amps: number, t: Omit<Transformer, 'ahead'>) =>
  begins('transformer-unprotected', 'above', amps, (ahead) => plan({ ...t, ahead }));
const LOOSE = 'rating: 30 A, class: time-delay';

describe('fuses ahead of the transformer of a contactor', () => {
  // 430.72(C)(4): less than 2 A of primary current, 500 %.
  it.each([240, 208] as const)('100 VA on its tap of %s V: five times its amperes', (tap) => {
    most((5 * 100) / tap, { va: 100, tap });
  });
  it('100 VA on its tap of 240 V, with a core on the other that leads nowhere', () => {
    const spare = [
      ['  ctrl: {kind: joint}\n', '  ctrl: {kind: joint}\n  spare: {kind: joint}\n'],
      ['[F2.2, T1.240]}}', '[F2.2, T1.240]}}\n  - {link: [T1.208, spare]}'],
    ] as const;
    most((5 * 100) / 240, { va: 100, more: spare });
  });
  // 450.3(B): 2 A to 9 A, 167 % where the secondary has nothing that protects it.
  it.each([240, 208] as const)('600 VA on its tap of %s V with 30 A behind it: 1.67 times', (tap) => {
    most((1.67 * 600) / tap, { va: 600, tap, behind: LOOSE });
  });
  it('600 VA with a fuse behind it that says no rating: 167 %', () => {
    most((1.67 * 600) / 240, { va: 600, behind: 'class: time-delay' });
  });
  // 450.3(B), primary and secondary: 250 %, where 5 A of the secondary have 167 % at most, 8.35 A.
  it.each([
    ['8 A', 2.5],
    ['8.3 A', 2.5],
    ['8.4 A', 1.67],
  ])('600 VA with %s behind it', (rating, times) => {
    most((times * 600) / 240, { va: 600, behind: `rating: ${rating}, class: time-delay` });
  });
  it('600 VA with a fuse behind it and a way past it: 167 %', () => {
    const past = [
      [
        '{cable: wire, length: 30 cm, cores: {black: [ctrl, PS1.L]}}',
        '{cable: wire, length: 30 cm, cores: {black: [T1.~1, PS1.L]}}',
      ],
      ['[ctrl, K1.COM]', '[T1.~1, K1.COM]'],
    ] as const;
    most((1.67 * 600) / 240, { va: 600, behind: 'rating: 8 A', more: past });
  });
  // 430.72(C)(3): below 50 VA as part of the controller and within its enclosure none is asked for.
  it.each([
    [49, false],
    [50, true],
  ])('%s VA within the box of the contactor', (va, asked) => {
    expect(has(plan({ va, ahead: 15 }), 'transformer-unprotected')).toBe(asked);
  });
  it('49 VA outside the box', () => {
    const outside = [['holds: [F1, F2, F3, T1, ', 'holds: [F1, F2, F3, ']] as const;
    most((5 * 49) / 240, { va: 49, more: outside });
  });
  it('one that does not say that it is a transformer gives alternating current, and so is one', () => {
    most((5 * 100) / 240, { va: 100, more: [['    regulation: transformer\n', '']] });
  });
  // From 5 to 100 VA, bell and Class 2 transformers: outside the box 15 A are too large for each of them, and 2 A serve 100 VA alone, five
  // times whose amperes they are.
  it.each([
    [15, 'transformer-unprotected', 'warning'],
    [2, 'value-unsaid', 'doubt'],
  ])('one whose power is not stated, behind %s A: %s', (ahead, id, severity) => {
    const text = plan({
      ...{ va: 100, ahead },
      more: [
        ['    limit: 100 VA\n', ''],
        ['holds: [F1, F2, F3, T1, ', 'holds: [F1, F2, F3, '],
      ],
    });
    const own = judge(Study.of(planOf(text))).findings.filter(
      (f) => f.question === 7 && f.parts.includes('T1'),
    );
    expect(new Set(own.map((f) => `${f.id} ${f.severity}`))).toEqual(new Set([`${id} ${severity}`]));
  });
  it.each<[string, readonly (readonly [string, string])[]]>([
    ['marked Class 2', [['regulation: transformer\n', 'regulation: transformer\n    class-2: true\n']]],
    ['where practice is iec', [['practice: nec', 'practice: iec']]],
  ])('none is asked for: %s', (_, more) => {
    expect(has(plan({ va: 100, ahead: 15, more }), 'transformer-unprotected')).toBe(false);
  });
});
