/** Three-phase machines: order of the phases, phases that do not arrive, and who is named for it. */
import { describe, expect, it } from 'vitest';
import { shop } from '../mains-plans.ts';
import { findings } from '../threshold-plans.ts';

const PLUG = 'pattern: fixed, phases: 3, breaker: 16 A, volts: 400 V AC';
const MOTOR = 'phases: 3, power: 3 kW, volts: 400 V AC, amps: 6.3 A, protector: manual';
const RUNS = [
  ...[1, 2, 3].map((n) => `{link: [P1.L${n}, K1.${2 * n - 1}]}`),
  '{link: [P1.PE, M.PE]}',
  ...[1, 2, 3].map((n) => `{link: [K1.${2 * n}, M.L${n}]}`),
];
const plain = shop({ practice: 'iec', plug: PLUG, motor: MOTOR, runs: RUNS });

/** The three cores to the motor land on K1.2, K1.4 and K1.6 in this order. */
const landing = (...at: readonly string[]) =>
  at.reduce(
    (text, from, i) =>
      text.replace(/K1\.[246], (M\.L)(\d)/g, (all, to, n) =>
        Number(n) === i + 1 ? `K1.${from}, ${to}${n}` : all,
      ),
    plain,
  );
/** The motor is plugged into a socket in place of being wired. */
const plugged = (text: string) =>
  text
    .replace(
      `M: {kind: motor, ${MOTOR}}`,
      `X: {kind: outlet, phases: 3}\n  M: {kind: motor, ${MOTOR}, plugged-into: X}`,
    )
    .replaceAll(/M\.(L\d|PE)/g, 'X.$1');
const of = (text: string, id: string) => findings(text).filter((f) => f.id === id);

describe('phase-order', () => {
  // Common practice: exchanging two phases turns a motor backwards, passing all three on by one place does not.
  it.each([
    [['2', '4', '6'], false],
    [['4', '6', '2'], false],
    [['6', '2', '4'], false],
    [['4', '2', '6'], true],
    [['2', '6', '4'], true],
    [['6', '4', '2'], true],
  ] as const)('cores on %j', (at, backwards) => {
    expect(of(landing(...at), 'phase-order').map((f) => f.parts)).toEqual(backwards ? [['M']] : []);
    expect(of(plugged(landing(...at)), 'phase-order').map((f) => f.parts)).toEqual(backwards ? [['X']] : []);
  });
  it('says which phase arrives where', () => {
    const [found] = of(landing('4', '2', '6'), 'phase-order');
    expect(found?.why).toBe('L1 comes from L2, L2 comes from L1, L3 comes from L3.');
    expect(found?.terminals).toEqual(['M.L1', 'M.L2', 'M.L3']);
  });
  it('nothing is said of an order that is not complete, or of one phase', () => {
    expect(of(landing('2', '4', '2'), 'phase-order')).toEqual([]);
    const two = landing('4', '2', '6').replace('  - {link: [K1.6, M.L3]}\n', '');
    expect(of(two, 'phase-order')).toEqual([]);
    expect(of(shop({}), 'phase-order')).toEqual([]);
  });
  it('other circuits beside it take no part', () => {
    const beside = (text: string) =>
      text
        .replace(
          'runs:',
          '  P2: {kind: plug, volts: 230 V AC}\n  V: {kind: load, volts: 230 V AC, amps: 1 A}\nruns:',
        )
        .replace('intent:', '  - {link: [P2.L, V.L]}\n  - {link: [P2.N, V.N]}\nintent:');
    expect(of(beside(plain), 'phase-order')).toEqual([]);
    expect(of(beside(landing('4', '2', '6')), 'phase-order').map((f) => f.parts)).toEqual([['M']]);
  });
});

describe('phase-missing', () => {
  const twice = landing('2', '4', '4');
  const none = plain.replace('  - {link: [K1.6, M.L3]}\n', '');
  it('two of three arrive: the machine is named once, or the socket it is plugged into', () => {
    for (const text of [none, twice]) {
      expect(of(text, 'phase-missing').map((f) => f.parts)).toEqual([['M']]);
      expect(of(plugged(text), 'phase-missing').map((f) => f.parts)).toEqual([['X']]);
    }
    expect(of(none, 'phase-missing')[0]?.message).toContain('with g open');
  });
  it('all three arrive, or one phase is all there is', () => {
    for (const text of [plain, plugged(plain), shop({})]) expect(of(text, 'phase-missing')).toEqual([]);
  });
});
