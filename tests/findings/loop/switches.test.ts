/** What question 5 says of the switches in the loop: current carried and made, and least current. */
import { describe, expect, it } from 'vitest';
import { COIL, findings, type Loop, loop, WARM } from '../threshold-plans.ts';

const of = (plan: Loop, id: string) => findings(loop(plan)).filter((f) => f.id === id);
const parts = (plan: Loop, id: string) => of(plan, id).map((f) => f.parts);
const OPEN = 'ratings: [5 A 30 V DC], least: 1 mA 5 V DC';
/** A second coil of as many ohm as told, 12 V over 120 ohm being 100 mA. */
const K2 = (ohms: number) =>
  `K2: {kind: relay, coil: {rated: 12 V DC, resistance: ${ohms} ohm, suppressor: diode}, contact: {ratings: [5 A 30 V DC]}}`;
const beside = ['{link: [K1.A1, K2.A1]}', '{link: [K2.A2, PS1.-]}'];

describe('switch-overloaded', () => {
  it('a current of just the rating is carried', () => {
    expect(of({ contact: 'ratings: [100 mA 30 V DC], least: 1 mA 5 V DC' }, 'switch-overloaded')).toEqual([]);
  });

  it('a current of just the least keeps contacts clean, and too few volts with it are told as such', () => {
    const least = (volts: number): Loop => ({
      contact: `ratings: [5 A 30 V DC], least: 100 mA ${volts} V DC`,
    });
    expect(of(least(12), 'switch-underloaded')).toEqual([]);
    expect(of(least(24), 'switch-underloaded').map((f) => f.message)).toEqual([
      'g switches 12 V; it needs 24 V to keep its contacts clean',
    ]);
  });

  // 36 VA at 24 V are 1.5 A: what a contact of 1 A makes, IEC 60947-4-1 Table 7, AC-1.
  const ac = (rating: string, va: number, inrush: number): Loop => ({
    supply:
      'kind: supply, output: 24 V AC, limit: 90 VA, regulation: transformer, no-load: 25 V, class-2: true',
    contact: `ratings: [${rating} 125 V AC]`,
    coil: `rated: 24 V AC, power: ${va} VA, inrush: ${inrush} VA, most: 150 %`,
  });
  it('1.5 times the rating is just made, and carrying is told apart from making', () => {
    expect(of(ac('1 A', 6, 36), 'switch-overloaded')).toEqual([]);
    const message = (plan: Loop) => of(plan, 'switch-overloaded')[0]?.message;
    expect(message(ac('0.9 A', 6, 36))).toContain('has to make 1.5 A');
    expect(message(ac('0.2 A', 6, 6))).toContain('has to carry 250 mA');
    expect(message(ac('0.2 A', 6, 36))).toContain('has to carry 250 mA');
  });
  it('the figures shown are the current that decides and the rating', () => {
    const [found] = of(ac('0.9 A', 6, 36), 'switch-overloaded');
    expect(found?.figures.map((f) => f.value)).toEqual([1.5, 0.9]);
    expect(found?.why).toContain('pull-in current of K1 at 24 V AC');
    const [held] = of({ contact: 'ratings: [50 mA 30 V DC], least: 1 mA 5 V DC' }, 'switch-overloaded');
    expect(held?.figures.map((f) => f.value)).toEqual([0.1, 0.05]);
    expect(held?.why).toContain('holding current of K1 at 12 V DC');
  });

  it('the largest rating that reaches the volts and the kind counts', () => {
    const found = (ratings: string) =>
      of({ contact: `ratings: [${ratings}], least: 1 mA 5 V DC` }, 'switch-overloaded').length;
    expect(found('50 mA 30 V DC, 5 A 12 V DC')).toBe(0);
    expect(found('5 A 12 V DC, 50 mA 30 V DC')).toBe(0);
    expect(found('50 mA 30 V DC, 5 A 5 V DC, 5 A 250 V AC')).toBe(1);
  });

  it('coils side by side add up', () => {
    const at = (ohms: number): Loop => ({
      contact: 'ratings: [150 mA 30 V DC], least: 1 mA 5 V DC',
      parts: [K2(ohms)],
      more: beside,
    });
    expect(parts(at(240), 'switch-overloaded')).toEqual([]);
    expect(parts(at(200), 'switch-overloaded')).toEqual([['g', 'K1', 'K2']]);
  });

  it('a coil that a switch has no part in is not its load', () => {
    const h = 'h: {kind: gate, contact: {ratings: [5 A 30 V DC], least: 1 mA 5 V DC}}';
    const plan: Loop = {
      contact: 'ratings: [150 mA 30 V DC], least: 1 mA 5 V DC',
      parts: [K2(20), h],
      more: ['{link: [PS1.+, h.COM]}', '{link: [h.NO, K2.A1]}', '{link: [K2.A2, PS1.-]}'],
    };
    expect(of(plan, 'switch-overloaded')).toEqual([]);
  });
});

