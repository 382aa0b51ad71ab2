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

describe('starts in turn of which the first is the greatest', () => {
  // 9 A that starts at 60 A, and 5 s later 6 A that starts at 30 A: 60 A alone, then 9 A running and 30 A starting are 39 A.
  it('take that at most', () => {
    const base = readFileSync(new URL('../bases/two-fans.yaml', import.meta.url), 'utf8');
    const unlike = base.replace('fan1: {from: fan,', 'fan1: {from: fan, amps: 9 A, locked-rotor: 60 A,');
    expect(reportOf(unlike).questions[6]!.figure).toContain(
      'starts in turn take 60 A at most, together 90 A',
    );
  });
});

describe('a delay in front of relays that call each other', () => {
  // K2 calls K3 after 5 s, K3 calls K4, and K4 holds K3: fan2 starts 5 s after fan1, so 15 A running and 90 A starting.
  const COIL = /coil: .*\n/.exec(shop)![0];
  const relay = (name: string) =>
    `  ${name}:\n    kind: relay\n    ${COIL}    contact: {ratings: [30 A 240 V AC, 10 A 30 V DC], motor: [1.5 hp 120 V AC]}\n    poles: [{form: make, marks: [1, 2]}, {form: make, marks: [3, 4]}]\n    isolation: reinforced\n    listed: true\n`;
  const links = [
    ...[
      '[PS1.+, K2.COM]',
      '[K2.NO, K3.A1]',
      '[PS1.+, K3.1]',
      '[K3.2, K4.A1]',
      '[PS1.+, K4.1]',
      '[K4.2, K3.A1]',
    ],
    ...['[PS1.-, K3.A2]', '[PS1.-, K4.A2]'],
  ];
  const ring = shop
    .replace('  saw: {from: snap}\n', `${relay('K3')}${relay('K4')}  saw: {from: snap}\n`)
    .replace('[K1.COM, K2.COM]', '[K1.COM, K4.3]')
    .replace('[K2.NO, X2.L]', '[K4.4, X2.L]')
    .replace('\nintent:', `${links.map((l) => `  - {link: ${l}}\n`).join('')}\nintent:`);

  it('holds for what is behind them', () => {
    const figures = Object.fromEntries(
      told(reportOf(ring.replace('time: 5 s', 'time: 4 s')))!.figures.map((f) => [f.name, f.value]),
    );
    expect(figures).toEqual({ together: 180, 'one after the other': 105 });
    expect(told(reportOf(ring))).toBeUndefined();
  });
});
