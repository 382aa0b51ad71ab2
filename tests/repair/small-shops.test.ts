/** What is told for mistakes in small shops: one slip at several parts, a core to spare, mains beside the loop, words. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Edit } from '../../src/edit/edits.ts';
import { check } from '../../src/repair/check.ts';
import { mend } from '../../src/repair/mend.ts';
import { NumberedCircuit } from '../../src/repair/numbered-circuit.ts';
import { QuickLook } from '../../src/repair/quick-look.ts';
import { Ranking } from '../../src/repair/ranking.ts';
import { Rewirings } from '../../src/repair/rewire.ts';
import { Study } from '../../src/study/study.ts';
import { wired } from '../findings/wired-plans.ts';
import { example } from '../helpers/example-plans.ts';
import { planOf } from '../helpers/plan-of.ts';

const repairsOf = (text: string) => mend(Study.of(planOf(text))).repairs;
const kinds = (edits: readonly Edit[]) => edits.map((e) => e.do);

/** Each gate works a relay of its own; the contacts of all of them lie side by side before Q1. */
function zones({
  gate,
  coil = (n) => `K${n}.A2 PS1.-`,
  contact = (n) => `K${n}.NO Q1.A1`,
  numbers = [1, 2, 3],
}: {
  readonly gate: (n: number) => string;
  readonly coil?: (n: number) => string;
  readonly contact?: (n: number) => string;
  readonly numbers?: readonly number[];
}): string {
  const each = numbers.flatMap((n) => [
    `PS1.+ g${n}.COM`,
    gate(n),
    coil(n),
    `PS1.+ K${n}.COM`,
    contact(n),
    `PS1.+ X${n}.1`,
    `X${n}.2 PS1.-`,
  ]);
  return wired({
    parts: ['PS1', ...numbers.map((n) => `g${n}`), ...numbers.map((n) => `K${n}`)].join(' '),
    more: [
      ...numbers.map((n) => `X${n}: {kind: lamp, rated: 12 V DC 1 W}`),
      'Q1: {kind: relay, coil: {rated: 12 V DC, resistance: 120 ohm, suppressor: diode}, contact: {ratings: [5 A 30 V DC]}}',
    ],
    wires: [...each, 'Q1.A2 PS1.-'].join(', '),
    intent: [`Q1: {runs-on: [${numbers.map((n) => `g${n}`).join(', ')}]}`],
  });
}
const right = (n: number) => `g${n}.NO K${n}.A1`;

describe('one slip at several parts is told as one repair', () => {
  it('nothing is told of the shop as it is meant', () => {
    expect(mend(Study.of(planOf(zones({ gate: right })))).needed).toBe(false);
  });

  it('ends on the lamp beside instead of the coil go each to its own coil', () => {
    const [first] = repairsOf(zones({ gate: (n) => `g${n}.NO X${n}.1` }));
    expect(first?.edits.map((e) => (e.do === 'move' ? e.to : e.do))).toEqual(['K1.A1', 'K2.A1', 'K3.A1']);
    expect(first).toMatchObject({ ends: 3, metres: 0 });
  });

  it('the returns of four coils on the commons of their gates all go to the one supply', () => {
    const numbers = [1, 2, 3, 4];
    const [first] = repairsOf(zones({ gate: right, coil: (n) => `K${n}.A2 g${n}.COM`, numbers }));
    expect(first?.edits.map((e) => (e.do === 'move' ? e.to : e.do))).toEqual(numbers.map(() => 'PS1.-'));
  });

  it('ends changed over at each relay', () => {
    const wrong = zones({ gate: (n) => `g${n}.NO K${n}.NO`, contact: (n) => `K${n}.A1 Q1.A1` });
    const [first] = repairsOf(wrong);
    expect(kinds(first!.edits)).toEqual(['swap', 'swap', 'swap']);
    expect(first).toMatchObject({ ends: 6, metres: 0 });
  });

  it('cores on the wrong tab of each gate, or a wrong word for all of them', () => {
    // A repair that lets a broken core start the load is none while others do not; that a break is silent is less grave.
    const repairs = repairsOf(zones({ gate: (n) => `g${n}.NC K${n}.A1` }));
    const moved = repairs.map((r) => r.edits.map((e) => (e.do === 'move' ? e.to : e.do)));
    expect(moved).toEqual([
      ['say', 'say', 'say'],
      ['g1.NO', 'g2.NO', 'g3.NO'],
    ]);
  });

  it('one gate alone on the wrong tab is moved alone, and its lever not said to be mounted the other way', () => {
    const repairs = repairsOf(zones({ gate: (n) => (n === 2 ? 'g2.NC K2.A1' : right(n)) }));
    expect(repairs[0]?.edits.map((e) => (e.do === 'move' ? e.to : e.do))).toEqual(['g2.NO']);
    // Common practice, no source: one of several levers is seldom mounted unlike the rest.
    expect(repairs.flatMap((r) => kinds(r.edits))).not.toContain('say');
  });
});

