/**
 * Which cores land on an overload relay. Expected by hand, from how such relays are fitted (common practice, no source): under the
 * contactor, one pole a phase, 1/L1-2/T1, 3/L2-4/T2, 5/L3-6/T3 (IEC 60947-4-1 annex L, EN 50005, from memory).
 */
import { describe, expect, it } from 'vitest';
import { wireList } from '../../src/lists/wirelist.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { asText } from '../../src/report/forms/text.ts';
import { sectionNotes } from '../../src/report/section-notes.ts';
import { wireListDocument, wireListTable } from '../../src/report/wire-list.ts';
import { Study } from '../../src/study/study.ts';
import { example } from '../helpers/example-plans.ts';
import { planOf } from '../helpers/plan-of.ts';

function listOf(plan: Plan) {
  const list = wireList(Study.of(plan), { any: [], own: new Map() });
  if ('tooLong' in list) throw new Error('too long');
  return list;
}

/** `Q1.2 collector.L1: OL1 2/T1 at Q1.2` of every core that goes by way of an overload relay. */
const told = (plan: Plan) =>
  listOf(plan).wires.flatMap(({ overload, from, to }) =>
    overload === null
      ? []
      : [
          `${from.terminal} ${to.terminal}: ${overload.relays.join('/')} ${overload.lands} at ${{ from, to }[overload.end].terminal}`,
        ],
  );

const wire = '{gauge: 12 AWG, cores: 4, insulation: 600 V}';
const bell = '{gauge: 18 AWG, cores: 2, insulation: 300 V}';

/** A 240 V shop: one gate, a contactor Q1, its overload contacts in line with the coil, and what the case adds. */
const shop = (overloads: readonly string[], parts: string, mains: string) => {
  const names = overloads.map((o) => o.split(':')[0]!);
  const chain = ['g.NO', ...names.flatMap((n) => [`${n}.95`, `${n}.96`]), 'Q1.A1'];
  const links = chain.flatMap((a, i) =>
    i % 2 === 0 ? [`  - {cable: ${bell}, length: 1 m, cores: {white: [${a}, ${chain[i + 1]}]}}`] : [],
  );
  return planOf(`practice: nec
parts:
  T1: {kind: supply, output: 24 V AC, limit: 40 VA, class-2: true}
  g: {kind: gate, pressed-when: open}
${overloads.map((o) => `  ${o}\n`).join('')}  P1: {kind: plug, pattern: fixed, legs: 2, breaker: 30 A, volts: 240 V AC}
  Q1:
    kind: relay
    coil: {rated: 24 V AC, power: 6 VA}
    contact: {ratings: [40 A 240 V AC]}
    poles: [{form: make, marks: [1, 2]}, {form: make, marks: [3, 4]}]
${parts}
runs:
  - {cable: ${bell}, length: 1 m, cores: {red: [T1.~1, g.COM], white: [T1.~2, Q1.A2]}}
${links.join('\n')}
  - {cable: ${wire}, length: 1 m, cores: {black: [P1.L1, Q1.1], red: [P1.L2, Q1.3]}}
${mains}
`);
};
const run = (cores: string) => `  - {cable: ${wire}, length: 1 m, cores: {${cores}}}`;
const motor = (name: string, amps: number) =>
  `  ${name}: {kind: motor, volts: 240 V AC, amps: ${amps} A, protector: none}`;
const [OL1, OL2] = ['OL1: {kind: cutout, setting: 10 A}', 'OL2: {kind: cutout, setting: 3 A}'] as const;
const STRAIGHT = run('black: [Q1.2, fan.L1], red: [Q1.4, fan.L2]');

