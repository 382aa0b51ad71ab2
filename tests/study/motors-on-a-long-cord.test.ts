/** What a running motor draws on a cord that takes some of its volts. */
import { describe, expect, it } from 'vitest';
import { figuresFor } from '../../src/study/corner-figures.ts';
import { runningState, solveMains } from '../../src/study/mains/mains-flows.ts';
import { Study } from '../../src/study/study.ts';
import { planOf } from '../helpers/plan-of.ts';

const CONTACT = 'contact: {ratings: [5 A 250 V AC, 3 A 30 V DC]}';
const plan = (metres: number, load: string) =>
  planOf(`
practice: iec
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated, class-2: true}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm}, contact: {ratings: [30 A 400 V AC], ac-3: 16 A, resistance: 0 ohm}}
  g: {kind: gate, ${CONTACT}}
  P1: {kind: plug, pattern: fixed, breaker: 16 A, volts: 230 V AC}
  M: {${load}, volts: 230 V AC, amps: 10 A}
runs:
  - {link: [PS1.+, g.COM]}
  - {link: [g.NO, K1.A1]}
  - {link: [K1.A2, PS1.-]}
  - {cable: {gauge: 1 mm2, cores: 3, insulation: 500 V}, length: ${metres} m, cores: {brown: [P1.L, K1.COM], blue: [P1.N, M.N], green-yellow: [P1.PE, M.PE]}}
  - {link: [K1.NO, M.L]}
`);

/** A drawn, and the share of the mains left at the load. */
function drawn(metres: number, load = 'kind: motor', rated?: true): [number, number] {
  const study = Study.of(plan(metres, load));
  const own = study.electrics!;
  const source = own.circuit.sources.find((s) => s.mains)!;
  const standing = own.situations.at(runningState(own, 'M')!)!;
  const amps = new Map([['M', 10]]);
  const flows = solveMains(
    own,
    source,
    standing.situation,
    amps,
    figuresFor(study.plan, 'nominal'),
    rated ? { rated } : {},
  );
  const i = flows.sourceAmps(source);
  const c = own.circuit.consumers.find((x) => x.part === 'M')!;
  const [a, b] = [...c.nets.values()];
  return [Math.hypot(i.re, i.im), Math.abs(flows.volts(a!, b!)!.re) / 230];
}

describe('a motor that turns', () => {
  // NEMA MG 1 and handbooks of motors: at 90 % of the volts the full-load current is 11 % higher. 1 mm2 copper has
  // 18.1 ohm/km (IEC 60228, class 2): 57.2 m both ways take 2.07 ohm, with 11.1 A 23 V of 230 V.
  it('draws 11 % more at 90 % of its volts', () => {
    const [amps, share] = drawn(57.2);
    expect(share).toBeCloseTo(0.9, 2);
    expect(amps / 10).toBeCloseTo(1.11, 2);
  });
  it('draws more the longer the cord is, until it stalls', () => {
    const all = [5, 20, 40, 60].map((m) => drawn(m)[0]);
    expect(all).toEqual([...all].sort((x, y) => x - y));
    expect(drawn(2000)[0]).toBeLessThanOrEqual(10 / 0.7);
  });
  it('is judged by the current of its plate against the tables of ampacity', () => {
    expect(drawn(57.2, 'kind: motor', true)[0]).toBeCloseTo(10, 3);
  });
  it('a heater draws less', () => {
    // 230 V over 23 ohm of its own and 2.07 ohm of wire
    expect(drawn(57.2, 'kind: load, type: heater')[0]).toBeCloseTo(230 / (23 + 2.07), 1);
  });
});