describe('two supplies that are tied together', () => {
  it('are parted by no core led to the mains pins of one of them', () => {
    // Each change leaves another pole without its core, which is a caution that the others do without.
    const repairs = mend(Study.of(example('wrong/two-adapters-tied'))).repairs;
    const moved = repairs.flatMap((r) => r.edits.flatMap((e) => (e.do === 'move' ? [e.to] : [])));
    expect(moved.filter((to) => /\.[LN]$/.test(to))).toEqual([]);
  });
});

describe('two slips at once', () => {
  it('are undone by two changes', () => {
    const wrong = zones({
      gate: (n) => (n === 2 ? 'g2.NC K2.A1' : right(n)),
      contact: (n) => (n === 3 ? 'K3.NC Q1.A1' : `K${n}.NO Q1.A1`),
    });
    const [first] = repairsOf(wrong);
    expect(first?.edits.map((e) => (e.do === 'move' ? e.to : e.do)).sort()).toEqual(['K3.NO', 'g2.NO']);
  });
});

describe('a core that was forgotten', () => {
  const cable = (cores: string, of = 'gauge: 20 AWG, cores: 2, insulation: 300 V', metres = 3) =>
    `{cable: {${of}}, length: ${metres} m, cores: {${cores}}}`;

  it('lies in the one cable with a core to spare that goes there, and is as long', () => {
    const text = wired({
      parts: 'PS1 K1 g h',
      wires: 'K1.A2 PS1.-',
      more: ['B1: {kind: box, holds: [PS1, K1]}'],
      runs: [cable('red: [PS1.+, g.COM]'), cable('red: [g.COM, h.COM], white: [g.NO, h.NO]', undefined, 4)],
      intent: ['K1: {runs-on: [g, h]}'],
    });
    const [first] = repairsOf(text);
    expect(first?.edits).toMatchObject([{ do: 'add', like: 1, metres: 3 }]);
    expect(first).toMatchObject({ ends: 2, metres: null });
  });

  it('of the only terminals that lack one lies in the spare core, and is as long', () => {
    const text = wired({
      parts: 'PS1 K1 g',
      wires: 'K1.A2 PS1.-',
      more: ['B1: {kind: box, holds: [PS1, K1]}'],
      runs: [cable('red: [PS1.+, g.COM]')],
      intent: ['K1: {runs-on: [g]}'],
    });
    expect(repairsOf(text)[0]?.edits).toMatchObject([{ do: 'add', like: 1, metres: 3 }]);
  });

  it.each([
    ['between a contact and a joint', ['[P1.L, J1]', '[J1, K1.COM]', '[J2, M.L]'], ['K1.NO', 'J2']],
    ['between the plug and a contact', ['[K1.NO, J1]', '[J1, J2]', '[J2, M.L]'], ['P1.L', 'K1.COM']],
  ])('of the mains %s is one more like the wires of the mains', (_, lines, ends) => {
    const wire = 'gauge: 14 AWG, cores: 1, insulation: 600 V';
    const text = wired({
      parts: 'PS1 g',
      more: [
        'K1: {kind: relay, coil: {rated: 12 V DC, resistance: 120 ohm, suppressor: diode}, contact: {ratings: [10 A 250 V AC], motor: [1 hp 120 V AC]}}',
        'P1: {kind: plug, pattern: fixed, breaker: 15 A, volts: 120 V AC}',
        'M: {kind: motor, volts: 120 V AC, amps: 5 A, locked-rotor: 30 A, protector: manual}',
        'J1: {kind: joint}',
        'J2: {kind: joint}',
      ],
      wires: 'K1.A2 PS1.-',
      runs: [
        cable('red: [PS1.+, g.COM], white: [K1.A1, g.NO]'),
        ...lines.map((line) => cable(`black: ${line}`, wire)),
        cable('white: [P1.N, M.N]', wire),
        cable('green: [P1.PE, M.PE]', wire),
      ],
      intent: ['M: {runs-on: [g]}'],
    });
    const repairs = repairsOf(text);
    const [first] = repairs[0]?.edits ?? [];
    expect(first?.do === 'add' ? [first.from, first.to].sort() : first).toEqual([...ends].sort());
    const { runs } = planOf(text);
    for (const { edits } of repairs)
      for (const e of edits) if (e.do === 'add') expect(runs[e.like!]?.cable?.insulation).toBe(600);
  });
});

