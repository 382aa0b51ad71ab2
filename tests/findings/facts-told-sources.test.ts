/** Sources joined or earthed, and how long a battery lasts. */
import { describe, expect, it } from 'vitest';
import { told, type Wired, wired, words } from './wired-plans.ts';

const LOOP = 'PS1.+ g.COM, g.NO K1.A1, K1.A2 PS1.-';

const one = (more: Partial<Wired>): Wired => ({
  parts: 'PS1 g K1',
  wires: LOOP,
  intent: ['K1: {runs-on: [g]}'],
  ...more,
});

/** The plain loop on another source. */
const on = (source: string, more: Partial<Wired> = {}): Wired =>
  one({ parts: 'g K1', more: [`PS1: {${source}}`], ...more });

describe('two supplies', () => {
  const two = (wires: string, more: Partial<Wired> = {}): Wired => ({
    parts: 'PS1 PS2 g h K1',
    wires,
    intent: ['K1: {runs-on: [g, h]}'],
    ...more,
  });
  it.each<[string, Wired, readonly string[]]>([
    [
      'both poles joined',
      two(`${LOOP}, PS2.+ PS1.+, PS2.- PS1.-`),
      ['warning 5 supplies-joined: PS1 PS2 | PS1.+ PS1.- PS2.+ PS2.-'],
    ],
    [
      'crossed',
      two(`${LOOP}, PS2.- PS1.+, PS2.+ PS1.-`),
      ['warning 5 supplies-joined: PS1 PS2 | PS1.+ PS1.- PS2.+ PS2.-'],
    ],
    [
      'one pole in common',
      two(`${LOOP}, PS2.- PS1.-, PS2.+ h.COM, h.NO K1.A1`),
      ['warning 5 supplies-joined: PS1 PS2 | PS1.+ PS1.- PS2.+ PS2.-'],
    ],
    [
      'joined by way of two gates',
      two(`${LOOP}, PS2.- PS1.-, PS2.+ h.COM, h.NO g.NO`),
      ['warning 5 supplies-joined: PS1 PS2 | PS1.+ PS1.- PS2.+ PS2.-'],
    ],
    [
      'apart',
      {
        ...two(`${LOOP}, PS2.+ h.COM, h.NO K2.A1, K2.A2 PS2.-`),
        parts: 'PS1 PS2 g h K1 K2',
        intent: ['K1: {runs-on: [g]}', 'K2: {runs-on: [h]}'],
      },
      [],
    ],
  ])('%s', (_, w, expected) => {
    expect(told(wired(w), /^suppl(ies|y)-/)).toEqual(expected);
  });
  it('the state in which they are joined is told', () => {
    expect(words(wired(two(`${LOOP}, PS2.- PS1.-, PS2.+ h.COM, h.NO g.NO`)), /^supplies-/)).toEqual([
      'PS1 and PS2 feed one loop together. With g open, h open both poles of the one are joined to both poles of the other.',
    ]);
    expect(words(wired(two(`${LOOP}, PS2.+ PS1.+, PS2.- PS1.-`)), /^supplies-/)).toEqual([
      'PS1 and PS2 feed one loop together. With everything at rest (all gates shut) both poles of the one are joined to both poles of the other.',
    ]);
  });
});

describe('an earthed supply', () => {
  const P = [
    'P1: {kind: plug, volts: 120 V AC, pattern: fixed, breaker: 20 A}',
    'M: {kind: motor, volts: 120 V AC, amps: 5 A, power: 0.25 hp}',
  ];
  const at = (wires: string): Wired => ({
    parts: 'PS1 g K1',
    more: P,
    wires: `${wires}, P1.L K1.COM, K1.NO M.L, P1.N M.N, P1.PE M.PE`,
    intent: ['M: {runs-on: [g]}'],
  });
  it.each<[string, Wired, readonly string[]]>([
    [
      'at -, the gate in the other conductor',
      at(`${LOOP}, PS1.- M.PE`),
      ['notice 1 low-voltage-earthed: PS1 | PS1.-'],
    ],
    [
      'at -, the gate between it and the coil',
      at('PS1.+ K1.A1, K1.A2 g.COM, g.NO PS1.-, PS1.- M.PE'),
      ['warning 1 low-voltage-earthed: PS1 K1 | PS1.-'],
    ],
    [
      'at +, the gate between it and the coil',
      at(`${LOOP}, PS1.+ M.PE`),
      ['warning 1 low-voltage-earthed: PS1 K1 | PS1.+'],
    ],
    ['nowhere', at(LOOP), []],
  ])('%s', (_, w, expected) => {
    expect(told(wired(w), /^low-voltage-earthed/)).toEqual(expected);
  });
});

describe('a battery', () => {
  const battery = (fields: string, more: Partial<Wired> = {}) =>
    on(`kind: battery, output: 12 V DC, internal-resistance: 0.03 ohm${fields}`, more);
  const RESTS = { wires: `${LOOP}, PS1.+ R.1, R.2 PS1.-` };
  const withRest = (ah: number, ohms: number) => {
    const w = battery(`, capacity: ${ah} Ah`, RESTS);
    return { ...w, more: [...w.more!, `R: {kind: resistor, resistance: ${ohms} ohm}`] };
  };
  // 12 V over 120 ohm are 100 mA; of the capacity 60 % are taken as usable and a working week as 40 h (common practice).
  it.each<[string, Wired, readonly string[]]>([
    [
      '6 Ah and 100 mA',
      battery(', capacity: 6 Ah'),
      ['caution 5 battery-short-lived: PS1 | hours with a gate open 36 h, hours at rest null h'],
    ],
    ['7 Ah and 100 mA', battery(', capacity: 7 Ah'), []],
    ['no capacity told', battery(''), []],
    [
      '100 Ah, and 1 A at rest',
      withRest(100, 12),
      ['caution 5 battery-short-lived: PS1 | hours with a gate open 54.7 h, hours at rest 60.1 h'],
    ],
    ['100 Ah, and 0.1 A at rest', withRest(100, 120), []],
    ['30 Ah, and 70 mA at rest', withRest(30, 170), []],
  ])('%s', (_, w, expected) => {
    expect(told(wired(w), /^battery/)).toEqual(expected);
  });
  it('says what flows', () => {
    expect(words(wired(battery(', capacity: 6 Ah')), /^battery/)).toEqual([
      'PS1 lasts about 36 h with a gate open. An open gate takes 99.9 mA; of 6 Ah about 60 % can be used before the volts sag. A working week is taken as 40 h.',
    ]);
    expect(words(wired(withRest(100, 12)), /^battery/)).toEqual([
      'PS1 is flat in 2.5 days with all gates shut. An open gate takes 1100 mA, rest takes 998 mA; of 100 Ah about 60 % can be used before the volts sag. A working week is taken as 40 h.',
    ]);
  });
});
