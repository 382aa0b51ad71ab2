/** Conductors of the mains against the breaker or fuse ahead: each rule just held and just broken. */
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { WHOLE } from '../../helpers/share.ts';
import { findings } from '../threshold-plans.ts';
import { ahead, type Lead, lead } from './lead-plans.ts';

const breaker = (amps: number) => ({ plug: `breaker: ${amps} A` });
const fixed = (amps: number, more = '') => ({ plug: `pattern: fixed, breaker: ${amps} A${more}` });
const holds: readonly string[] = [];
const fails = ['warning'];

const text = (l: Lead) => lead(l).replaceAll('flexible: true', 'flexible: false');
const severities = (plan: string) => [
  ...new Set(findings(plan).flatMap((f) => (f.id === 'conductor-unprotected' ? [f.severity] : []))),
];

describe('nec, cord from plug to outlet: 240.5(A) with Table 400.5(A)(1) column B, 2008 to 2023', () => {
  // 14 and 12 AWG verified, the others seen in one copy; insulation of 60 °C said, air of 30 °C.
  it.each<[string, number, readonly string[]]>([
    ['18 AWG', 10, holds],
    ['18 AWG', 11, fails],
    ['16 AWG', 13, holds],
    ['16 AWG', 15, fails],
    ['14 AWG', 18, holds],
    ['14 AWG', 20, fails],
    ['12 AWG', 25, holds],
    ['12 AWG', 30, fails],
    ['10 AWG', 30, holds],
    ['10 AWG', 35, fails],
    ['8 AWG', 40, holds],
    ['8 AWG', 45, fails],
    ['2 AWG', 95, holds],
    ['2 AWG', 100, fails],
    ['20 AWG', 1, fails],
  ])('%s behind %d A', (cable, amps, expected) => {
    expect(ahead({ cable, more: ', rated: 60 °C', ...breaker(amps) })).toEqual(expected);
  });

  // Factors of Table 310.15(B)(1), 60 °C column, by 400.5(A): 14 AWG 18 A, times 0.91, 0.82, 0.71.
  it.each<[number, number, readonly string[]]>([
    [35, 16, holds],
    [35, 17, fails],
    [40, 14.7, holds],
    [40, 14.8, fails],
    [45, 12.7, holds],
    [45, 12.8, fails],
    [61, 1, fails],
  ])('in air of %d °C behind %d A', (ambient, amps, expected) => {
    expect(ahead({ cable: '14 AWG', more: ', rated: 60 °C', ambient, ...breaker(amps) })).toEqual(expected);
  });

  it('what the plan leaves out and decides is a doubt, and settled by the field it names', () => {
    const warm: Lead = { cable: '14 AWG', ambient: 40, ...breaker(15) };
    expect(ahead(warm)).toEqual(['doubt']);
    expect(ahead({ ...warm, more: ', rated: 90 °C' })).toEqual(holds);
    expect(ahead({ ...warm, more: ', rated: 60 °C' })).toEqual(fails);
    const unsaid: Lead = { cable: '14 AWG', more: ', rated: 60 °C', ambient: undefined, ...breaker(15) };
    expect(ahead(unsaid)).toEqual(['doubt']);
    expect(ahead({ ...unsaid, ambient: 30 })).toEqual(holds);
    expect(ahead({ ...unsaid, ambient: 40 })).toEqual(fails);
    const [told] = findings(lead(unsaid)).filter((f) => f.id === 'conductor-unprotected');
    expect(told!.fix).toBe('State ambient: of the plan.');
  });

  it('240.5(B)(4): 16 AWG straight from plug to outlet on 20 A, and not through a box', () => {
    const straight = (cable: string, amps: number) =>
      severities(`format: 1
practice: nec
ambient: 30 °C
parts:
  P1: {kind: plug, volts: 120 V AC, breaker: ${amps} A}
  X1: {kind: outlet}
runs:
  - {cable: {gauge: ${cable}, cores: 3, insulation: 300 V, flexible: true}, length: 5 m, cores: {1: [P1.L, X1.L], 2: [P1.N, X1.N], 3: [P1.PE, X1.PE]}}
`);
    expect(straight('16 AWG', 20)).toEqual(holds);
    expect(straight('16 AWG', 25)).toEqual(fails);
    expect(straight('18 AWG', 20)).toEqual(fails);
    expect(ahead({ cable: '16 AWG', ...breaker(20) })).toEqual(fails);
  });

  it('three phases load three cores: column A', () => {
    const three = (amps: number) =>
      severities(
        lead({ cable: '12 AWG', more: ', rated: 60 °C', cores: 4, ...breaker(amps) })
          .replace('volts: 120 V AC', 'volts: 208 V AC, phases: 3')
          .replace('{kind: outlet}', '{kind: outlet, phases: 3}')
          .replace(
            '1: [P1.L, K1.COM], 2: [P1.N, X1.N]',
            '1: [P1.L1, X1.L1], 2: [P1.L2, X1.L2], 4: [P1.L3, X1.L3]',
          )
          .replace(/ {2}- .*K1\.NO.*\n/, ''),
      );
    expect(three(20)).not.toContain('warning');
    expect(three(25)).toEqual(fails);
  });
});