describe('a selector, position by position', () => {
  const selector = (contact: string, to: readonly string[], parts: readonly string[] = []): Loop => ({
    parts: [
      `S: {kind: selector, positions: [off, auto, hand, test], rest: off, contact: {${contact}}}`,
      ...parts,
    ],
    runs: [
      '{link: [PS1.+, S.COM]}',
      '{link: [PS1.+, g.COM]}',
      '{link: [g.NO, K1.A1]}',
      '{link: [K1.A2, PS1.-]}',
      ...(parts.length > 0 ? ['{link: [K2.A2, PS1.-]}'] : []),
      ...to.map((x) => `{link: [S.${x}]}`),
    ],
  });

  it.each([
    ['the first', ['auto, K1.A1']],
    ['another than the first', ['hand, K1.A1']],
    ['two', ['auto, K1.A1', 'hand, K1.A1']],
  ])('is judged once, with the coil on %s', (_, to) => {
    expect(parts(selector('ratings: [50 mA 30 V DC]', to), 'switch-overloaded')).toEqual([['S', 'K1']]);
    expect(parts(selector('ratings: [5 A 250 V AC]', to), 'switch-kind-unrated')).toEqual([['S']]);
    expect(parts(selector('ratings: [5 A 30 V DC], least: 200 mA 5 V DC', to), 'switch-underloaded')).toEqual(
      [['S']],
    );
  });
  it('positions with different coils do not add up', () => {
    const plan = (rating: number) =>
      selector(
        `ratings: [${rating} mA 30 V DC], least: 1 mA 5 V DC`,
        ['auto, K1.A1', 'hand, K2.A1'],
        [K2(60)],
      );
    expect(parts(plan(200), 'switch-overloaded')).toEqual([]);
    expect(parts(plan(150), 'switch-overloaded')).toEqual([['S', 'K2']]);
    expect(parts(plan(50), 'switch-overloaded')).toEqual([
      ['S', 'K1'],
      ['S', 'K2'],
    ]);
  });
});

describe('switch-kind-unrated', () => {
  it('names every switch without a DC rating once', () => {
    const plan: Loop = {
      contact: 'ratings: [5 A 250 V AC]',
      parts: ['h: {kind: gate, contact: {ratings: [5 A 250 V AC]}}'],
      more: ['{link: [PS1.+, h.COM]}', '{link: [h.NO, K1.A1]}'],
      runsOn: 'g, h',
    };
    expect(parts(plan, 'switch-kind-unrated')).toEqual([['g', 'h']]);
    expect(of(plan, 'switch-kind-unrated')[0]?.message).toContain('no rating for DC');
    expect(of(plan, 'switch-overloaded')).toEqual([]);
  });
  it('the higher volts count where one gate breaks the return of two supplies', () => {
    const plan = (volts: number): Loop => ({
      contact: `ratings: [5 A ${volts} V DC]`,
      parts: [
        'PS2: {kind: supply, output: 24 V DC, limit: 1 A, regulation: regulated, class-2: true}',
        K2(480).replace('12 V DC', '24 V DC'),
      ],
      runs: [
        '{link: [PS1.-, g.COM]}',
        '{link: [PS2.-, g.COM]}',
        '{link: [g.NO, K1.A2]}',
        '{link: [g.NO, K2.A2]}',
        '{link: [PS1.+, K1.A1]}',
        '{link: [PS2.+, K2.A1]}',
      ],
    });
    expect(parts(plan(23), 'switch-kind-unrated')).toEqual([['g']]);
    expect(parts(plan(24), 'switch-kind-unrated')).toEqual([]);
  });
  it('asks for AC where the loop is AC', () => {
    const plan: Loop = {
      supply: 'kind: supply, output: 24 V AC, limit: 60 VA, regulation: transformer, class-2: true',
      contact: 'ratings: [5 A 30 V DC]',
      coil: 'rated: 24 V AC, power: 6 VA, inrush: 30 VA',
    };
    expect(of(plan, 'switch-kind-unrated')[0]?.message).toContain('no rating for AC');
  });
});

