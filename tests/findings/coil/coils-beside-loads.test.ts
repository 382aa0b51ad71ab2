/** A coil beside other loads: while a motor starts on the same cord, and while other coils are in. */
import { describe, expect, it } from 'vitest';
import { reportOf } from '../contact-plans.ts';
import { told, type Wired, wired } from '../wired-plans.ts';

describe('a supply on the cord of its motor', () => {
  const SAG = /^coil-drops/;
  const AC =
    'PS1: {kind: supply, output: 24 V AC, limit: 40 VA, regulation: transformer, no-load: 25 V, class-2: true}';
  const DC =
    'PS1: {kind: supply, output: 24 V DC, limit: 2 A, regulation: unregulated, no-load: 30 V, class-2: true}';
  const STEADY = 'PS1: {kind: supply, output: 24 V DC, limit: 2 A, regulation: regulated, class-2: true}';
  const ac =
    'K1: {kind: relay, coil: {rated: 24 V AC, power: 5 VA, inrush: 9 VA, most: 140 %}, contact: {ratings: [30 A 250 V AC]}}';
  const dc =
    'K1: {kind: relay, coil: {rated: 24 V DC, resistance: 300 ohm, most: 200 %, suppressor: diode}, contact: {ratings: [30 A 250 V AC]}}';
  const Q =
    'K1: {kind: relay, coil: {rated: 24 V AC, power: 8 VA, inrush: 30 VA, most: 140 %}, contact: {ratings: [30 A 250 V AC], ac-3: 20 A}}';
  const run = (gauge: string, metres: number, cores: string) =>
    `{cable: {gauge: ${gauge}, cores: 3, insulation: 600 V}, length: ${metres} m, cores: {${cores}}}`;
  const at = (
    metres: number,
    supply: string,
    relay: string,
    more: Partial<Wired> & { feed?: string; start?: string } = {},
  ): Wired => {
    const [go, back] = supply === AC ? ['~1', '~2'] : ['+', '-'];
    const { feed, start, ...rest } = more;
    return {
      parts: 'g',
      more: [
        supply,
        relay,
        'P1: {kind: plug, volts: 120 V AC, pattern: NEMA 5-20, breaker: 20 A}',
        `M: {kind: motor, volts: 120 V AC, amps: 10 A, protector: manual${start ?? ', locked-rotor: 60 A'}}`,
        'a: {kind: joint}',
        'n: {kind: joint}',
        'e: {kind: joint}',
        ...(rest.more ?? []),
      ],
      wires: `PS1.${go} g.COM, g.NO K1.A1, K1.A2 PS1.${back}, ${feed ?? 'a PS1.L, n PS1.N'}`,
      runs: [
        run('14 AWG', metres, '1: [P1.L, a], 2: [P1.N, n], 3: [P1.PE, e]'),
        run('14 AWG', 1, '1: [a, K1.COM], 2: [n, M.N], 3: [e, M.PE]'),
        run('14 AWG', 1, '1: [K1.NO, M.L]'),
      ],
      intent: ['M: {runs-on: [g]}'],
    };
  };
  it.each<[string, Wired, readonly string[]]>([
    ['15 m to an AC relay', at(15, AC, ac), []],
    [
      '40 m to an AC relay',
      at(40, AC, ac),
      [
        'warning 4 coil-drops-at-start: K1 PS1 M | volts at the coil during the start 17.37 V, volts to hold 19.2 V',
      ],
    ],
    ['40 m, the supply ahead of the cord', at(40, AC, ac, { feed: 'P1.L PS1.L, P1.N PS1.N' }), []],
    [
      '40 m, the supply fed from what is not shown',
      at(40, AC, ac, { feed: 'a p, p q', more: ['p: {kind: joint}', 'q: {kind: joint}'] }),
      [],
    ],
    [
      '40 m, a motor of another kind',
      at(40, AC, ac, { start: ', type: permanent-split' }),
      [
        'warning 4 coil-drops-at-start: K1 PS1 M | volts at the coil during the start 17.37 V, volts to hold 19.2 V',
      ],
    ],
    [
      '40 m to a contactor',
      at(40, AC, Q),
      [
        'warning 4 coil-drops-at-start: K1 PS1 M | volts at the coil during the start 17.31 V, volts to hold 19.2 V',
      ],
    ],
    ['40 m to a DC relay', at(40, DC, dc), []],
    ['150 m to a DC relay', at(150, DC, dc), []],
    ['150 m to a DC relay on a regulated supply', at(150, STEADY, dc), []],
  ])('%s', (_, w, expected) => {
    expect(told(wired(w), SAG)).toEqual(expected);
  });
});