describe('nec, building wire: 240.4(D) and (B) with Table 310.16, 60 °C column (2011 and later)', () => {
  it.each<[string, number, readonly string[]]>([
    // 240.4(D), verified from 14 AWG on, one copy for 18 and 16 AWG
    ['18 AWG', 7, holds],
    ['18 AWG', 8, fails],
    ['16 AWG', 10, holds],
    ['16 AWG', 15, fails],
    ['14 AWG', 15, holds],
    ['14 AWG', 20, fails],
    ['12 AWG', 20, holds],
    ['12 AWG', 25, fails],
    ['10 AWG', 30, holds],
    ['10 AWG', 35, fails],
    // 240.4(B): the next standard size above 55 A is 60 A, and 40, 70, 85 and 95 A of their own
    ['8 AWG', 40, holds],
    ['8 AWG', 45, fails],
    ['6 AWG', 60, holds],
    ['6 AWG', 70, fails],
    ['4 AWG', 70, holds],
    ['3 AWG', 90, holds],
    ['2 AWG', 100, holds],
    ['2 AWG', 110, fails],
    ['20 AWG', 1, fails],
  ])('%s behind %d A', (cable, amps, expected) => {
    expect(
      severities(
        text({ cable, more: ', rated: 60 °C', ...fixed(amps), load: 'kind: load, type: heater, amps: 1 A' }),
      ),
    ).toEqual(expected);
  });

  it('110.14(C): 75 °C terminals and insulation take the 75 °C column, either alone does not', () => {
    const eight = (rated: number, terminal?: number) =>
      severities(
        text({
          cable: '8 AWG',
          more: `, rated: ${rated} °C`,
          ...fixed(50, terminal === undefined ? '' : `, terminal-rating: ${terminal} °C`),
        }),
      );
    expect(eight(75, 75)).toEqual(holds);
    expect(eight(75)).toEqual(fails);
    expect(eight(60, 75)).toEqual(fails);
  });

  it('an outlet with terminals for less bounds its own conductors', () => {
    const end = (outlet: string) =>
      severities(
        text({ cable: '8 AWG', more: ', rated: 90 °C', ...fixed(50, ', terminal-rating: 75 °C'), outlet }),
      );
    expect(end('')).toEqual(holds);
    expect(end(', terminal-rating: 60 °C')).toEqual(fails);
  });

  it('240.4(B)(1): two receptacles on the circuit, and nothing is rounded up', () => {
    const rounded: Lead = { cable: '6 AWG', more: ', rated: 60 °C', ...fixed(60) };
    expect(severities(text(rounded))).toEqual(holds);
    const second: Lead = {
      ...rounded,
      parts: ['X2: {kind: outlet}'],
      runs: [
        '{cable: {gauge: 6 AWG, cores: 3, insulation: 600 V, rated: 60 °C}, length: 3 m, cores: {1: [K1.NO, X2.L], 2: [P1.N, X2.N], 3: [P1.PE, X2.PE]}}',
      ],
    };
    expect(severities(text(second))).toEqual(fails);
  });

  it('240.4(G): a motor alone with its overload protector may have what 430.52 allows', () => {
    const motor = (protector: string): Lead => ({
      cable: '12 AWG',
      more: ', rated: 60 °C',
      ...fixed(30),
      load: `kind: motor, amps: 12 A${protector}`,
    });
    expect(severities(text(motor(', protector: manual')))).toEqual(holds);
    expect(severities(text(motor(', protector: none')))).toEqual(fails);
    expect(severities(text(motor('')))).toEqual(['doubt']);
    // Cord is left to 240.5(A).
    expect(ahead(motor(', protector: manual'))).toEqual(fails);
  });

  it('430.52: the same motor behind a fuse may have 300 % of its current, 175 % if it is time-delay', () => {
    const behind = (fuse: string): Lead => ({
      cable: '14 AWG',
      more: ', rated: 60 °C',
      ...fixed(100),
      load: 'kind: motor, amps: 10 A, protector: manual',
      parts: [`F1: {kind: fuse, ${fuse}}`],
      line: ['F1.2', 'M.L'],
      runs: ['{link: [P1.L, F1.1]}'],
    });
    // The neutral lies behind no fuse of its own, so it returns what the fuse lets through.
    expect(severities(text(behind('rating: 30 A, class: fast')))).toEqual(holds);
    expect(severities(text(behind('rating: 35 A, class: fast')))).toEqual(fails);
    expect(severities(text(behind('rating: 20 A, class: time-delay')))).toEqual(holds);
    expect(severities(text(behind('rating: 25 A, class: time-delay')))).toEqual(fails);
  });

  it('a control tap beside the motor changes nothing for the conductors of the motor', () => {
    const motor: Lead = {
      cable: '12 AWG',
      more: ', rated: 60 °C',
      ...fixed(30),
      load: 'kind: motor, amps: 12 A, protector: manual',
      parts: ['Q1: {kind: relay, coil: {rated: 120 V AC, power: 5 VA}, contact: {ratings: [10 A 250 V AC]}}'],
      runs: ['{link: [K1.NO, Q1.A1]}', '{link: [Q1.A2, M.N]}'],
    };
    expect(severities(text(motor))).toEqual(holds);
  });

  // Seen in one copy.
  it('430.22(G): 16 AWG serves motors of up to 8 A', () => {
    const motor = (amps: number): Lead => ({
      cable: '16 AWG',
      more: ', rated: 90 °C',
      ...fixed(10),
      load: `kind: motor, amps: ${amps} A, protector: manual`,
    });
    expect(severities(text(motor(8)))).toEqual(holds);
    expect(severities(text(motor(8.1)))).toEqual(fails);
  });
});

