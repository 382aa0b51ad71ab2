/** What a dead supply starts or stops. */
import { describe, expect, it } from 'vitest';
import { told, type Wired, wired, words } from '../wired-plans.ts';

const LOOP = 'PS1.+ g.COM, g.NO K1.A1, K1.A2 PS1.-';

const one = (more: Partial<Wired>): Wired => ({
  parts: 'PS1 g K1',
  wires: LOOP,
  intent: ['K1: {runs-on: [g]}'],
  ...more,
});

const M = [
  'P1: {kind: plug, volts: 120 V AC, pattern: fixed, breaker: 20 A}',
  'M: {kind: motor, volts: 120 V AC, amps: 5 A, power: 0.25 hp, protector: manual}',
];

describe('a dead supply', () => {
  const B =
    'K2: {kind: relay, coil: {rated: 12 V DC, resistance: 120 ohm, suppressor: diode}, contact: {ratings: [5 A 30 V DC]}}';
  const DEAD = /dead-supply/;
  // PS2 feeds K2 over the break contact of K1, which PS1 holds in while both gates are shut.
  const closed = (intent: string, more: Partial<Wired> = {}): Wired => ({
    parts: 'PS1 PS2 g h K1',
    more: [B],
    wires: 'PS1.+ g.COM, g.NC h.COM, h.NC K1.A1, K1.A2 PS1.-, PS2.+ K1.COM, K1.NC K2.A1, K2.A2 PS2.-',
    intent: [intent],
    ...more,
  });
  it.each<[string, Wired, readonly string[]]>([
    [
      'starts what hangs on a break contact',
      closed('K2: {runs-on: [g, h]}'),
      ['danger 3 runs-on-dead-supply: K2 PS1'],
    ],
    [
      'as meant',
      closed('K2: {runs-on: [g, h], if-supply-fails: running}'),
      ['fault 3 stops-on-dead-supply: K2 PS2'],
    ],
    ['stops what hangs on a make contact', one({ intent: ['K1: {runs-on: [g]}'] }), []],
    [
      'stops what ought to run on',
      one({ intent: ['K1: {runs-on: [g], if-supply-fails: running}'] }),
      ['fault 3 stops-on-dead-supply: K1 PS1'],
    ],
    [
      'ought to run on unless it is blocked',
      one({
        parts: 'PS1 g c K1',
        wires: 'PS1.+ c.COM, c.NC g.COM, g.NO K1.A1, K1.A2 PS1.-',
        intent: ['K1: {runs-on: [g], blocked-by: [c], if-supply-fails: running}'],
      }),
      ['fault 3 stops-on-dead-supply: K1 PS1'],
    ],
    [
      'two loads, told as one',
      closed('K2: {runs-on: [g, h]}', {
        parts: 'PS1 PS2 g h K1 K3',
        wires:
          'PS1.+ g.COM, g.NC h.COM, h.NC K1.A1, K1.A2 PS1.-, PS2.+ K1.COM, K1.NC K2.A1, K2.A2 PS2.-, K1.NC K3.A1, K3.A2 PS2.-',
        intent: ['K2: {runs-on: [g, h]}', 'K3: {runs-on: [g, h]}'],
      }),
      ['danger 3 runs-on-dead-supply: K2 K3 PS1'],
    ],
    [
      'what is held by a relay of its own',
      {
        parts: 'PS1 PS2 b c K2',
        more: [
          'K1: {kind: relay, coil: {rated: 12 V DC, resistance: 120 ohm, suppressor: diode}, contact: {ratings: [5 A 30 V DC]}, poles: [{form: make, marks: [13, 14]}, {form: break, marks: [21, 22]}]}',
        ],
        wires:
          'PS1.+ b.COM, b.NO K1.A1, PS1.+ K1.13, K1.14 K1.A1, K1.A2 c.COM, c.NC PS1.-, PS2.+ K1.21, K1.22 K2.A1, K2.A2 PS2.-',
        intent: ['K1: {runs-on: [b], stays-on-after: [b], stopped-by: [c]}'],
      },
      ['danger 3 runs-on-dead-supply: K1 PS2'],
    ],
  ])('%s', (_, w, expected) => {
    expect(told(wired(w), DEAD)).toEqual(expected);
  });
  it('the state is told in which it starts', () => {
    expect(words(wired(closed('K2: {runs-on: [g, h]}')), DEAD)).toEqual([
      'K2 runs when PS1 is dead. With no volts from PS1 and everything at rest (all gates shut) the load is fed through a contact that is closed at rest.',
    ]);
    expect(
      words(
        wired(
          one({
            parts: 'PS1 g c K1',
            wires: 'PS1.+ c.COM, c.NC g.COM, g.NO K1.A1, K1.A2 PS1.-',
            intent: ['K1: {runs-on: [g], blocked-by: [c], if-supply-fails: running}'],
          }),
        ),
        DEAD,
      ),
    ).toEqual([
      'K1 stops when PS1 is dead, though it is meant to run on. With no volts from PS1 and everything at rest (all gates shut) the load is off.',
    ]);
    const behind = closed('K2: {runs-on: [g, h]}', {
      parts: 'PS1 PS2 g h s K1',
      wires:
        'PS1.+ g.COM, g.NC h.COM, h.NC K1.A1, K1.A2 PS1.-, PS2.+ s.COM, s.NO K1.COM, K1.NC K2.A1, K2.A2 PS2.-',
      intent: ['K2: {runs-on: [g, h], blocked-by: [s]}'],
    });
    expect(words(wired(behind), DEAD)).toEqual([
      'K2 runs when PS1 is dead. With no volts from PS1 and s on the load is fed through a contact that is closed at rest.',
    ]);
  });
  it('both dead, where one dead starts nothing', () => {
    // M runs over K3, and over the break contacts in line of K1 and K2, each always held in by a supply of its own.
    const both = one({
      parts: 'PS1 PS2 g K1 K2 K3',
      more: M,
      wires:
        'PS1.+ K1.A1, K1.A2 PS1.-, PS2.+ K2.A1, K2.A2 PS2.-, PS1.+ g.COM, g.NO K3.A1, K3.A2 PS1.-, P1.L K3.COM, K3.NO M.L, P1.L K1.COM, K1.NC K2.COM, K2.NC M.L, P1.N M.N, P1.PE M.PE',
      intent: ['M: {runs-on: [g]}'],
    });
    expect(told(wired(both), DEAD)).toEqual(['danger 3 runs-on-dead-supply: M PS1 PS2']);
  });
});

describe('an adapter on the mains', () => {
  const on = (line: string, neutral: string) =>
    told(
      wired({
        parts: 'g K1',
        more: [
          'P1: {kind: plug, volts: 120 V AC, pattern: fixed, breaker: 20 A}',
          'PS1: {kind: supply, output: 12 V DC, input: 120 V AC, limit: 2 A, regulation: regulated, tolerance: 2 %, class-2: true}',
        ],
        wires: `P1.${line} PS1.L, P1.${neutral} PS1.N, ${LOOP}`,
        intent: ['K1: {runs-on: [g]}'],
      }),
      /dead|never/,
    );
  it('with line and neutral has power', () => expect(on('L', 'N')).toEqual([]));
  it.each([
    ['L', 'L'],
    ['N', 'N'],
  ])('with both its wires on %s has none', (line, neutral) => expect(on(line, neutral)).not.toEqual([]));
});
