/** What bears on a conductor or a fuse, just held and just broken, where one practice had no such pair. */
import { describe, expect, it } from 'vitest';
import { findings } from '../threshold-plans.ts';
import { ahead, type Lead, lead } from './lead-plans.ts';

const holds: readonly string[] = [];
const fails = ['warning'];
const unsure = ['caution'];
type Row = [number, readonly string[]];

const of = (text: string, ...ids: readonly string[]) => [
  ...new Set(findings(text).flatMap((f) => (ids.includes(f.id) ? [`${f.severity} ${f.id}`] : []))),
];
const severities = (text: string) => of(text, 'conductor-unprotected').map((t) => t.split(' ')[0]);
/** The same as wire that is fixed. */
const wire = (l: Lead) => severities(lead(l).replaceAll('flexible: true', 'flexible: false'));

describe('nec, building wire: 310.15(B)(1) (2020 and 2023; Table 310.15(B)(2)(a) before), verified', () => {
  const behind = (amps: number, more: Partial<Lead>, terminal = ''): Lead => ({
    cable: '10 AWG',
    plug: `pattern: fixed, breaker: ${amps} A${terminal}`,
    load: 'kind: load, type: heater, amps: 1 A',
    ...more,
  });
  // 30 A at 60 °C; 0.91, 0.82, 0.71, 0.41 times that, and by 240.4(B) the next standard size: 30, 25, 25 and 15 A.
  it.each<[number, ...Row]>([
    [35, 30, holds],
    [35, 35, fails],
    [40, 25, holds],
    [40, 30, fails],
    [45, 25, holds],
    [45, 30, fails],
    [55, 15, holds],
    [55, 20, fails],
    [56, 1, fails],
  ])('10 AWG of 60 °C in air of %d °C behind %d A', (ambient, amps, expected) => {
    expect(wire(behind(amps, { ambient, more: ', rated: 60 °C' }))).toEqual(expected);
  });
  // 8 AWG in 40 °C: 40 A times 0.82 and so 35 A; 55 A times 0.91, of which terminals for 60 °C (110.14(C)) leave 40 A.
  it.each<[number, ...Row]>([
    [60, 35, holds],
    [60, 40, fails],
    [90, 40, holds],
    [90, 45, fails],
  ])('8 AWG of %d °C insulation in air of 40 °C behind %d A', (rated, amps, expected) => {
    expect(wire(behind(amps, { cable: '8 AWG', ambient: 40, more: `, rated: ${rated} °C` }))).toEqual(
      expected,
    );
  });
  // In 65 °C 0.65 times the 55 A of 90 °C are 35.75 A, and by 240.4(B) the next size, 40 A.
  it.each<Row>([
    [40, holds],
    [45, fails],
  ])('8 AWG of 90 °C insulation in air of 65 °C behind %d A', (amps, expected) => {
    expect(wire(behind(amps, { cable: '8 AWG', ambient: 65, more: ', rated: 90 °C' }))).toEqual(expected);
  });
  // 75 °C terminals: 50 A times 0.88 is 44 A, and so 45 A.
  it.each<Row>([
    [45, holds],
    [50, fails],
  ])('8 AWG of 75 °C at such terminals in air of 40 °C behind %d A', (amps, expected) => {
    const plan = behind(
      amps,
      { cable: '8 AWG', ambient: 40, more: ', rated: 75 °C' },
      ', terminal-rating: 75 °C',
    );
    expect(wire(plan)).toEqual(expected);
  });
});