describe('nec, control conductors: Table 430.72(B), one copy, and 725.43', () => {
  const tap = (
    gauge: string,
    amps: number,
    inBox: boolean,
    own?: number,
    load = 'kind: motor, amps: 3 A, protector: manual',
  ) =>
    severities(
      text({
        cable: '2 AWG',
        more: ', rated: 60 °C',
        ...fixed(amps),
        load,
        parts: [
          'Q1: {kind: relay, coil: {rated: 120 V AC, power: 5 VA}, contact: {ratings: [10 A 250 V AC]}}',
          ...(own === undefined ? [] : [`F1: {kind: fuse, rating: ${own} A}`]),
          ...(inBox
            ? [
                'B: {kind: box, holds: [K1, Q1, F1], divider: true}'.replace(
                  own === undefined ? ', F1' : '~',
                  '',
                ),
              ]
            : []),
        ],
        runs: [
          ...(own === undefined ? [] : ['{link: [K1.NO, F1.1]}']),
          `{cable: {gauge: ${gauge}, cores: 1, insulation: 600 V}, length: 20 cm, cores: {1: [${own === undefined ? 'K1.NO' : 'F1.2'}, Q1.A1]}}`,
          '{link: [Q1.A2, M.N]}',
        ],
      }),
    );
  it.each<[string, number, boolean, readonly string[]]>([
    // column B, within the enclosure
    ['18 AWG', 25, true, holds],
    ['18 AWG', 30, true, fails],
    ['16 AWG', 40, true, holds],
    ['16 AWG', 45, true, fails],
    ['14 AWG', 90, true, holds],
    ['14 AWG', 110, true, fails],
    // column C, leaving it
    ['18 AWG', 7, false, holds],
    ['18 AWG', 8, false, fails],
    ['16 AWG', 15, false, fails],
    ['14 AWG', 45, false, holds],
    ['14 AWG', 50, false, fails],
    ['12 AWG', 60, false, holds],
    ['12 AWG', 70, false, fails],
    ['20 AWG', 5, true, fails],
  ])('%s behind the %d A of a motor, in its box %s', (gauge, amps, inBox, expected) => {
    expect(tap(gauge, amps, inBox)).toEqual(expected);
  });
  it('column A: a fuse of their own, whatever stands ahead of that', () => {
    expect(tap('18 AWG', 60, false, 7)).toEqual(holds);
    expect(tap('18 AWG', 60, false, 8)).toEqual(fails);
  });
  it('where no motor is on the circuit they are Class 1, with the figures of column A', () => {
    expect(tap('18 AWG', 7, true, undefined, 'kind: load, type: heater, amps: 1 A')).toEqual(holds);
    expect(tap('18 AWG', 15, true, undefined, 'kind: load, type: heater, amps: 1 A')).toEqual(fails);
  });
});

