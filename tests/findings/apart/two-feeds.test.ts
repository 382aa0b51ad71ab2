/** Conductors of one load from two plugs. Clauses: NEC 200.4(A), 300.3(B); BS 7671 314.4 (from memory). */
import { describe, expect, it } from 'vitest';
import { twoFeeds } from '../../../src/findings/apart/two-feeds.ts';
import { judge } from '../../../src/findings/judge.ts';
import { plugMismatch } from '../../../src/findings/mains/plug-mismatch.ts';
import { Study } from '../../../src/study/study.ts';
import { planOf } from '../../helpers/plan-of.ts';

interface Feeds {
  readonly parts?: readonly string[];
  /** what X1 hangs on: line and neutral */
  readonly x1?: readonly [string, string];
  readonly more?: readonly string[];
  readonly outlet?: string;
  readonly poles?: string;
}

const PRACTICES = {
  nec: { volts: 120, pattern: 'NEMA 5-15' },
  iec: { volts: 230, pattern: 'IEC 60309 16 A blue 2P+E' },
} as const;
type Practice = keyof typeof PRACTICES;

/** Two plugs with an outlet each; a relay switches the line of the first. */
function plan(practice: Practice, f: Feeds): string {
  const { volts, pattern } = PRACTICES[practice];
  const [l, n] = f.x1 ?? ['K1.NO', 'P1.N'];
  const wire = 'cable: {gauge: 2.5 mm2, cores: 3, insulation: 600 V, flexible: true}, length: 1 m';
  return `format: 1
practice: ${practice}
parts:
  PS1: {kind: supply, output: 24 V DC, limit: 1 A, regulation: regulated, class-2: true}
  g: {kind: gate, pressed-when: open, contact: {ratings: [5 A 250 V AC, 3 A 30 V DC], least: 10 mA 5 V DC}}
  K1: {kind: relay, coil: {rated: 24 V DC, resistance: 300 ohm, suppressor: diode}, contact: {ratings: [30 A 250 V AC]}${f.poles ?? ''}}
  P1: {kind: plug, pattern: ${pattern}, breaker: 15 A, volts: ${volts} V AC}
  P2: {kind: plug, pattern: ${pattern}, breaker: 15 A, volts: ${volts} V AC}
  X1: {kind: outlet, pattern: ${f.outlet ?? pattern}}
  X2: {kind: outlet, pattern: ${pattern}}
  one: {kind: load, type: heater, power: 0.3 kW, volts: ${volts} V AC, plugged-into: X1}
  two: {kind: load, type: heater, power: 0.3 kW, volts: ${volts} V AC, plugged-into: X2}
${(f.parts ?? []).map((p) => `  ${p}\n`).join('')}runs:
  - {link: [PS1.+, g.COM]}
  - {link: [g.NO, K1.A1]}
  - {link: [K1.A2, PS1.-]}
  - {${wire}, cores: {1: [P1.L, K1.COM], 2: [X1.L, ${l}], 3: [X1.N, ${n}]}}
  - {${wire}, cores: {1: [P2.L, X2.L], 2: [P2.N, X2.N], 3: [P2.PE, X2.PE]}}
  - {${wire}, cores: {1: [P1.PE, X1.PE]}}
${(f.more ?? []).map((r) => `  - ${r}\n`).join('')}intent:
  one: {runs-on: [g]}
`;
}

const told = (practice: Practice, f: Feeds) => twoFeeds.find(Study.of(planOf(plan(practice, f))));

describe.each(['nec', 'iec'] as const)('by %s', (practice) => {
  it('each outlet on a plug of its own is right, earths joined or not', () => {
    expect(told(practice, {})).toEqual([]);
    expect(told(practice, { more: ['{link: [P1.PE, X2.PE]}'] })).toEqual([]);
  });

  it('the neutral from another plug than the line is a danger, and no dead loop', () => {
    const wrong = plan(practice, { x1: ['K1.NO', 'P2.N'] });
    const { findings } = judge(Study.of(planOf(wrong)));
    const [first] = findings;
    expect(first).toMatchObject({ id: 'two-feeds', severity: 'danger' });
    expect(first!.parts).toEqual(['X1', 'P1', 'P2']);
    expect(findings.map((f) => f.id)).not.toContain('loop-dead');
  });

  it('neutrals or lines that are joined are as bad', () => {
    const neutrals = told(practice, { more: ['{link: [X1.N, X2.N]}'] });
    expect(neutrals.map((f) => f.terminals)).toEqual([['P1.N', 'P2.N']]);
    const lines = told(practice, { more: ['{link: [X1.L, X2.L]}'] });
    expect(lines.map((f) => f.terminals)).toEqual([['P1.L', 'P2.L']]);
    expect(lines[0]!.why).toContain('g open');
  });

  it('a coil between the two is found, and two coils in line as well', () => {
    const coil =
      'Q1: {kind: relay, coil: {rated: 120 V AC, power: 5 VA}, contact: {ratings: [10 A 250 V AC]}}';
    const q2 = coil.replace('Q1', 'Q2');
    expect(
      told(practice, { parts: [coil], more: ['{link: [X1.L, Q1.A1]}', '{link: [Q1.A2, P2.N]}'] }).map(
        (f) => f.parts,
      ),
    ).toEqual([['Q1', 'P1', 'P2']]);
    expect(
      told(practice, {
        parts: [coil, q2],
        more: ['{link: [X1.L, Q1.A1]}', '{link: [Q1.A2, Q2.A1]}', '{link: [Q2.A2, P2.N]}'],
      }).map((f) => f.parts),
    ).toEqual([['P1', 'P2']]);
  });

  it('a changeover of both conductors is one feed at a time; of the line alone it is not', () => {
    const poles =
      ', poles: [{form: changeover, marks: [C1, R1, M1]}, {form: changeover, marks: [C2, R2, M2]}]';
    const ends = (both: boolean): Feeds => ({
      poles,
      x1: ['K1.C1', both ? 'K1.C2' : 'P1.N'],
      more: ['{link: [P2.L, K1.R1]}', ...(both ? ['{link: [P1.N, K1.M2]}', '{link: [P2.N, K1.R2]}'] : [])],
    });
    const text = (both: boolean) => plan(practice, ends(both)).replace('[P1.L, K1.COM]', '[P1.L, K1.M1]');
    const of = (both: boolean) => twoFeeds.find(Study.of(planOf(text(both))));
    expect(of(true)).toEqual([]);
    expect(of(false).map((f) => f.id)).toEqual(['two-feeds']);
  });
});

it('with two plugs an outlet is held against the plug it hangs on', () => {
  const of = (outlet: string) => plugMismatch.find(Study.of(planOf(plan('nec', { outlet }))));
  expect(of('NEMA 5-15')).toEqual([]);
  // NEMA WD 6: 1-15 is 15 A 125 V, BS 1363 13 A 250 V
  expect(of('BS 1363').map((f) => [f.severity, f.parts])).toEqual([['danger', ['X1']]]);
});
