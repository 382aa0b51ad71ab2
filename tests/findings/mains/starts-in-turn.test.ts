import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { judge } from '../../../src/findings/judge.ts';
import { readPlan } from '../../../src/plan/read.ts';
import { Study } from '../../../src/study/study.ts';

const shop = readFileSync(new URL('../bases/two-fans.yaml', import.meta.url), 'utf8')
  .replaceAll('amps: 6 A, locked-rotor: 30 A', 'amps: 15 A, locked-rotor: 90 A')
  .replace('breaker: 20 A', 'breaker: 60 A D');

function reportOf(text: string) {
  const read = readPlan(text, 'shop.yaml');
  if (!read.ok) throw new Error(read.errors.map((e) => e.message).join('\n'));
  return judge(Study.of(read.plan));
}

const delayed = (seconds: string) => reportOf(shop.replace('time: 5 s', `time: ${seconds}`));
const told = (report: ReturnType<typeof reportOf>) => report.findings.find((f) => f.id === 'starts-add-up');

describe('two motors of 15 A that start at 90 A', () => {
  // Worked example: together 180 A; 5 s apart 15 A running and 90 A starting are 105 A.
  it('take 180 A together and 105 A in turn', () => {
    const figures = Object.fromEntries(told(delayed('0.1 s'))!.figures.map((f) => [f.name, f.value]));
    expect(figures).toEqual({ together: 180, 'one after the other': 105 });
  });

  it.each([
    ['5 s', undefined],
    ['4.9 s', 'notice'],
    ['1 min', undefined],
  ])('%s apart: %s', (seconds, severity) => {
    expect(told(delayed(seconds))?.severity).toBe(severity);
  });

  it('add up again where a relay stands in place of the timer', () => {
    const relay = shop.replace(
      '    kind: timer\n    function: on-delay\n    time: 5 s\n',
      '    kind: relay\n',
    );
    expect(told(reportOf(relay))?.message).toContain('180 A on P1');
  });
});

describe('what the answer says of starts in turn', () => {
  it('has the sum with and without the stagger', () => {
    const small = readFileSync(new URL('../bases/two-fans.yaml', import.meta.url), 'utf8');
    expect(reportOf(small).questions[6]!.figure).toContain('starts in turn take 36 A at most, together 60 A');
  });
});
