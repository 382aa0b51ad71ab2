import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { judgeAsTaken } from '../../../src/findings/judge.ts';
import { readPlan } from '../../../src/plan/read.ts';
import type { check } from '../../../src/repair/check.ts';
import { Study } from '../../../src/study/study.ts';
import { planOf } from '../../helpers/plan-of.ts';

const file = fileURLToPath(new URL('../../corpus/start-stop-arming.yaml', import.meta.url));
const right = readFileSync(file, 'utf8');

/** The report of the right plan with one piece of text replaced. */
function having(from: string, to: string) {
  expect(right.split(from).length, `"${from}" stands once`).toBe(2);
  const read = readPlan(
    right.replace(from, () => to),
    'start-stop.yaml',
  );
  if (!read.ok) throw new Error(read.errors.map((e) => e.message).join('\n'));
  return judgeAsTaken(Study.of(read.plan));
}
const grave = (report: ReturnType<typeof check>) =>
  report.findings.filter((f) => ['danger', 'warning', 'fault'].includes(f.severity)).map((f) => f.id);

// The arrangement is the three-wire start-stop control of the trade; common practice, no source.
it.each([
  ['START and a gate together, START remembered', 'runs-on: [[START, g1], [START, g2]]'],
  ['gates alone, START remembered: it arms', 'runs-on: [g1, g2]'],
])('the wanted seal-in passes when the intent says: %s', (_, entries) => {
  const report = having('runs-on: [[START, g1], [START, g2]]', entries);
  expect(grave(report)).toEqual([]);
  expect(report.verdict).toBe('pass');
});

it('passes when the intent speaks of the arming relay only; the fan may then stay off until a gate opens', () => {
  const report = having(
    '  fan: {runs-on: [[START, g1], [START, g2]], stays-on-after',
    '  CR: {runs-on: [START], stays-on-after',
  );
  expect(grave(report)).toEqual([]);
});

it('without stays-on-after the holding relay is a fault', () => {
  const report = having(', stays-on-after: START, stopped-by: [STOP, OL]', ', blocked-by: [STOP, OL]');
  expect(grave(report)).toContain('stays-on');
  expect(report.logic.holds).toBe(false);
  expect(report.logic.counterexample?.steps.length).toBeGreaterThan(1);
});

it('a holding contact that goes round STOP: STOP is ignored once the fan runs', () => {
  const report = having('white: [START.COM, CR.COM]', 'white: [OL.96, CR.COM]');
  const ignored = report.findings.find((f) => f.id === 'block-ignored');
  expect(ignored?.severity).toBe('danger');
  expect(ignored?.parts).toEqual(['STOP', 'fan']);
  expect(report.logic.counterexample?.steps).toEqual([
    { moved: { START: 'pressed', g2: 'open' } },
    { moved: { STOP: 'pressed', g2: 'open' } },
  ]);
});

it('its own break contact in the coil circuit: it chatters', () => {
  const report = having(
    'red: [START.NO, CR.NO], white: [CR.NO, CR.A1]',
    'red: [START.NO, CR.NC], white: [CR.NC, CR.A1]',
  );
  expect(grave(report)).toEqual(['chatters']);
});

it('a STOP with its make contact in line is ignored, and nothing starts otherwise', () => {
  const report = having('STOP.NC, START.COM', 'STOP.NO, START.COM');
  expect(grave(report).sort()).toEqual(['block-ignored', 'loop-dead']);
  expect(report.findings.every((f) => f.parts.includes('STOP') || f.severity === 'notice')).toBe(true);
});

it('a second pole on its break contact starts the load at rest, which is no start that does not end', () => {
  const base = readFileSync(new URL('../bases/seal-in.yaml', import.meta.url), 'utf8');
  const text = base.replace('{link: [CR.24, call]}', '{link: [CR.22, call]}');
  expect(text).not.toBe(base);
  const { findings } = judgeAsTaken(Study.of(planOf(text)));
  const rest = findings.find((f) => f.id === 'runs-with-all-shut');
  expect(rest?.why).toContain('everything at rest');
  expect(findings.map((f) => f.id)).not.toContain('stays-on');
});
