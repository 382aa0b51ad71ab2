import { describe, expect, it } from 'vitest';
import { runsAt } from '../../src/logic/verify.ts';
import { WHOLE } from '../helpers/share.ts';
import { Machine } from '../oracles/brute-machine.ts';
import { hardFindings, movedOf, reportOf, verifiedOf } from './product.ts';

const MANY = WHOLE ? 300 : 100;
const HEAD = `format: 1
stock:
  snap: {kind: gate, pressed-when: open, contact: {ratings: [5 A 250 V AC, 3 A 30 V DC]}}
  bell: {kind: cable, gauge: 16 AWG, cores: 2, insulation: 150 V}
  cord: {kind: cable, gauge: 12 AWG, cores: 3, insulation: 600 V}
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated, class-2: true}
  K1:
    kind: relay
    coil: {rated: 12 V DC, resistance: 155 ohm, most: 130 %, suppressor: none}
    contact: {ratings: [30 A 240 V AC], motor: [2 hp 120 V AC]}
  P1: {kind: plug, pattern: NEMA 5-20, breaker: 20 A, volts: 120 V AC}
  X1: {kind: outlet, pattern: NEMA 5-20}
  fan: {kind: motor, power: 1 hp, volts: 120 V AC, amps: 10 A, plugged-into: X1}
`;
const MAINS = `  - {cable: cord, length: 2 m, cores: {black: [P1.L, K1.COM], white: [P1.N, X1.N], green: [P1.PE, X1.PE]}}
  - {cable: cord, length: 1 m, cores: {black: [K1.NO, X1.L]}}
`;
type Layout = 'chain' | 'star';

/** Gates g0, g1, ... side by side; the white core of gate `wrong` lands on NC at that gate. */
function shop(count: number, layout: Layout, wrong?: number): string {
  const names = Array.from({ length: count }, (_, i) => `g${i}`);
  const tab = (i: number): string => `g${i}.${i === wrong ? 'NC' : 'NO'}`;
  const run = (red: string, white: string): string =>
    `  - {cable: bell, length: 10 cm, cores: {red: [${red}], white: [${white}]}}`;
  const gates =
    layout === 'star'
      ? names.map((g, i) => run(`plus, ${g}.COM`, `out, ${tab(i)}`))
      : names.map((g, i) =>
          run(
            i === 0 ? `plus, ${g}.COM` : `g${i - 1}.COM, ${g}.COM`,
            i === 0 ? `out, ${tab(i)}` : `${tab(i - 1)}, ${tab(i)}`,
          ),
        );
  return [
    `${HEAD}  plus: {kind: joint}\n  out: {kind: joint}`,
    ...names.map((g) => `  ${g}: {from: snap}`),
    'runs:',
    run('PS1.+, plus', 'PS1.-, K1.A2'),
    '  - {cable: bell, length: 3 m, cores: {white: [out, K1.A1]}}',
    ...gates,
    `${MAINS}intent:`,
    `  fan: {runs-on: [${names.join(', ')}]}`,
    '',
  ].join('\n');
}

describe.each<Layout>(['chain', 'star'])('%s', (layout) => {
  it('12 gates, every state as enumerated', () => {
    for (const wrong of [undefined, 0, 7]) {
      const text = shop(12, layout, wrong);
      const v = verifiedOf(text);
      const m = new Machine(text);
      const differ: number[] = [];
      for (let k = 0; k < 4096; k++) {
        const at = m.circuit.inputs.map((_, i) => (k >> i) & 1);
        const words = Object.fromEntries(m.circuit.inputs.map((x, i) => [x.name, x.words[at[i]!]!]));
        const theirs = m.on(
          'fan',
          at,
          m.settle(
            at,
            m.settle(
              at.map(() => 0),
              0,
            ).ends[0]!,
          ).ends[0]!,
        );
        if (runsAt(v, 'fan', movedOf(v, words)) !== theirs) differ.push(k);
      }
      expect(differ).toEqual([]);
    }
  });

  it(`${MANY} gates are proved`, { timeout: 60_000 }, () => {
    const start = performance.now();
    const report = reportOf(shop(MANY, layout));
    console.log(`${MANY} gates in a ${layout}: ${Math.round(performance.now() - start)} ms`);
    expect(report.logic).toMatchObject({
      holds: true,
      inputs: MANY,
      combinations: `2^${MANY}`,
      counterexample: null,
    });
    expect(hardFindings(report)).toEqual([]);
  });

  it(`${MANY} gates with one core on NC: that gate is named`, { timeout: 60_000 }, () => {
    const start = performance.now();
    const report = reportOf(shop(MANY, layout, 71));
    console.log(`${MANY} gates in a ${layout}, one wrong: ${Math.round(performance.now() - start)} ms`);
    expect(report.logic.holds).toBe(false);
    const found = report.findings.filter((f) => f.id === 'gate-on-wrong-tab');
    expect(found.map((f) => f.parts[0])).toEqual(['g71']);
  });
});