describe('a timer whose dry trigger has one core on each terminal', () => {
  it('gets the core of a gate in that loop back onto its tab', () => {
    const base = readFileSync(new URL('../findings/bases/timer.yaml', import.meta.url), 'utf8');
    const text = base
      .replace('    supply: permanent\n', '')
      .replace('brown: [planer.NO, saw.NO]', 'brown: [planer.NO, saw.NC]')
      .replace('brown: [saw.NO, lathe.NO]', 'brown: [saw.NC, lathe.NO]');
    const [first] = repairsOf(text);
    expect(first?.edits.map((e) => (e.do === 'move' ? e.to : e.do))).toEqual(['saw.NO', 'saw.NO']);
  });
});

describe('a diode put in the wrong way round', () => {
  it('is one slip: it is turned, and not gone round, though only then is it seen how little the coil gets', () => {
    const text = wired({
      parts: 'PS1 K1 g',
      more: ['D1: {kind: diode, current: 1 A, reverse: 400 V}'],
      wires: 'PS1.+ g.COM, g.NO D1.K, D1.A K1.A1, K1.A2 PS1.-',
      intent: ['K1: {runs-on: [g]}'],
    });
    expect(repairsOf(text).map((r) => kinds(r.edits))).toEqual([['swap']]);
    // Of all ends that could be changed over those of the diode are the likeliest: one hand put it in, not two ends.
    const study = Study.of(planOf(text));
    const circuit = new NumberedCircuit(study);
    const quick = new QuickLook(circuit);
    const swaps = [...new Rewirings(study.plan, quick, circuit.cores).swaps()];
    expect(swaps.length).toBeGreaterThan(1);
    const [likeliest] = new Ranking(study.plan, quick, study.circuit.inputs).ranked(swaps);
    expect(likeliest!.t.edits).toEqual(repairsOf(text)[0]!.edits);
  });
});

describe('the cores on two tabs of one relay changed over', () => {
  it('change back together, though there are two on the one and one on the other', () => {
    const text = wired({
      parts: 'PS1 K1 K2 K3 g',
      more: ['X: {kind: lamp, rated: 12 V DC 1 W}'],
      wires: [
        ...[
          'PS1.+ g.COM',
          'g.NO K1.A1',
          'K1.A2 PS1.-',
          'PS1.+ K1.COM',
          'K1.NC K2.A1',
          'K1.NC K3.A1',
          'K1.NO X.1',
        ],
        ...['K2.A2 PS1.-', 'K3.A2 PS1.-', 'X.2 PS1.-'],
      ].join(', '),
      intent: ['K2: {runs-on: [g]}', 'K3: {runs-on: [g]}', 'X: {lit-when: all-shut}'],
    });
    const [first, ...more] = repairsOf(text);
    expect(first!.edits.flatMap((e) => (e.do === 'move' ? [e.to] : [])).sort()).toEqual([
      'K1.NC',
      'K1.NO',
      'K1.NO',
    ]);
    expect(more).toEqual([]);
  });
});

describe('a supply behind the main switch, with one core on each of its pins', () => {
  it('is known to be dead while that is off, so that a core on the wrong tab behind it is found', () => {
    const text = wired({
      parts: 'PS1 K1 g s',
      more: ['P1: {kind: plug, pattern: NEMA 5-15, breaker: 15 A, volts: 120 V AC}'],
      wires: 'P1.L s.COM, s.NO PS1.L, P1.N PS1.N, PS1.+ g.COM, g.NC K1.A1, K1.A2 PS1.-',
      intent: ['K1: {runs-on: [[g, s]]}'],
    });
    expect(repairsOf(text)[0]?.edits).toMatchObject([{ do: 'move', to: 'g.NO' }]);
  });
});

describe('a core too many', () => {
  it('is told with the parts at which it lies, where what it does names neither', () => {
    const text = wired({
      parts: 'PS1 K1 g',
      more: ['p: {kind: joint}', 'q: {kind: joint}'],
      wires: 'PS1.+ p, p g.COM, g.NO q, q K1.A1, K1.A2 PS1.-, p q',
      intent: ['K1: {runs-on: [g]}'],
    });
    const [first] = check(Study.of(planOf(text))).findings;
    expect(first).toMatchObject({ id: 'runs-with-all-shut', parts: ['K1', 'p', 'q'] });
    expect(first!.repair!.edits).toMatchObject([{ do: 'remove', run: 5 }]);
  });
});