describe('nec, loaded cores: Table 310.15(C)(1) (2020 and 2023), verified; 400.5(A), one copy', () => {
  /** The line goes to a joint at the machine, back to the relay, and out again: four conductors with current. */
  const there = (cable: string, amps: number, more: string): Lead => ({
    cable,
    cores: 5,
    more,
    plug: `${more.includes('60') ? 'pattern: fixed, ' : ''}breaker: ${amps} A`,
    parts: ['j: {kind: joint}'],
  });
  const through = (text: string) =>
    text
      .replace('1: [P1.L, K1.COM],', '1: [P1.L, j], 4: [j, K1.COM], 5: [K1.NO, X1.L],')
      .replace(/ {2}- .*1: \[K1\.NO, X1\.L\]\}\}\n/, '');
  const four = (amps: number) =>
    severities(
      through(lead(there('10 AWG', amps, ', rated: 60 °C'))).replaceAll('flexible: true', 'flexible: false'),
    );
  // 30 A times 0.8 is 24 A, and so 25 A.
  it.each<Row>([
    [25, holds],
    [30, fails],
  ])('four in one cable of 10 AWG behind %d A', (amps, expected) => {
    expect(four(amps)).toEqual(expected);
  });
  const three = (amps: number) =>
    severities(
      lead({ cable: '10 AWG', more: ', rated: 60 °C', cores: 4, plug: `breaker: ${amps} A` })
        .replace('volts: 120 V AC', 'volts: 208 V AC, phases: 3')
        .replace('{kind: outlet}', '{kind: outlet, phases: 3}')
        .replace(
          '1: [P1.L, K1.COM], 2: [P1.N, X1.N]',
          '1: [P1.L1, X1.L1], 2: [P1.L2, X1.L2], 4: [P1.L3, X1.L3]',
        )
        .replace(/ {2}- .*K1\.NO.*\n/, ''),
    );
  it.each<Row>([
    [25, holds],
    [30, fails],
  ])('column A, three phases in cord of 10 AWG behind %d A', (amps, expected) => {
    expect(three(amps)).toEqual(expected);
  });
});

describe('iec, cable that is fixed: IEC 60364-5-52:2009', () => {
  const fixed = (amps: number, more: Partial<Lead> = {}): Lead => ({
    practice: 'iec',
    cable: '2.5 mm2',
    more: ', rated: 70 °C',
    plug: `pattern: fixed, breaker: ${amps} A`,
    ...more,
  });
  // Table B.52.14 (verified): 0.87 at 40 °C of 18.5 A in an insulated wall and of 27 A clipped (Table B.52.2, one copy).
  it.each<Row>([
    [16, holds],
    [16.2, unsure],
    [23.4, unsure],
    [23.5, fails],
  ])('2.5 mm2 of 70 °C in air of 40 °C behind %d A', (amps, expected) => {
    expect(wire(fixed(amps, { ambient: 40 }))).toEqual(expected);
  });
  // 0.91 for insulation of 90 °C.
  it.each<Row>([
    [16.8, holds],
    [16.9, unsure],
    [24.5, unsure],
    [24.6, fails],
  ])('2.5 mm2 of 90 °C in air of 40 °C behind %d A', (amps, expected) => {
    expect(wire(fixed(amps, { ambient: 40, more: ', rated: 90 °C' }))).toEqual(expected);
  });
  // BS 7671 Table 4F3A, one copy: cords of 90 °C rubber carry 16 A at 1.5 mm² with no factor up to 50 °C.
  it.each<Row>([
    [45, holds],
    [50, holds],
  ])('1.5 mm2 cord of 90 °C in air of %d °C behind 16 A', (ambient, expected) => {
    const cord = fixed(16, { cable: '1.5 mm2', more: ', rated: 90 °C', ambient });
    expect(severities(lead(cord))).toEqual(expected);
  });
  const three = (l: Lead) =>
    lead({ ...l, cores: 4 })
      .replace('volts: 230 V AC', 'volts: 400 V AC, phases: 3')
      .replace('{kind: outlet}', '{kind: outlet, phases: 3}')
      .replace(
        '1: [P1.L, K1.COM], 2: [P1.N, X1.N]',
        '1: [P1.L1, X1.L1], 2: [P1.L2, X1.L2], 4: [P1.L3, X1.L3]',
      )
      .replace(/ {2}- .*K1\.NO.*\n/, '');
  // Table B.52.4: 17.5 A in an insulated wall (one copy), 24 A clipped (verified).
  it.each<Row>([
    [17.5, holds],
    [17.6, unsure],
    [24, unsure],
    [24.1, fails],
  ])('three loaded cores of 2.5 mm2 behind %d A', (amps, expected) => {
    expect(severities(three(fixed(amps)).replaceAll('flexible: true', 'flexible: false'))).toEqual(expected);
  });
  // BS 7671:2018 Table 4F3A, one copy: 20 A.
  it.each<Row>([
    [20, holds],
    [20.1, fails],
  ])('three loaded cores of a cord of 2.5 mm2 behind %d A', (amps, expected) => {
    expect(severities(three(fixed(amps, { more: ', rated: 60 °C', plug: `breaker: ${amps} A` })))).toEqual(
      expected,
    );
  });
});