describe('cores that go by way of an overload relay', () => {
  it('are those between the contactor and the motor that it stops, a pole each', () => {
    expect(told(example('kiln-street'))).toEqual([
      'Q1.2 fan.L1: OL 2/T1 at Q1.2',
      'Q1.4 fan.L2: OL 4/T2 at Q1.4',
      'Q1.6 fan.L3: OL 6/T3 at Q1.6',
    ]);
    expect(told(shop([OL1], motor('fan', 10), STRAIGHT))).toEqual([
      'Q1.2 fan.L1: OL1 2/T1 at Q1.2',
      'Q1.4 fan.L2: OL1 4/T2 at Q1.4',
    ]);
  });

  it('are none where no overload relay is, and not those of a bin-full contact', () => {
    expect(told(example('saltmarsh-lane'))).toEqual([]);
    const door = planOf(`practice: nec
parts:
  P1: {kind: plug, pattern: fixed, legs: 2, volts: 240 V AC}
  bin: {kind: cutout}
  g: {kind: gate, pressed-when: open}
  Q1: {kind: relay, coil: {rated: 240 V AC}, contact: {ratings: [40 A 240 V AC]}}
  fan: {kind: motor, volts: 240 V AC, amps: 10 A}
runs:
${run('black: [P1.L1, Q1.COM], red: [P1.L2, fan.L2]')}
${run('black: [Q1.NO, fan.L1]')}
`);
    expect(told(door)).toEqual([]);
  });

  it('leave out a conductor that comes straight from the plug', () => {
    const past = run('black: [Q1.2, fan.L1], red: [P1.L2, fan.L2]');
    expect(told(shop([OL1], motor('fan', 10), past))).toEqual(['Q1.2 fan.L1: OL1 2/T1 at Q1.2']);
  });

  it('are the first behind the contactor where a joint, a switch or a fuse lies in the way', () => {
    const parts = `${motor('fan', 10)}
  J: {kind: joint}
  S: {kind: switch}
  F: {kind: fuse, rating: 15 A}`;
    const mains = [
      run('black: [J, Q1.2], red: [F.1, Q1.4]'),
      run('black: [J, S.COM], red: [F.2, fan.L2]'),
      run('black: [S.NO, fan.L1]'),
    ];
    expect(told(shop([OL1], parts, mains.join('\n')))).toEqual([
      'Q1.2 J: OL1 2/T1 at Q1.2',
      'Q1.4 F.1: OL1 4/T2 at Q1.4',
    ]);
  });

  it('go by the outlet that the motor is plugged into, and by a bare link', () => {
    const plugged = `  X1: {kind: outlet}
  fan: {kind: motor, volts: 240 V AC, amps: 10 A, protector: none, plugged-into: X1}`;
    expect(told(shop([OL1], plugged, `  - {link: [Q1.2, X1.L1]}\n${run('red: [Q1.4, X1.L2]')}`))).toEqual([
      'Q1.2 X1.L1: OL1 2/T1 at Q1.2',
      'Q1.4 X1.L2: OL1 4/T2 at Q1.4',
    ]);
  });

  it('go each to the relay that is set to its own motor', () => {
    const both = `${motor('fan', 10)}\n${motor('valve', 3)}`;
    const mains = [STRAIGHT, run('black: [Q1.2, valve.L1], red: [Q1.4, valve.L2]')].join('\n');
    expect(told(shop([OL1, OL2], both, mains))).toEqual([
      'Q1.2 fan.L1: OL1 2/T1 at Q1.2',
      'Q1.4 fan.L2: OL1 4/T2 at Q1.4',
      'Q1.2 valve.L1: OL2 2/T1 at Q1.2',
      'Q1.4 valve.L2: OL2 4/T2 at Q1.4',
    ]);
  });

  it('land on the way from the motor where a common core feeds two motors with relays of their own', () => {
    const both = `${motor('fan', 10)}\n${motor('valve', 3)}\n  J: {kind: joint}\n  K: {kind: joint}`;
    const mains = [
      run('black: [Q1.2, J], red: [Q1.4, K]'),
      run('black: [J, fan.L1], red: [K, fan.L2]'),
      run('black: [J, valve.L1], red: [K, valve.L2]'),
    ].join('\n');
    expect(told(shop([OL1, OL2], both, mains))).toEqual([
      'J fan.L1: OL1 2/T1 at J',
      'K fan.L2: OL1 4/T2 at K',
      'J valve.L1: OL2 2/T1 at J',
      'K valve.L2: OL2 4/T2 at K',
    ]);
  });

  it('name every relay that it may be where settings do not tell', () => {
    const unset = ['OL1: {kind: cutout, reset: manual}', 'OL2: {kind: cutout, reset: manual}'];
    const both = `${motor('fan', 10)}\n${motor('valve', 3)}`;
    const mains = [STRAIGHT, run('black: [Q1.2, valve.L1], red: [Q1.4, valve.L2]')].join('\n');
    expect(told(shop(unset, both, mains))[0]).toBe('Q1.2 fan.L1: OL1/OL2 2/T1 at Q1.2');
  });

  it('meet on the side of the mains where two contactors feed one motor by cores of their own', () => {
    const two = `${motor('fan', 10)}
  Q2:
    kind: relay
    coil: {rated: 24 V AC, power: 6 VA}
    contact: {ratings: [40 A 240 V AC]}
    poles: [{form: make, marks: [1, 2]}, {form: make, marks: [3, 4]}]`;
    const mains = [
      STRAIGHT,
      run('black: [Q1.1, Q2.1], red: [Q1.3, Q2.3]'),
      run('black: [Q2.2, fan.L1], red: [Q2.4, fan.L2]'),
    ];
    expect(told(shop([OL1], two, mains.join('\n'))).sort()).toEqual([
      'Q1.2 fan.L1: OL1 1/L1 at fan.L1',
      'Q1.4 fan.L2: OL1 3/L2 at fan.L2',
      'fan.L1 Q2.2: OL1 1/L1 at fan.L1',
      'fan.L2 Q2.4: OL1 3/L2 at fan.L2',
    ]);
  });

  it('are as the plan has them where the contact itself carries the current of the motor', () => {
    const own = 'OL1: {kind: cutout, setting: 10 A}';
    const plan = planOf(`practice: nec
parts:
  P1: {kind: plug, pattern: fixed, volts: 120 V AC}
  T1: {kind: supply, output: 24 V AC, limit: 40 VA}
  g: {kind: gate, pressed-when: open}
  ${own}
  Q1: {kind: relay, coil: {rated: 24 V AC, power: 6 VA}, contact: {ratings: [40 A 240 V AC]}}
  fan: {kind: motor, volts: 120 V AC, amps: 10 A, protector: none}
runs:
  - {cable: ${bell}, length: 1 m, cores: {red: [T1.~1, g.COM], white: [T1.~2, Q1.A2]}}
  - {cable: ${bell}, length: 1 m, cores: {white: [g.NO, Q1.A1]}}
${run('black: [P1.L, OL1.COM], white: [P1.N, fan.N]')}
${run('black: [OL1.NC, Q1.COM]')}
${run('black: [Q1.NO, fan.L]')}
`);
    expect(told(plan)).toEqual([]);
  });
});

