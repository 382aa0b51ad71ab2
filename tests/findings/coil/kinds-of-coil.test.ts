/** AC coils on DC, diodes on AC coils, inputs that are no winding, and coils that are fed at rest. */
import { describe, expect, it } from 'vitest';
import { findings } from '../threshold-plans.ts';
import { told, type Wired, wired, words } from '../wired-plans.ts';

const LOOP = 'PS1.+ g.COM, g.NO K1.A1, K1.A2 PS1.-';
const relay = (coil: string, more = '') =>
  `K1: {kind: relay, coil: {${coil}}, ${more}contact: {ratings: [5 A 30 V DC]}}`;
const loop = (k1: string, more: Partial<Wired> = {}): string =>
  wired({ parts: 'PS1 g', more: [k1], wires: LOOP, ...more });
const AC = (amps: string) =>
  `PS1: {kind: supply, output: 24 V AC, limit: ${amps}, regulation: transformer, class-2: true}`;
const ac = (coil: string, limit = '2 A') =>
  wired({ parts: 'g', more: [AC(limit), relay(coil)], wires: 'PS1.~1 g.COM, g.NO K1.A1, K1.A2 PS1.~2' });

describe('an AC coil on DC', () => {
  // Ohm's law: 24 V over 45 ohm of copper is 0.533 A; by its 4.5 VA it would be 0.19 A
  const text = (limit: string) =>
    loop(relay('rated: 24 V AC, power: 4.5 VA, resistance: 45 ohm, most: 130 %'), {
      parts: 'g',
      more: [
        `PS1: {kind: supply, output: 24 V DC, limit: ${limit}, regulation: regulated, class-2: true}`,
        relay('rated: 24 V AC, power: 4.5 VA, resistance: 45 ohm, most: 130 %'),
      ],
    });
  it('draws by its copper', () => {
    expect(words(text('1 A'), /^coil-kind/)).toEqual([
      'K1 has an AC coil and PS1 gives DC. An AC coil on DC is limited by its copper alone: it draws 533 mA through its 45 ohm and burns.',
    ]);
    expect(told(text('0.5 A'), /^coil-kind/)[0]).toMatch(/< supply-overloaded$/);
    expect(told(text('0.7 A'), /^coil-kind/)[0]).not.toContain('supply-overloaded');
  });
  it('an article that is read', () => {
    expect(findings(text('1 A')).find((f) => f.id === 'coil-kind')!.fix).toBe(
      'Use an AC supply of 24 V, or a relay with a DC coil.',
    );
  });
});

describe('a diode built into an AC coil', () => {
  const coil = 'rated: 24 V AC, power: 4 VA';
  it('shorts half of every wave', () => {
    expect(told(ac(`${coil}, suppressor: diode`), /^diode-/)).toEqual([
      'warning 5 diode-backwards: K1 | K1.A1 K1.A2',
    ]);
    expect(words(ac(`${coil}, suppressor: diode`), /^diode-/)[0]).toMatch(
      /^the diode built into K1 lies across an AC supply: it is a short in every other half wave/,
    );
  });
  it.each(['rc', 'varistor', 'none'])('%s does not', (suppressor) => {
    expect(told(ac(`${coil}, suppressor: ${suppressor}`), /^diode-/)).toEqual([]);
  });
});

describe('nothing to quench', () => {
  const coil = 'rated: 12 V DC, resistance: 600 ohm, suppressor: none';
  it('a winding wants a diode', () => expect(told(loop(relay(coil)), /^coil-unsup/)).toHaveLength(1));
  it('a solid-state input does not', () =>
    expect(told(loop(relay(coil, 'technology: solid-state, ')), /^coil-unsup/)).toEqual([]));
  it('nor does the input of a timer', () => {
    const timer = relay(coil, 'function: off-delay, time: 5 s, ').replace('kind: relay', 'kind: timer');
    expect(told(loop(timer), /^coil-unsup/)).toEqual([]);
  });
});
