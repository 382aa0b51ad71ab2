/** Every kind of part has terminals without which it does nothing: `loose-end` names the ones that are bare. */
import { describe, expect, it } from 'vitest';
import { looseEnd } from '../../../src/findings/starts/loose-end.ts';
import { readPlan } from '../../../src/plan/read.ts';
import { Study } from '../../../src/study/study.ts';
import { shop } from '../mains-plans.ts';
import { findings, type Loop, loop } from '../threshold-plans.ts';

const RELAY = 'coil: {rated: 12 V DC, resistance: 120 ohm}, contact: {ratings: [5 A 30 V DC]}';

// What a part cannot do without is common practice: both ends of a two-pole, the common of a switch and one throw.
it.each([
  ['gate', 'NO', ['COM'], ''],
  ['switch', 'NO', ['COM'], ''],
  ['button', 'NO', ['COM'], ''],
  ['switch', 'COM', ['NO'], ''],
  ['button', 'COM', ['NO'], ''],
  ['gate', 'COM', ['NO'], ''],
  ['relay', 'A1', ['A2'], `, ${RELAY}`],
  ['relay', 'A2', ['A1'], `, ${RELAY}`],
  ['diode', 'A', ['K'], ''],
  ['diode', 'K', ['A'], ''],
  ['lamp', '1', ['2'], ', rated: 12 V DC 1 W'],
  ['resistor', '2', ['1'], ', resistance: 1 kohm'],
  ['fuse', '1', ['2'], ', rating: 1 A'],
  ['led', 'A', ['K'], ''],
  ['supply', '~2', ['~1'], ', output: 12 V AC, limit: 1 A, regulation: transformer'],
  ['supply', '+', ['-'], ', output: 12 V DC, limit: 1 A'],
  ['battery', '+', ['-'], ', output: 12 V DC, capacity: 5 Ah'],
])('a %s with only %s landed lacks %s', (kind, landed, bare, more) => {
  const text = loop({ parts: [`X: {kind: ${kind}${more}}`], more: [`{link: [X.${landed}, K1.A1]}`] });
  const found = findings(text).filter((f) => f.id === 'loose-end' && f.parts[0] === 'X');
  expect(found.map((f) => f.terminals)).toEqual([bare.map((t) => `X.${t}`)]);
});

// A relay that stays where it is put has a coil for each way: one of two with a bare end can do half of its work.
it.each([
  ['A1', ['A2', 'B1', 'B2']],
  ['B1', ['A1', 'A2', 'B2']],
])('a relay with a coil to set and one to reset, of which only %s is landed, lacks %s', (landed, bare) => {
  const text = loop({
    parts: [`X: {kind: relay, bistable: set-reset, ${RELAY}}`],
    more: [`{link: [X.${landed}, K1.A1]}`],
  });
  const found = findings(text).filter((f) => f.id === 'loose-end' && f.parts[0] === 'X');
  expect(found.map((f) => f.terminals)).toEqual([bare.map((t) => `X.${t}`)]);
});

it.each(['switch', 'button'])('a %s with its common and either throw landed lacks nothing', (kind) => {
  for (const pole of ['NO', 'NC']) {
    const more = ['{link: [PS1.+, X.COM]}', `{link: [X.${pole}, K1.A1]}`];
    const found = findings(loop({ parts: [`X: {kind: ${kind}}`], more }));
    expect(found.filter((f) => f.id === 'loose-end' && f.parts[0] === 'X')).toEqual([]);
  }
});

describe('before what follows is folded', () => {
  /** Before what follows from another finding is folded under it. */
  const loose = (plan: Loop | string) => {
    const read = readPlan(typeof plan === 'string' ? plan : loop(plan), 'loose.yaml');
    if (!read.ok) throw new Error(read.errors.map((e) => e.message).join());
    return looseEnd.find(Study.of(read.plan));
  };

  it.each([
    ['runs-on: [g, X]', true],
    ['runs-on: [g], blocked-by: [X]', true],
    ['runs-on: [g], stopped-by: [X]', true],
    ['runs-on: [g]', false],
  ])('a switch without a run and an intent of %s', (intent, said) => {
    const text = loop({ parts: ['X: {kind: switch, contact: {ratings: [5 A 30 V DC]}}'] });
    const found = loose(text.replace('runs-on: [g]', intent));
    expect(found.map((f) => f.message)).toEqual(['X is joined to nothing']);
    expect(found[0]!.why.includes('the intent speaks of it')).toBe(said);
  });
  it('a box, a machine in a socket and the plug that feeds a supply need no run', () => {
    const text = shop({
      parts: [
        'X1: {kind: outlet}',
        'V: {kind: motor, volts: 120 V AC, amps: 2 A, plugged-into: X1}',
        'P2: {kind: plug, volts: 120 V AC}',
        'P3: {kind: plug, volts: 120 V AC}',
      ],
    })
      .replace('PS1: {kind: supply,', 'PS1: {kind: supply, fed-from: P2,')
      .replace('intent:', '  - {link: [P1.L, X1.L]}\n  - {link: [P1.N, X1.N]}\nintent:');
    expect(loose(text).map((f) => f.parts)).toEqual([['P3']]);
  });
  it('a machine in a socket that has no run is no loose end, the socket is', () => {
    const V = 'V: {kind: motor, volts: 120 V AC, amps: 2 A, plugged-into: X1}';
    expect(loose(shop({ parts: ['X1: {kind: outlet}', V] })).map((f) => f.message)).toEqual([
      'X1 is joined to nothing',
    ]);
  });
  it('a load and a socket lack the conductors that nothing lands on', () => {
    const text = shop({
      parts: ['X1: {kind: outlet}', 'V: {kind: load, volts: 120 V AC, amps: 1 A}'],
    }).replace('intent:', '  - {link: [P1.L, X1.L]}\n  - {link: [P1.N, V.N]}\nintent:');
    const found = loose(text);
    expect(found.map((f) => f.terminals)).toEqual([['X1.N'], ['V.L']]);
    expect(found[0]!.message).toBe('X1.N has nothing on it');
  });
  it.each([
    ['board', 'VCC', ['GND', 'IN'], ', supply: 12 V DC, input: high, contact: {ratings: [10 A 250 V AC]}'],
    [
      'timer',
      'A1',
      ['A2'],
      ', function: off-delay, time: 5 s, coil: {rated: 12 V DC, resistance: 120 ohm}, contact: {ratings: [5 A 30 V DC]}',
    ],
    ['selector', 'on', ['COM'], ', positions: [off, on], rest: off, contact: {ratings: [5 A 30 V DC]}'],
    [
      'relay',
      'COM',
      ['A1', 'A2'],
      ', coil: {rated: 12 V DC, resistance: 120 ohm}, contact: {ratings: [5 A 30 V DC]}',
    ],
  ])('a %s with only %s landed', (kind, landed, bare, more) => {
    const found = loose({ parts: [`X: {kind: ${kind}${more}}`], more: [`{link: [X.${landed}, K1.A1]}`] });
    expect(found.map((f) => f.terminals)).toEqual([bare.map((t) => `X.${t}`)]);
    expect(found[0]?.message).toContain(bare.length > 1 ? 'have nothing on them' : 'has nothing on it');
    expect(found[0]?.why).toContain(bare.length > 1 ? 'these terminals' : 'this terminal');
  });
});