describe('iec, what a field can say is asked for before how it is laid, and excused before it is asked for', () => {
  // Table B.52.2 (one copy): 2.5 mm2 clipped bears 27 A, at 40 °C 0.87 times that, 23.49 A; a plan that says no air may have it.
  const unsaid = (amps: number, load?: string) =>
    wire({
      practice: 'iec',
      cable: '2.5 mm2',
      more: ', rated: 70 °C',
      plug: `pattern: fixed, breaker: ${amps} A`,
      ambient: undefined,
      ...(load !== undefined && { load }),
    });
  it.each<Row>([
    [16, holds],
    [16.2, unsure],
    [23.4, unsure],
    [23.5, ['doubt']],
    [27, ['doubt']],
    [27.1, fails],
  ])('air that is not said, behind %d A', (amps, expected) => {
    expect(unsaid(amps)).toEqual(expected);
  });
  // IEC 60364-4-43 clause 433.2.2, from memory, for a motor with its own overload device.
  it.each<Row>([
    [23.4, unsure],
    [23.5, unsure],
    [27.1, unsure],
  ])('the same before a motor with a protector, behind %d A', (amps, expected) => {
    expect(unsaid(amps, 'kind: motor, amps: 10 A, protector: manual')).toEqual(expected);
  });
});

describe('iec, a control tap: IEC 60204-1:2016 clause 7.2.8, from memory, so that it excuses to a caution', () => {
  const tap = (gauge: string, metres: number, box: boolean, amps: number) =>
    ahead({
      practice: 'iec',
      cable: '6 mm2',
      more: ', rated: 60 °C',
      plug: `breaker: ${amps} A`,
      parts: [
        'Q1: {kind: relay, coil: {rated: 230 V AC, power: 5 VA}, contact: {ratings: [10 A 250 V AC]}}',
        ...(box ? ['B: {kind: box, holds: [K1, Q1], divider: true}'] : []),
      ],
      runs: [
        `{cable: {gauge: ${gauge}, cores: 1, insulation: 750 V, flexible: true, rated: 70 °C}, length: ${metres} m, cores: {1: [K1.NO, Q1.A1]}}`,
        '{link: [Q1.A2, P1.N]}',
      ],
    });
  // VDE 0298-4 Table 11, one copy: 15 A for 0.75 mm2 in the panel.
  it.each<[number, number, boolean, readonly string[]]>([
    [15, 0.3, true, holds],
    [15.1, 0.3, true, unsure],
    [16, 3, true, unsure],
    [16, 3.1, true, fails],
    [16, 0.3, false, fails],
  ])('0.75 mm2 behind %d A, %d m, within the box: %s', (amps, metres, box, expected) => {
    expect(tap('0.75 mm2', metres, box, amps)).toEqual(expected);
  });
});

describe('nec, a fuse protects what lies behind it: 240.5(A) with Table 400.5(A)(1), 2008 to 2023, one copy', () => {
  const fused = (rating: number, trunk = '12 AWG'): Lead => ({
    cable: trunk,
    more: ', rated: 60 °C',
    plug: 'breaker: 20 A',
    parts: [`F1: {kind: fuse, rating: ${rating} A}`, 'X2: {kind: outlet}', 'cold: {kind: joint}'],
    runs: [
      '{link: [K1.NO, F1.1]}',
      '{cable: {gauge: 18 AWG, cores: 3, insulation: 600 V, flexible: true, rated: 60 °C}, length: 2 m, cores: {1: [F1.2, X2.L], 2: [cold, X2.N], 3: [P1.PE, X2.PE]}}',
      '{link: [cold, P1.N]}',
    ],
  });
  it('18 AWG cord behind 10 and 11 A, and the trunk ahead of it by its breaker alone', () => {
    expect(ahead(fused(10))).toEqual(holds);
    expect(ahead(fused(11))).toEqual(fails);
    expect(ahead(fused(10, '14 AWG'))).toEqual(fails);
  });
});

describe('nec, a socket behind a breaker: Table 210.21(B)(3), 2008 to 2023, verified for 20 A', () => {
  const plug = (breaker: number) =>
    of(
      lead({
        cable: '10 AWG',
        plug: `pattern: NEMA 5-15, breaker: ${breaker} A`,
        load: 'kind: load, type: heater, amps: 5 A',
      }),
      'plug-mismatch',
    );
  // A rating between 15 and 20 A is no worse than 20 A, on which sockets of 15 A may stand; of 30 A they may not.
  it.each<Row>([
    [16, holds],
    [20, holds],
    [25, ['danger plug-mismatch']],
    [30, ['danger plug-mismatch']],
  ])('sockets of 15 A behind %d A', (breaker, expected) => {
    expect(plug(breaker)).toEqual(expected);
  });
});

