/** `marked-as` of a run: read, refused, printed in the wire list, and gone with the core it is about. */
import { expect, it } from 'vitest';
import { applyEdits } from '../../src/edit/apply-edits.ts';
import { wireRows } from '../../src/lists/wirelist.ts';
import { readPlan } from '../../src/plan/read.ts';
import { Study } from '../../src/study/study.ts';
import { planOf } from '../helpers/plan-of.ts';

const plan = (marks: string, cores = 'white: [P1.L, X1.L], grey: [P1.N, X1.N], green: [P1.PE, X1.PE]') =>
  `format: 1
practice: nec
parts:
  P1: {kind: plug, pattern: NEMA 5-15, breaker: 15 A, volts: 120 V AC}
  X1: {kind: outlet, pattern: NEMA 5-15}
runs:
  - {cable: {gauge: 12 AWG, cores: 3, insulation: 600 V}, length: 2 m, cores: {${cores}}${marks}}
  - {link: [P1.PE, X1.PE]}
`;
const errors = (text: string): string[] => {
  const read = readPlan(text, 'marks.yaml');
  return read.ok ? [] : read.errors.map((e) => e.message);
};

it('is a colour of a core of the run', () => {
  const text = plan(', marked-as: {white: black}');
  expect(planOf(text).runs[0]!.cores.map((c) => c.marked)).toEqual(['black', undefined, undefined]);
  expect(errors(plan(', marked-as: {whit: black}'))[0]).toContain('did you mean white');
  expect(errors(plan(', marked-as: {white: soup}'))[0]).toContain('found "soup", expected a colour');
  expect(errors(plan(', marked-as: [white]'))).toHaveLength(1);
  expect(errors(plan(', marked-as: {__proto__: black}'))[0]).toContain('cannot be used');
  expect(
    errors(plan('').replace('{link: [P1.PE, X1.PE]}', '{link: [P1.PE, X1.PE], marked-as: {a: red}}'))[0],
  ).toContain('not with link');
});

it('stands in the wire list, so that whoever wires it sees to the marks', () => {
  const colours = (text: string) => wireRows(Study.of(planOf(text))).wires.map((w) => w.colour);
  expect(colours(plan(', marked-as: {white: black}'))).toContain('white (marked black)');
  expect(colours(plan(''))).not.toContain('white (marked black)');
});

it('goes with its core', () => {
  const without = (marks: string) => {
    const text = plan(marks);
    const applied = applyEdits(text, planOf(text), [{ do: 'remove', run: 0, core: 0 }]);
    return 'text' in applied ? applied.text : applied.refused;
  };
  const cores = 'grey: [P1.N, X1.N], green: [P1.PE, X1.PE]';
  expect(without(', marked-as: {white: black}')).toBe(plan('', cores));
  expect(without(', marked-as: {white: black, grey: white}')).toBe(plan(', marked-as: {grey: white}', cores));
});