describe('iec, cord: 60364-4-43 clause 433.1 with BS 7671 Table 4F3A, 18th edition', () => {
  const iec = (cable: string, plug: string, more = ', rated: 60 °C', ambient = 30): Lead => ({
    practice: 'iec',
    cable,
    plug,
    more,
    ambient,
  });
  it.each<[string, number, readonly string[]]>([
    // to 1.5 mm2 verified, above from one copy; from 6 mm2 on Table 4F1A, verified
    ['0.5 mm2', 3, holds],
    ['0.5 mm2', 25, fails],
    ['0.75 mm2', 6, holds],
    ['0.75 mm2', 10, fails],
    ['1 mm2', 10, holds],
    ['1 mm2', 32, fails],
    ['1.25 mm2', 13, holds],
    ['1.5 mm2', 16, holds],
    ['1.5 mm2', 20, fails],
    ['2.5 mm2', 25, holds],
    ['2.5 mm2', 32, fails],
    ['4 mm2', 32, holds],
    ['4 mm2', 40, fails],
    ['6 mm2', 39, holds],
    ['6 mm2', 40, fails],
    ['10 mm2', 50, holds],
    ['10 mm2', 63, fails],
    ['16 mm2', 63, holds],
    ['25 mm2', 80, holds],
    ['25 mm2', 100, fails],
    ['0.4 mm2', 1, fails],
  ])('%s behind a breaker of %d A', (cable, amps, expected) => {
    expect(ahead(iec(cable, `breaker: ${amps} A C`))).toEqual(expected);
  });
  // Table 4F3A, 60 °C cord: 0.91 at 35 °C, 0.82 at 40 °C; between two the warmer holds.
  it.each<[number, number, readonly string[]]>([
    [35, 14.5, holds],
    [35, 14.6, fails],
    [36, 13.1, holds],
    [36, 13.2, fails],
    [56, 1, fails],
  ])('1.5 mm2 in air of %d °C behind %d A', (ambient, amps, expected) => {
    expect(ahead(iec('1.5 mm2', `breaker: ${amps} A`, ', rated: 60 °C', ambient))).toEqual(expected);
  });
  it('VDE 0298-4 Table 11 for a lead of 70 °C: 1 mm2 15 A, 35 mm2 135 A', () => {
    expect(ahead(iec('1 mm2', 'breaker: 15 A', ', rated: 70 °C'))).toEqual(holds);
    expect(ahead(iec('1 mm2', 'breaker: 15.1 A', ', rated: 70 °C'))).toEqual(fails);
    expect(ahead(iec('1 mm2', 'breaker: 15 A', ''))).toEqual(['doubt']);
    expect(ahead(iec('35 mm2', 'breaker: 125 A', ', rated: 70 °C'))).toEqual(holds);
  });
  it('BS 7671 Table 4F2A for 90 °C needs terminals for 90 °C, one copy', () => {
    const four = (terminal: string) => ahead(iec('4 mm2', `breaker: 40 A${terminal}`, ', rated: 90 °C'));
    expect(four(', terminal-rating: 90 °C')).toEqual(holds);
    expect(four('')).toEqual(fails);
  });
  // IEC 60269: gG opens at 1.6 times from 16 A, at 1.9 below; 1.45 over these times the current of the conductor.
  it.each<[string, string, readonly string[]]>([
    ['1.5 mm2', '14 A gG', fails],
    ['1.5 mm2', '12.2 A gG', holds],
    ['1.5 mm2', '12.3 A gG', fails],
    ['2.5 mm2', '22.6 A gG', holds],
    ['2.5 mm2', '22.7 A gG', fails],
    ['1 mm2', '7.6 A gG', holds],
    ['1 mm2', '7.7 A gG', fails],
    // of unsaid class: gG at best, 2.1 times at worst
    ['2.5 mm2', '17.2 A', holds],
    ['2.5 mm2', '17.3 A', ['doubt']],
    ['2.5 mm2', '22.7 A', fails],
    // aM breaks no overload: what stands ahead of it decides
    ['2.5 mm2', '6 A aM', fails],
  ])('%s behind a plug fuse of %s', (cable, fuse, expected) => {
    expect(ahead(iec(cable, `breaker: 63 A, fuse: ${fuse}`))).toEqual(expected);
  });
  // BS 1363-1 Table 2: 13 A on 1.25 mm2.
  it('a BS 1362 fuse of the plug pattern protects at its rating', () => {
    expect(ahead(iec('1.25 mm2', 'pattern: BS 1363, breaker: 32 A'))).toEqual(holds);
    expect(ahead(iec('1 mm2', 'pattern: BS 1363, breaker: 32 A'))).toEqual(fails);
    expect(ahead(iec('1 mm2', 'pattern: BS 1363, breaker: 32 A, fuse: 10 A'))).toEqual(holds);
  });
});

