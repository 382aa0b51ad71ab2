/** How long a battery lasts: hours and days told, and nothing told where they are enough. */
import { describe, expect, it } from 'vitest';
import { findings, type Loop, loop } from '../threshold-plans.ts';
import { told, type Wired, wired, words } from '../wired-plans.ts';

const of = (text: string, id: string) => findings(text).filter((f) => f.id === id);

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

describe('battery-short-lived', () => {
  // The coil takes 12 V over 120 ohm and a contact of 50 mohm; 60 % of the capacity counts, common practice.
  const battery = (fields: string, more: Partial<Loop> = {}) =>
    of(loop({ supply: `kind: battery, output: 12 V DC${fields}`, ...more }), 'battery-short-lived');
  const bridge = (ohms: number): Partial<Loop> => ({
    parts: [`R1: {kind: resistor, resistance: ${ohms} ohm}`],
    more: ['{link: [R1.1, PS1.+]}', '{link: [R1.2, PS1.-]}'],
  });

  it('nothing is said without a capacity, or where it is enough', () => {
    expect(battery('')).toEqual([]);
    expect(battery(', capacity: 50 Ah')).toEqual([]);
  });
  it('hours with a gate open where nothing is drawn at rest', () => {
    const [found] = battery(', capacity: 1 Ah');
    expect(found?.message).toBe('PS1 lasts about 6 h with a gate open');
    expect(found?.figures.map((f) => f.value)).toEqual([6, null]);
    expect(found?.why).toContain('An open gate takes 100 mA;');
    expect(found?.fix).toBe('PS1 does not hold what a week takes.');
  });
  it('days at rest where that empties it', () => {
    const [found] = battery(', capacity: 1 Ah', bridge(1200));
    expect(found?.message).toBe('PS1 is flat in 2.5 days with all gates shut');
    expect(found?.figures.map((f) => f.value)).toEqual([5.46, 60]);
    expect(found?.why).toContain('rest takes 10 mA');
    expect(found?.why).toContain('What draws at rest sits before the gates.');
  });
  it('a week and a half at rest is not called flat', () => {
    // 0.6 Ah over 252 h are 2.38 mA, which 5040 ohm take.
    expect(battery(', capacity: 1 Ah', bridge(5000))[0]?.message).toContain('flat');
    expect(battery(', capacity: 1 Ah', bridge(5080))[0]?.message).toContain('lasts about');
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
      'PS1 is flat in 2.5 days with all gates shut. An open gate takes 1.1 A, rest takes 998 mA; of 100 Ah about 60 % can be used before the volts sag. A working week is taken as 40 h. What draws at rest sits before the gates.',
    ]);
  });
});
