/** What starts by turns beside what does not, supplies of timers, and loads by the volts printed on them. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { findings } from '../threshold-plans.ts';
import { wired } from '../wired-plans.ts';

const base = (name: string) => readFileSync(new URL(`../bases/${name}.yaml`, import.meta.url), 'utf8');

function put(text: string, ...changes: readonly (readonly [string, string])[]): string {
  return changes.reduce((t, [from, to]) => {
    expect(t.split(from).length - 1, from).toBe(1);
    return t.replace(from, () => to);
  }, text);
}

/** Ids of what is wrong with the wiring, by itself or under another. */
const wrong = (text: string) =>
  findings(text)
    .filter((f) => f.question <= 3 && ['danger', 'warning', 'fault', 'doubt'].includes(f.severity))
    .flatMap((f) => [f.id, ...f.also.map((a) => a.id)]);

describe('buttons that start and stop by turns beside an input that does neither', () => {
  // plan format: an entry without such a button starts the load whatever was pressed before.
  const extra = (fed: string) =>
    put(
      base('toggle'),
      ['parts:\n', 'parts:\n  extra: {from: press}\n'],
      ['intent:', `  - {link: [${fed}, extra.COM]}\n  - {link: [extra.NO, Q1.A1]}\n\nintent:`],
      ['[saw, lathe]', '[[saw, push1], [saw, push2], [lathe, push1], [lathe, push2], extra]'],
    );

  it('that has a way of its own to the coil is right', () => {
    expect(wrong(extra('plus'))).toEqual([]);
  });
  it('that starts only behind the toggling contact is dead at rest', () => {
    expect(wrong(extra('KB1.1.NO'))).not.toEqual([]);
  });
});

describe('a DC load by the volts printed on it', () => {
  const fan = (volts: string) =>
    put(base('dc-load'), [
      'fan: {kind: motor, volts: 12 V DC, amps: 22 A',
      `fan: {kind: motor, volts: ${volts} V DC, amps: 22 A`,
    ]);

  // A motor for twice the volts does not do its work; one for a little more does (common practice, no source).
  it.each([
    ['12', []],
    ['13', []],
    ['24', ['loop-dead']],
    ['48', ['loop-dead']],
  ])('%s V on a battery of 12 V', (volts, expected) => {
    expect(wrong(fan(volts)).filter((id) => id === 'loop-dead')).toEqual(expected);
  });
});

describe('what hangs behind a diode on alternating current', () => {
  // Mean of a rectified sine: 2√2/π of its effective value for both half waves, half of that for one; less 0.7 V a diode.
  const plan = (load: string, ...wires: string[]) =>
    wired({
      parts: 'PS2 K1 g',
      more: [
        'T1: {kind: supply, output: 24 V AC, limit: 40 VA, class-2: true, regulation: transformer, no-load: 26 V}',
        'D1: {kind: diode, current: 1 A, reverse: 400 V}',
        `H: {${load}}`,
      ],
      wires: ['PS2.+ g.COM', 'g.NO K1.A1', 'K1.A2 PS2.-', ...wires].join(', '),
      intent: ['K1: {runs-on: [g]}'],
    });
  const ids = (text: string) =>
    findings(text)
      .filter((f) => f.id === 'rectified')
      .map((f) => f.parts[0]);

  it('an AC load behind it is no DC load that gets half waves', () => {
    const text = plan('kind: load, volts: 24 V AC, amps: 0.2 A', 'T1.~1 D1.A', 'D1.K H.L', 'T1.~2 H.N');
    expect(ids(text)).toEqual([]);
  });
  it.each([
    ['the plus', ['T1.~1 D1.A', 'D1.K H.+', 'T1.~2 H.-']],
    ['the minus', ['T1.~1 H.+', 'D1.A H.-', 'D1.K T1.~2']],
  ])('a DC load with the diode in %s', (_, wires) => {
    expect(ids(plan('kind: load, volts: 24 V DC, amps: 0.2 A', ...wires))).toEqual(['H']);
  });
  it('a DC load beside the diode gets AC, which is another finding', () => {
    const text = plan('kind: load, volts: 24 V DC, amps: 0.2 A', 'T1.~1 H.+', 'T1.~2 H.-', 'T1.~1 D1.A');
    expect(ids(text)).toEqual([]);
  });

  // 24 V AC: 2√2/π·24 = 21.6 V, half of that 10.8 V; crest √2·24 = 33.9 V; 0.7 V a diode. The
  // label of the transformer counts.
  it.each([
    ['half waves', ['T1.~1 D1.A', 'D1.K H.+', 'T1.~2 H.-'], 1],
    [
      'both',
      [
        'T1.~1 D1.A',
        'D1.K H.+',
        'T1.~2 D2.A',
        'D2.K H.+',
        'D3.K T1.~1',
        'D3.A H.-',
        'D4.K T1.~2',
        'D4.A H.-',
      ],
      2,
    ],
  ] as const)('mean and crest of %s', (_, wires, waves) => {
    const diodes = 'D2 D3 D4'.split(' ').map((d) => `${d}: {kind: diode, current: 1 A, reverse: 400 V}`);
    const text = plan('kind: load, volts: 24 V DC, amps: 0.2 A', ...wires).replace(
      '  H:',
      `${waves === 2 ? diodes.map((d) => `  ${d}\n`).join('') : ''}  H:`,
    );
    const [found] = findings(text).filter((f) => f.id === 'rectified');
    const figure = (name: string) => found?.figures.find((f) => f.name === name)?.value;
    const volts = 24;
    expect(figure('mean')).toBeCloseTo(((waves * Math.SQRT2) / Math.PI) * volts - 0.7 * waves, 1);
    expect(figure('crest')).toBeCloseTo(Math.SQRT2 * volts - 0.7 * waves, 1);
  });
});