describe('coils on one long feed', () => {
  const cable = (metres: number, cores: string) =>
    `{cable: {gauge: 20 AWG, cores: 2, insulation: 300 V, strands: solid}, length: ${metres} m, cores: {${cores}}}`;
  /** As many gates as told, each with a coil of its own, behind one cable. */
  const many = (count: number, more: Partial<Wired> = {}): Wired => {
    const names = Array.from({ length: count }, (_, i) => i + 1);
    return {
      parts: ['PS1', ...names.map((i) => `g${i}`), ...names.map((i) => `K${i}`)].join(' '),
      more: ['p: {kind: joint}'],
      wires: names.map((i) => `p g${i}.COM, g${i}.NO K${i}.A1, K${i}.A2 PS1.-`).join(', '),
      runs: [cable(30, 'red: [PS1.+, p]')],
      intent: names.map((i) => `K${i}: {runs-on: [g${i}]}`),
      ...more,
    };
  };
  const rows = (w: Wired) =>
    reportOf(wired(w)).coils.map(
      (c) =>
        `${c.relay} ${c.gate}: ${c.volts.min} ${c.volts.nominal} ${c.volts.max}, ${c.corner.slice(c.corner.indexOf('wires at'))}`,
    );
  it.each<[string, Wired, readonly string[]]>([
    [
      'two',
      many(2),
      [
        'K1 g1: 11.56 11.9 12.16, wires at 40 °C, with g2 as well',
        'K2 g2: 11.56 11.9 12.16, wires at 40 °C, with g1 as well',
      ],
    ],
    [
      'four',
      many(4),
      [
        'K1 g1: 11.37 11.9 12.16, wires at 40 °C, with g2, g3, g4 as well',
        'K2 g2: 11.37 11.9 12.16, wires at 40 °C, with g1, g3, g4 as well',
        'K3 g3: 11.37 11.9 12.16, wires at 40 °C, with g1, g2, g4 as well',
        'K4 g4: 11.37 11.9 12.16, wires at 40 °C, with g1, g2, g3 as well',
      ],
    ],
    [
      'a lamp that a gate of its own lights',
      many(1, {
        parts: 'PS1 g1 h K1',
        more: ['p: {kind: joint}', 'X: {kind: lamp, rated: 12 V DC 5 W}'],
        wires: 'p g1.COM, g1.NO K1.A1, K1.A2 PS1.-, p h.COM, h.NO X.1, X.2 PS1.-',
      }),
      ['K1 g1: 11.24 11.9 12.16, wires at 40 °C, with h as well'],
    ],
    [
      'a lamp that the gate itself lights',
      many(1, {
        more: ['p: {kind: joint}', 'X: {kind: lamp, rated: 12 V DC 5 W}'],
        wires: 'p g1.COM, g1.NO K1.A1, K1.A2 PS1.-, g1.NO X.1, X.2 PS1.-',
      }),
      ['K1 g1: 11.2 11.48 11.75, wires at 40 °C'],
    ],
    [
      'an indicator on a gate of its own',
      many(1, {
        parts: 'PS1 g1 h K1',
        more: ['p: {kind: joint}', 'D: {kind: led}'],
        wires: 'p g1.COM, g1.NO K1.A1, K1.A2 PS1.-, p h.COM, h.NO D.A, D.K PS1.-',
      }),
      ['K1 g1: 11.63 11.9 12.16, wires at 40 °C, with h as well'],
    ],
    [
      'a second coil over the contact of the first',
      many(1, {
        parts: 'PS1 g1 K1 K2',
        wires: 'p g1.COM, g1.NO K1.A1, K1.A2 PS1.-, p K1.COM, K1.NO K2.A1, K2.A2 PS1.-',
        intent: ['K2: {runs-on: [g1]}'],
      }),
      ['K1 g1: 11.65 11.9 12.16, wires at 40 °C', 'K2 g1: 11.56 11.8 12.09, wires at 40 °C'],
    ],
    [
      'a selector that lights one lamp or another',
      many(1, {
        parts: 'PS1 g1 K1',
        more: [
          'p: {kind: joint}',
          'X: {kind: lamp, rated: 12 V DC 5 W}',
          'Y: {kind: lamp, rated: 12 V DC 10 W}',
          'S: {kind: selector, positions: [off, one, two], rest: off, contact: {ratings: [5 A 30 V DC]}}',
        ],
        wires: 'p g1.COM, g1.NO K1.A1, K1.A2 PS1.-, p S.COM, S.one X.1, S.two Y.1, X.2 PS1.-, Y.2 PS1.-',
      }),
      ['K1 g1: 10.85 11.9 12.16, wires at 40 °C, with S as well'],
    ],
    [
      'two ways with a cut-out in each',
      many(1, {
        parts: 'PS1 g1 h c K1',
        wires: 'p g1.COM, g1.NO K1.A1, K1.A2 PS1.-, PS1.+ c.COM, c.NC h.COM, h.NO K1.A1',
        intent: ['K1: {runs-on: [g1, h]}'],
      }),
      ['K1 g1: 11.65 11.9 12.24, wires at 40 °C, with c as well', 'K1 h: 11.74 11.99 12.24, wires at 40 °C'],
    ],
  ])('%s', (_, w, expected) => {
    expect(rows(w)).toEqual(expected);
  });
  it('of ten the worst is proved, not all combinations tried', () => {
    expect(rows(many(10)).slice(0, 2)).toEqual([
      "K1 g1: 10.85 11.9 12.16, wires at 40 °C, with g2, g3, g4, g5 and 5 more as well (proved for every state of the other loads, by Rayleigh's law)",
      "K2 g2: 10.85 11.9 12.16, wires at 40 °C, with g1, g3, g4, g5 and 5 more as well (proved for every state of the other loads, by Rayleigh's law)",
    ]);
  });
});