describe('a battery without a fuse, nec', () => {
  // NEC Table 402.5 (2008 to 2023), from memory: 18 AWG 6 A, which is 12 V over 2 ohm.
  const bare = (ohms: number) => `format: 1
practice: nec
parts:
  BAT: {kind: battery, output: 12 V DC, highest: 12 V, internal-resistance: ${ohms} ohm}
  g: {kind: gate, contact: {ratings: [5 A 30 V DC]}}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 120 ohm, suppressor: diode}, contact: {ratings: [5 A 30 V DC]}}
runs:
  - {cable: {gauge: 18 AWG, cores: 2, insulation: 300 V}, length: 3 m, cores: {red: [BAT.+, g.COM], black: [BAT.-, K1.A2]}}
  - {link: [g.NO, K1.A1]}
`;
  it.each<[number, string]>([
    [2, 'caution supply-not-limited'],
    [1.99, 'warning supply-not-limited'],
  ])('of %d ohm on 18 AWG', (ohms, expected) => {
    expect(of(bare(ohms), 'supply-not-limited')).toEqual([expected]);
  });
});

describe('what a start does to breaker and fuse', () => {
  const start = (practice: 'nec' | 'iec', plug: string, amps: number) =>
    of(
      lead({
        practice,
        cable: practice === 'iec' ? '10 mm2' : '8 AWG',
        plug,
        load: `kind: motor, protector: manual, amps: 6 A, locked-rotor: ${amps} A`,
      }),
      'trips-at-start',
      'breaker-may-trip',
    );
  const may = ['caution breaker-may-trip'];
  const opens = ['fault trips-at-start'];
  it.each<['nec' | 'iec', string, ...Row]>([
    // IEC 60898-1:2015 Table 7, verified
    ['iec', 'breaker: 16 A B', 79, may],
    ['iec', 'breaker: 16 A C', 81, may],
    ['iec', 'breaker: 16 A D', 161, may],
    ['iec', 'breaker: 16 A D', 319, may],
    ['nec', 'breaker: 20 A C', 100, holds],
    ['nec', 'breaker: 20 A C', 199, may],
    ['nec', 'breaker: 20 A C', 200, opens],
    // no standard gives a North American breaker a band; from 5 times on it may, from memory
    ['nec', 'breaker: 20 A', 100, holds],
    ['nec', 'breaker: 20 A', 101, may],
    ['nec', 'breaker: 20 A', 2000, may],
    // BS 1362, time bands, one copy: 13 A holds 30 A for a second and opens at 100 A within 0.2 s
    ['iec', 'pattern: BS 1363, breaker: 32 A D', 30, holds],
    ['iec', 'pattern: BS 1363, breaker: 32 A D', 31, may],
    ['iec', 'pattern: BS 1363, breaker: 32 A D', 99, may],
    ['iec', 'pattern: BS 1363, breaker: 32 A D', 100, opens],
  ])('%s, %s at %d A', (practice, plug, amps, expected) => {
    expect(start(practice, plug, amps)).toEqual(expected);
  });

  const fused = (rating: number) =>
    of(
      lead({
        cable: '8 AWG',
        more: ', rated: 60 °C',
        plug: 'breaker: 40 A',
        load: 'kind: motor, protector: manual, amps: 8 A, locked-rotor: 48 A',
        parts: [`F1: {kind: fuse, rating: ${rating} A, class: time-delay}`],
        line: ['P1.L', 'F1.1'],
        runs: ['{link: [F1.2, M.L]}'],
      }),
      'fuse-too-small',
    );
  // A fuse carries its rating (UL 248-1, common practice); below 175 % (NEC 430.52, 2008 to 2023, verified) it may open at the start.
  it.each<[number, readonly string[]]>([
    [7.9, ['fault fuse-too-small']],
    [8, ['caution fuse-too-small']],
    [13.9, ['caution fuse-too-small']],
    [14, holds],
  ])('nec, a time-delay fuse of %d A before a motor of 8 A', (rating, expected) => {
    expect(fused(rating)).toEqual(expected);
  });
});