describe('iec, wire that is fixed: IEC 60364-5-52 Tables B.52.2 and B.52.4', () => {
  const laid = (cable: string, amps: number) =>
    severities(
      text({ practice: 'iec', cable, more: ', rated: 70 °C', plug: `pattern: fixed, breaker: ${amps} A` }),
    );
  it('passes where the worst way of laying does, fails where the best does not, and says so between', () => {
    // 2.5 mm2 bears 18.5 A in an insulated wall and 27 A clipped to it (one copy).
    expect(laid('2.5 mm2', 18.5)).toEqual(holds);
    expect(laid('2.5 mm2', 18.6)).toEqual(['caution']);
    expect(laid('2.5 mm2', 27)).toEqual(['caution']);
    expect(laid('2.5 mm2', 27.1)).toEqual(fails);
  });
  it('a row from memory words a caution and never a pass', () => {
    // 25 mm2: 75 and 112 A from memory, 16 mm2 57 and 85 A from one copy.
    expect(laid('25 mm2', 57)).toEqual(holds);
    expect(laid('25 mm2', 60)).toEqual(['caution']);
    expect(laid('25 mm2', 112)).toEqual(['caution']);
    expect(laid('25 mm2', 113)).toEqual(fails);
  });
});

describe('which device stands ahead', () => {
  const fused = (rating: string): Lead => ({
    practice: 'iec',
    cable: '2.5 mm2',
    more: ', rated: 60 °C',
    plug: 'breaker: 25 A',
    parts: [`F1: {kind: fuse, rating: ${rating}}`, 'X2: {kind: outlet}', 'cold: {kind: joint}'],
    runs: [
      '{link: [K1.NO, F1.1]}',
      '{cable: {gauge: 0.75 mm2, cores: 3, insulation: 750 V, flexible: true, rated: 60 °C}, length: 2 m, cores: {1: [F1.2, X2.L], 2: [cold, X2.N], 3: [P1.PE, X2.PE]}}',
      '{link: [cold, P1.N]}',
    ],
  });
  it('a fuse protects what lies behind it, its neutral too', () => {
    expect(ahead(fused('3 A, class: gG'))).toEqual(holds);
    expect(ahead(fused('6 A, class: gG'))).toEqual(fails);
    expect(ahead({ ...fused('3 A, class: gG'), cable: '1.5 mm2' })).toEqual(fails);
  });
  it('a neutral of its own cable has to bear what returns through it', () => {
    const apart = (gauge: string): Lead => ({
      practice: 'iec',
      cable: '2.5 mm2',
      more: ', rated: 60 °C',
      plug: 'breaker: 25 A',
      parts: ['cold: {kind: joint}', 'X2: {kind: outlet}'],
      runs: [
        '{link: [K1.NO, X2.L]}',
        '{link: [P1.PE, X2.PE]}',
        '{link: [cold, X2.N]}',
        `{cable: {gauge: ${gauge}, cores: 2, insulation: 750 V, flexible: true, rated: 60 °C}, length: 2 m, cores: {1: [P1.N, cold]}}`,
      ],
    });
    expect(ahead(apart('2.5 mm2'))).toEqual(holds);
    expect(ahead(apart('1 mm2'))).toEqual(fails);
  });
  it('the primary of a transformer, within the box and out of it', () => {
    const primary = (gauge: string, box: boolean): Lead => ({
      practice: 'iec',
      cable: '2.5 mm2',
      more: ', rated: 60 °C',
      plug: 'breaker: 16 A',
      parts: [
        'T1: {kind: supply, output: 24 V AC, limit: 20 VA, regulation: transformer, class-2: true}',
        ...(box ? ['B: {kind: box, holds: [K1, T1, X1], divider: true}'] : []),
      ],
      runs: [
        `{cable: {gauge: ${gauge}, cores: 1, insulation: 750 V, flexible: true, rated: 70 °C}, length: 30 cm, cores: {1: [K1.COM, T1.L]}}`,
        `{cable: {gauge: ${gauge}, cores: 1, insulation: 750 V, flexible: true, rated: 70 °C}, length: 30 cm, cores: {1: [X1.N, T1.N]}}`,
      ],
    });
    // VDE 0298-4 Table 11, single cores in air, one copy: 1 mm2 19 A, 0.75 mm2 15 A.
    expect(ahead(primary('1 mm2', true))).toEqual(holds);
    // IEC 60204-1 clause 7.2.8 excuses up to 3 m within an enclosure, from memory: a caution.
    expect(ahead(primary('0.75 mm2', true))).toEqual(['caution']);
    expect(ahead(primary('0.75 mm2', false))).toEqual(fails);
    expect(ahead(primary('0.5 mm2', true))).toEqual(fails);
  });
  it('a way round the fuse leaves only the breaker', () => {
    const round = fused('3 A, class: gG');
    expect(ahead({ ...round, runs: [...round.runs!, '{link: [F1.1, F1.2]}'] })).toEqual(fails);
  });
  it('a changeover contact does not lead from one throw to the other', () => {
    // The fuse feeds one throw, the breaker the other; the wire ahead of the fuse-fed throw stays behind the fuse.
    const plan = `format: 1
practice: iec
ambient: 30 °C
parts:
  P1: {kind: plug, volts: 230 V AC, breaker: 25 A}
  F1: {kind: fuse, rating: 3 A, class: gG}
  S1: {kind: switch, contact: {ratings: [30 A 250 V AC]}}
  X1: {kind: outlet}
runs:
  - {link: [P1.L, F1.1]}
  - {cable: {gauge: 0.75 mm2, cores: 1, insulation: 750 V, flexible: true, rated: 60 °C}, length: 2 m, cores: {1: [F1.2, S1.NC]}}
  - {cable: {gauge: 2.5 mm2, cores: 1, insulation: 750 V, flexible: true, rated: 60 °C}, length: 2 m, cores: {1: [P1.L, S1.NO]}}
  - {cable: {gauge: 2.5 mm2, cores: 3, insulation: 750 V, flexible: true, rated: 60 °C}, length: 2 m, cores: {1: [S1.COM, X1.L], 2: [P1.N, X1.N], 3: [P1.PE, X1.PE]}}
`;
    expect(severities(plan)).toEqual(holds);
    expect(severities(plan.replace('gauge: 2.5 mm2, cores: 3', 'gauge: 0.75 mm2, cores: 3'))).toEqual(fails);
  });
  it('says nothing where nothing is known to stand ahead; that is asked for elsewhere', () => {
    expect(ahead({ cable: '14 AWG', plug: 'pattern: NEMA 5-15' })).toEqual(holds);
  });
});