describe('figures for coils on a switch, IEC 60947-5-1', () => {
  const asked = (kind: string, contact: string) =>
    findings(
      loop({
        contact: 'ratings: [5 A 30 V DC], least: 1 mA 5 V DC',
        parts: [`c: {kind: ${kind}, contact: {${contact}, least: 1 mA 5 V DC}}`],
        runs: [
          '{link: [PS1.+, c.COM]}',
          '{link: [c.NC, g.COM]}',
          '{link: [g.NO, K1.A1]}',
          '{link: [K1.A2, PS1.-]}',
        ],
      }),
    ).filter((f) => f.id.startsWith('switch-') && f.parts.includes('c'));
  it.each(['cutout', 'switch'])('a %s with dc-13 has its DC rating', (kind) => {
    expect(asked(kind, 'ratings: [5 A 250 V AC], dc-13: 1 A')).toEqual([]);
    expect(asked(kind, 'ratings: [5 A 250 V AC]').map((f) => f.id)).toEqual(['switch-kind-unrated']);
  });
  it('ac-15 says nothing of DC', () =>
    expect(asked('cutout', 'ratings: [5 A 250 V AC], ac-15: 1 A')).toHaveLength(1));
  // K1 takes 100 mA
  it('a dc-13 that is too small', () =>
    expect(asked('cutout', 'ratings: [5 A 250 V AC], dc-13: 50 mA').map((f) => f.id)).toEqual([
      'switch-overloaded',
    ]));
});

describe('switch-underloaded', () => {
  const least = (contact: string, ohms = 1000, more: Loop = {}) =>
    of(
      { contact, coil: `${COIL.replace('120 ohm', `${ohms} ohm`)}, ${WARM}`, ...more },
      'switch-underloaded',
    );

  // 12 V over 1000 ohm is 12 mA.
  it('just the least current is enough', () => {
    expect(least('ratings: [5 A 30 V DC], least: 12 mA 5 V DC')).toEqual([]);
    const [found] = least('ratings: [5 A 30 V DC], least: 12.1 mA 5 V DC');
    expect(found).toMatchObject({ severity: 'caution', parts: ['g'] });
    expect(found?.figures.map((f) => f.value)).toEqual([0.012, 0.0121]);
    expect(found?.basis).toContain('as printed');
  });
  it('without a figure 10 mA is asked of silver and 1 mA of gold, common practice', () => {
    expect(least('ratings: [5 A 30 V DC]', 1200)).toEqual([]);
    const [silver] = least('ratings: [5 A 30 V DC]', 1250);
    expect(silver?.why).toContain('taken as silver');
    expect(silver?.basis).toContain('common practice');
    const [gold] = least('ratings: [5 A 30 V DC], metal: gold', 12_500);
    expect(gold?.figures.map((f) => f.value)).toEqual([0.00096, 0.001]);
    expect(gold?.why).not.toContain('taken as silver');
    expect(least('ratings: [5 A 30 V DC], metal: gold', 12_000)).toEqual([]);
  });
  it('a least current of the other kind counts, and the finding says that it is', () => {
    const [found] = least('ratings: [5 A 30 V DC], least: 100 mA 12 V AC');
    expect(found?.message).toContain('it needs 100 mA');
    expect(found?.why).toContain('stated for AC');
  });
  it('a least voltage above that of the loop', () => {
    expect(least('ratings: [5 A 30 V DC], least: 1 mA 12 V DC')).toEqual([]);
    const [found] = least('ratings: [5 A 30 V DC], least: 1 mA 24 V DC');
    expect(found?.message).toBe('g switches 12 V; it needs 24 V to keep its contacts clean');
  });

  // K1 takes 10 mA and K2 6 mA. With h in line K2 does not run when g alone moves.
  const second = (runs: string[]) => ({
    parts: [K2(2000), `h: {kind: gate, contact: {${OPEN}}}`],
    more: [...runs, '{link: [K2.A2, PS1.-]}'],
  });
  it('coils that the switch alone starts count together, one that waits for another gate does not', () => {
    const asks = 'ratings: [5 A 30 V DC], least: 15 mA 5 V DC';
    expect(least(asks, 1200, second(['{link: [g.NO, K2.A1]}']))).toEqual([]);
    const [found] = least(asks, 1200, second(['{link: [g.NO, h.COM]}', '{link: [h.NO, K2.A1]}']));
    expect(found?.figures.map((f) => f.value)).toEqual([0.01, 0.015]);
  });
  it('where it starts nothing alone, what it helps to start counts', () => {
    const runs = [
      '{link: [PS1.+, h.COM]}',
      '{link: [h.NO, g.COM]}',
      '{link: [g.NO, K1.A1]}',
      '{link: [K1.A2, PS1.-]}',
    ];
    const plan = { runs, parts: [`h: {kind: gate, contact: {${OPEN}}}`], runsOn: '[g, h]' };
    const [found] = least('ratings: [5 A 30 V DC], least: 15 mA 5 V DC', 1200, plan);
    expect(found?.figures.map((f) => f.value)).toEqual([0.01, 0.015]);
  });

  // The gate passes what the board's input takes, 5 mA by common practice, whatever the coil behind it draws.
  it.each([
    ['', 0.005],
    [', input-current: 2 mA', 0.002],
  ])('in front of a board with%s', (stated, held) => {
    const plan: Loop = {
      contact: 'ratings: [5 A 30 V DC]',
      parts: [
        `B1: {kind: board, supply: 12 V DC, input: high${stated}, contact: {ratings: [10 A 250 V AC]}}`,
      ],
      runs: [
        '{link: [PS1.+, B1.VCC]}',
        '{link: [PS1.-, B1.GND]}',
        '{link: [PS1.+, g.COM]}',
        '{link: [g.NO, B1.IN]}',
      ],
    };
    const text = loop(plan)
      .split('\n')
      .filter((line) => !line.startsWith('  K1: '))
      .join('\n')
      .replace('intent:', 'intent:\n  B1: {runs-on: [g]}');
    const found = findings(text);
    expect(found.filter((f) => f.id === 'switch-underloaded').map((f) => f.figures[0]?.value)).toEqual([
      held,
    ]);
    expect(found.some((f) => f.id === 'coil-unsuppressed' || f.id === 'coil-current-unknown')).toBe(false);
  });
});