describe('what is written of them', () => {
  const list = listOf(example('kiln-street'));

  it('stands on both labels of the core, with the terminal of the relay', () => {
    expect(list.labels.filter((l) => l.wire === 16).map((l) => l.text)).toEqual([
      '16 black > OL 2/T1, not Q1.2',
      '16 black > fan.L1',
    ]);
  });

  it('stands in the row, and under the list where each core lands', () => {
    const words = {
      methods: { tab: '', screw: '', splice: '', clamp: '', lead: '', earth: '', battery: '' },
      notes: sectionNotes(example('kiln-street')),
    };
    const printed = asText(wireListDocument(list, 'x', words, ['wires']), { width: 100 }).replace(
      /\s+/g,
      ' ',
    );
    expect(printed).toContain('16 Q1.2 fan.L1 OL 1/L1-2/T1 black');
    expect(printed).toContain(
      'Land the core on 2/T1 in place of Q1.2 (16), 4/T2 in place of Q1.4 (17) and 6/T3 in place of Q1.6 (18)',
    );
    const none = asText(wireListDocument(listOf(example('saltmarsh-lane')), 'x', words, ['wires']), {
      width: 100,
    });
    expect(none).not.toMatch(/by way of/i);
  });

  it('has columns of its own in the table of figures', () => {
    const [table] = wireListTable(list, 'wires');
    if (table?.kind !== 'table') throw new Error('no table');
    const at = (head: string) => table.columns.findIndex((c) => c.head === head);
    const row = table.rows[15]!;
    expect(['by way of', 'lands on', 'in place of'].map((h) => row.cells[at(h)])).toEqual([
      'OL 1/L1-2/T1',
      '2/T1',
      'Q1.2',
    ]);
  });
});