describe('no change for the worse turns a fail into a pass', () => {
  const rank = { notice: 0, caution: 1, doubt: 2, fault: 3, warning: 4, danger: 5 } as const;
  const grave = (l: Lead) => Math.max(0, ...ahead(l).map((s) => rank[s]));
  const gauges = {
    nec: ['20 AWG', '18 AWG', '16 AWG', '14 AWG', '12 AWG', '10 AWG', '8 AWG', '6 AWG', '4 AWG', '2 AWG'],
    iec: ['0.5', '0.75', '1', '1.25', '1.5', '2.5', '4', '6', '10', '16', '25', '35'].map((a) => `${a} mm2`),
  } as const;
  const amps = [3, 6, 10, 13, 15, 16, 20, 25, 30, 32, 40, 50, 63, 70, 80, 100];
  const airs = [20, 30, 31, 35, 40, 45, 50, 55, 60];
  const shop = fc.record({
    practice: fc.constantFrom('nec' as const, 'iec' as const),
    gauge: fc.nat({ max: 9 }),
    amps: fc.nat({ max: amps.length - 1 }),
    air: fc.nat({ max: airs.length - 1 }),
    rated: fc.constantFrom('', ', rated: 60 °C', ', rated: 70 °C', ', rated: 90 °C'),
    fuse: fc.constantFrom('', ', fuse: 13 A gG', ', fuse: 10 A'),
  });
  type Shop = typeof shop extends fc.Arbitrary<infer T> ? T : never;
  const planOf = (s: Shop): Lead => ({
    practice: s.practice,
    cable: gauges[s.practice][s.gauge]!,
    plug: `breaker: ${amps[s.amps]} A${s.fuse}`,
    ambient: airs[s.air]!,
    more: s.rated,
  });
  test.each<[string, (s: Shop) => Shop]>([
    ['thinner wire', (s) => ({ ...s, gauge: Math.max(0, s.gauge - 1) })],
    ['a larger breaker', (s) => ({ ...s, amps: Math.min(amps.length - 1, s.amps + 1) })],
    ['a hotter shop', (s) => ({ ...s, air: Math.min(airs.length - 1, s.air + 1) })],
    [
      'insulation for less',
      (s) => ({ ...s, rated: s.rated.includes('90') ? ', rated: 70 °C' : ', rated: 60 °C' }),
    ],
  ])('%s', (_, worse) => {
    fc.assert(
      fc.property(shop, (s) => {
        // A figure that was left out may be said to either end of what it may be.
        if (s.rated === '' && worse(s).rated !== '') return;
        expect(grave(planOf(worse(s)))).toBeGreaterThanOrEqual(grave(planOf(s)));
      }),
      { numRuns: WHOLE ? 60 : 6 },
    );
  });
});