describe('a switch that stands in the mains', () => {
  it('ahead of the supply it is none of the loop', () => {
    const plan: Loop = {
      supply: 'kind: supply, output: 12 V DC, limit: 2 A, regulation: regulated, class-2: true',
      parts: ['P1: {kind: plug, volts: 120 V AC}', 'S: {kind: switch, contact: {ratings: [10 A 250 V AC]}}'],
      more: ['{link: [P1.L, S.COM]}', '{link: [S.NO, PS1.L]}', '{link: [P1.N, PS1.N]}'],
      runsOn: '[g, S]',
    };
    expect(of(plan, 'switch-kind-unrated')).toEqual([]);
  });
});

it('coil-current-unknown: an AC coil of which only the copper is told', () => {
  const supply = 'kind: supply, output: 24 V AC, limit: 60 VA, regulation: transformer, class-2: true';
  const plan = (coil: string): Loop => ({
    supply,
    contact: 'ratings: [5 A 125 V AC]',
    coil: `rated: 24 V AC, ${coil}`,
  });
  expect(parts(plan('resistance: 20 ohm'), 'coil-current-unknown')).toEqual([['K1']]);
  expect(parts(plan('power: 6 VA'), 'coil-current-unknown')).toEqual([]);
  // what is not known is not too little
  expect(of(plan('resistance: 20 ohm'), 'switch-underloaded')).toEqual([]);
});

// Question 4 speaks of a coil on the wrong kind of current, question 6 of one on mains.
it('a coil that is not one of the loop is none of question 5', () => {
  const supply = 'kind: supply, output: 12 V AC, limit: 60 VA, regulation: transformer, class-2: true';
  const wrongKind: Loop = {
    supply,
    contact: 'ratings: [5 A 30 V DC]',
    coil: 'rated: 12 V DC, resistance: 120 ohm',
  };
  for (const id of ['coil-unsuppressed', 'switch-kind-unrated']) expect(of(wrongKind, id)).toEqual([]);
  const onMains: Loop = {
    parts: [
      'Q2: {kind: relay, coil: {rated: 120 V AC, resistance: 300 ohm}, contact: {ratings: [5 A 250 V AC]}}',
      'P1: {kind: plug, volts: 120 V AC}',
    ],
    more: ['{link: [P1.L, K1.COM]}', '{link: [K1.NO, Q2.A1]}', '{link: [Q2.A2, P1.N]}'],
  };
  expect(of(onMains, 'coil-current-unknown')).toEqual([]);
});
