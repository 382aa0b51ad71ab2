import { describe, expect, it } from 'vitest';
import { grow } from '../../src/edit/grow.ts';
import { sumText } from '../../src/edit/grow-lists.ts';
import { addGate, type Length, removeGate } from '../../src/edit/growth.ts';
import { good } from '../plan/helpers.ts';

const long = (text: string): Length => ({
  text,
  metres: Number.parseFloat(text) * (text.endsWith('ft') ? 0.3048 : 1),
});

/** The text with a gate added, or why it cannot be. */
function added(text: string, after: string, length: string, onward?: string, name = 'new'): string {
  const plan = good(text);
  const growth = addGate(plan, {
    name,
    after,
    length: long(length),
    onward: onward === undefined ? undefined : long(onward),
  });
  const applied = grow(text, plan, growth);
  return 'text' in applied ? applied.text : `refused: ${applied.refused}`;
}

function removed(text: string, name = 'new'): string {
  const plan = good(text);
  const applied = grow(text, plan, removeGate(plan, name));
  return 'text' in applied ? applied.text : `refused: ${applied.refused}`;
}

const PARTS = `format: 1
stock:
  snap: {kind: gate, pressed-when: open, contact: {ratings: [3 A 30 V DC]}}
  bell: {kind: cable, gauge: 20 AWG, cores: 2, insulation: 150 V}
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A}
  K1: {kind: relay, coil: {rated: 12 V DC}, contact: {ratings: [30 A 240 V AC]}}
`;
const GATES = `  a: {from: snap} # the first
  b:
    from: snap
    # never locked
    marks: {1: COM, 2: NO}
  c: {from: snap}
`;
const CHAIN = `${PARTS}${GATES}runs:
  - {link: [PS1.-, K1.A2]}
  - {cable: bell, length: 4 m, cores: {red: [PS1.+, a.COM], white: [K1.A1, a.NO]}}
  # on
  - {cable: bell, length: 3 m, slack: 10 %, cores: {red: [a.COM, b.COM], white: [a.NO, b.2]}} # clipped
  - cable: bell
    length: 2 m
    cores:
      red: [b.COM, c.COM] # through the wall
      white: [c.NO, b.2]
intent:
  K1:
    runs-on:
      - a
      - b # by the door
      - c
`;

describe('a chain', () => {
  it('has the new gate behind its last one', () => {
    const text = added(CHAIN, 'c', '5 m');
    expect(text).toBe(
      CHAIN.replace('  c: {from: snap}\n', '  c: {from: snap}\n  new: {from: snap}\n')
        .replace(
          '      white: [c.NO, b.2]\n',
          '      white: [c.NO, b.2]\n  - cable: bell\n    length: 5 m\n    cores: {red: [c.COM, new.COM], white: [c.NO, new.NO]}\n',
        )
        .replace('      - c\n', '      - c\n      - new\n'),
    );
    expect(removed(text)).toBe(CHAIN);
  });

  it('has a cable cut in two in its middle, and healed', () => {
    const text = added(CHAIN, 'a', '1 m', '2 m');
    expect(text).toContain(`  # on
  - {cable: bell, length: 1 m, slack: 10 %, cores: {red: [a.COM, new.COM], white: [a.NO, new.NO]}}
  - {cable: bell, length: 2 m, slack: 10 %, cores: {red: [new.COM, b.COM], white: [new.NO, b.2]}} # clipped
`);
    expect(text).toContain('  a: {from: snap} # the first\n  new: {from: snap}\n');
    expect(removed(text)).toBe(CHAIN);
    expect(added(CHAIN, 'b', '0.5 m', '1.5 m')).toContain('  new: {from: snap, marks: {1: COM, 2: NO}}\n');
    expect(() => added(CHAIN, 'a', '1 m')).toThrow(/from a to b .*--onward/);
    expect(() => added(CHAIN, 'c', '1 m', '2 m')).toThrow(/no cable goes on from c/);
  });

  it('is healed with the sum of both lengths, where both are of one cable', () => {
    const text = removed(CHAIN.replace(', slack: 10 %', ''), 'b');
    expect(text).toContain('    length: 5 m\n    cores:\n      red: [a.COM, c.COM] # through the wall\n');
    expect(text).toContain('      white: [c.NO, a.NO]\n');
    expect(() => removed(CHAIN, 'b')).toThrow(/cables of runs 3 and 4 on both sides of b are not alike/);
  });

  it('keeps the line ends of Windows, a byte order mark and an end without a line break', () => {
    const odd = `\ufeff${CHAIN.replace(/intent[\s\S]*$/, '')
      .trimEnd()
      .replaceAll('\n', '\r\n')}`;
    const text = added(odd, 'c', '5 m');
    expect(text).toMatch(/\r\n {2}- cable: bell\r\n {4}length: 5 m\r\n {4}cores: .*new\.NO\]\}$/);
    expect(text.replaceAll('\r\n', '')).not.toContain('\n');
    expect(removed(text)).toBe(odd);
  });
});

it.each([
  ['3 m', '2 m', 5, '5 m'],
  ['1.5 m', '2.5 m', 4, '4 m'],
  ['0.25m', '1m', 1.25, '1.25m'],
  ['10 m', '20 m', 30, '30 m'],
  ['60 cm', '1 m', 1.6, '1.6 m'],
  // 8 ft 6 in is 2.5908 m: the foot is 0.3048 m exactly (international yard and pound agreement of 1959).
  ['6 in', '8 ft', 2.5908, '8 ft 6 in'],
  ['6\' 2"', '1 m', 2.8796, '2.88 m'],
])('%s and %s are %d m, written %s', (a, b, metres, text) => {
  expect(sumText(a, b, metres)).toBe(text);
});

describe('other layouts', () => {
  const STAR = `${PARTS}${GATES}runs: [
    {link: [PS1.-, K1.A2]},
    {cable: bell, length: 4 m, cores: {red: [PS1.+, a.COM], white: [a.NO, K1.A1]}},   # near
    {cable: bell, length: 3 m, cores: {red: [PS1.+, b.COM], white: [K1.A1, b.NO]}}, {cable: bell, length: 9 m, cores: {red: [PS1.+, c.COM], white: [K1.A1, c.NO]}}
  ]
intent: {K1: {runs-on: [a,  b,
    c]}}
`;
  it.each([
    ['a', '[a.NO, K1.A1]', '[new.NO, K1.A1]'],
    ['b', '[K1.A1, b.NO]', '[K1.A1, new.NO]'],
    ['c', '[K1.A1, c.NO]', '[K1.A1, new.NO]'],
  ])('a star: the new run of %s starts where its neighbour starts', (gate, old, white) => {
    const text = added(STAR, gate, '7 m');
    expect(text).toContain(old);
    expect(text).toContain(`{cable: bell, length: 7 m, cores: {red: [PS1.+, new.COM], white: ${white}}}`);
    expect(removed(text)).toBe(STAR);
  });

  const RING = CHAIN.replace(
    'intent:',
    '  - {cable: bell, length: 8 m, cores: {red: [c.COM, PS1.+], white: [c.NO, K1.A1]}}\nintent:',
  );
  it('a ring: the run behind the neighbour is cut, by the order of the file', () => {
    for (const [gate, next, whole] of [
      ['a', 'b', 3],
      ['b', 'c', 2],
      ['c', 'PS1', 8],
    ] as const) {
      const text = added(RING, gate, '0.5 m', `${whole - 0.5} m`);
      expect(text).toMatch(new RegExp(`red: \\[new\\.COM, ${next}\\.`));
      expect(removed(text)).toBe(RING);
    }
  });

  it('a tee: the new gate gets a branch of its own, and which cable to cut cannot be told', () => {
    const tee = CHAIN.replace('red: [b.COM, c.COM]', 'red: [a.COM, c.COM]').replace(
      '[c.NO, b.2]',
      '[c.NO, a.NO]',
    );
    const text = added(tee, 'a', '6 m');
    expect(text).toContain('length: 6 m, cores: {red: [a.COM, new.COM], white: [a.NO, new.NO]}}');
    expect(removed(text)).toBe(tee);
    expect(() => added(tee, 'a', '6 m', '1 m')).toThrow(/2 cables go on from a/);
  });

  it('gates that only work together, and a lamp: every list that names the neighbour', () => {
    const text = CHAIN.replace(/intent[\s\S]*$/, 'intent:\n  K1: {runs-on: [[a, b], [a, c]]}\n');
    const both = added(text, 'c', '1 m');
    expect(both).toContain('runs-on: [[a, b], [a, c], [a, new]]');
    expect(removed(both)).toBe(text);
    expect(added(text, 'a', '1 m', '2 m')).toContain('runs-on: [[a, b], [new, b], [a, c], [new, c]]');
  });

  it('one list that two loads share is changed once', () => {
    const text = CHAIN.replace(/intent[\s\S]*$/, 'intent:\n  K1: {runs-on: &all [a, b, c]}\n');
    const two = `${text.replace('  a: {from', '  K2: {kind: relay, coil: {rated: 12 V DC}}\n  a: {from')}  K2: {runs-on: *all}\n`;
    const more = added(two, 'c', '1 m');
    expect(more).toContain('runs-on: &all [a, b, c, new]}\n  K2: {runs-on: *all}\n');
    expect(removed(more)).toBe(two);
  });
});

describe('short forms', () => {
  const LONG = `${PARTS}  shop: {from: snap, names: [a, b, c]} # all
runs:
  - {link: [PS1.-, K1.A2]}
  - {cable: bell, length: 1 m, cores: {red: [PS1.+, a.COM], white: [K1.A1, a.NO]}}
  - {cable: bell, along: shop, lengths: [4 m, 3 m], cores: {red: COM, white: NO}} # in the tray
intent: {K1: {runs-on: [shop]}}
`;
  it('names and lengths are added to', () => {
    const end = added(LONG, 'c', '2 m');
    expect(end).toBe(LONG.replace('b, c]', 'b, c, new]').replace('4 m, 3 m]', '4 m, 3 m, 2 m]'));
    expect(removed(end)).toBe(LONG);
    const middle = added(LONG, 'b', '1 m', '2 m');
    expect(middle).toBe(LONG.replace('b, c]', 'b, new, c]').replace('4 m, 3 m]', '4 m, 1 m, 2 m]'));
    expect(removed(middle)).toBe(LONG);
  });

  it('so is a list of stops', () => {
    const stops = LONG.replace('along: shop', 'along: [a, b, c]')
      .replace('  shop: {from: snap, names: [a, b, c]} # all\n', GATES)
      .replace('[shop]', '[a, b, c]');
    const text = added(stops, 'a', '1 m', '3 m');
    expect(text).toContain('along: [a, new, b, c], lengths: [1 m, 3 m, 3 m]');
    expect(removed(text)).toBe(stops);
  });

  it('one length for all pieces: kept where it fits, else one for each, or a run beside it', () => {
    const one = LONG.replace('lengths: [4 m, 3 m]', 'length: 4 m');
    const same = added(one, 'c', '4 m');
    expect(same).toBe(one.replace('b, c]', 'b, c, new]'));
    expect(removed(same)).toBe(one);
    const cut = added(one, 'a', '1 m', '3 m');
    expect(cut).toContain('lengths: [1 m, 3 m, 4 m]');
    expect(removed(cut)).toBe(one);
    const beside = added(one, 'c', '2 m');
    expect(beside).toContain('# all\n  new: {from: snap}\n');
    expect(beside).toContain('length: 2 m, cores: {red: [c.COM, new.COM], white: [c.NO, new.NO]}}\n');
    expect(beside).toContain('runs-on: [shop, new]');
    expect(removed(beside)).toBe(one);
  });

  it('a cable along parts is written out where the gate that goes is its first', () => {
    const text = removed(LONG, 'a');
    expect(text).toContain(
      '  - {cable: bell, length: 5 m, cores: {red: [PS1.+, b.COM], white: [K1.A1, b.NO]}} # in the tray\n',
    );
    expect(text).toContain('{cable: bell, length: 3 m, cores: {red: [b.COM, c.COM], white: [b.NO, c.NO]}}');
    expect(text).toContain('names: [b, c]}');
  });
});

describe('what is refused', () => {
  const RANDOM = 'x'.repeat(41);
  it.each([
    ['a', 'd', /no part is called "d"/],
    ['a', 'PS1', /PS1 is no gate but a supply/],
    ['a', '__proto__', /no part is called "__proto__"/],
    ['a', 'c', /has a part a already/],
    ['A', 'c', /A and a differ only in case/],
    ['', 'c', /name is empty/],
    ['../x', 'c', /must start with a letter/],
    ['x: {}', 'c', /expected letters/],
    ['x\n  y', 'c', /white space/],
    ['x.COM', 'c', /a dot/],
    ['x#', 'c', /expected letters/],
    [RANDOM, 'c', /41 characters/],
  ])('%j behind %s', (name, after, words) => {
    expect(() => added(CHAIN, after, '1 m', undefined, name)).toThrow(words);
  });

  it('names that YAML reads as something else are put in quotes', () => {
    for (const name of ['null', '1e3', 'constructor', 'ärmel', 'Null']) {
      const text = added(CHAIN, 'c', '1 m', undefined, name);
      expect(good(text).parts.get(name)?.kind).toBe('gate');
      expect(removed(text, name)).toBe(CHAIN);
    }
  });

  it('a gate in line, with three cores, with a link, alone, in a box, beside a core that passes it by', () => {
    const line = CHAIN.replace('red: [a.COM, b.COM], white: [a.NO, b.2]', 'red: [a.NO, b.COM]').replace(
      ', white: [K1.A1, a.NO]',
      '',
    );
    expect(() => added(line, 'a', '1 m')).toThrow(/several cables/);
    const three = CHAIN.replace('white: [c.NO, b.2]', 'white: [c.NC, b.2]').replace(
      'intent:',
      '  - {cable: bell, length: 1 m, cores: {red: [c.NO, K1.A1]}}\nintent:',
    );
    expect(() => added(three, 'c', '1 m')).toThrow(/cores on 3 of its terminals/);
    const link = CHAIN.replace('intent:', '  - {link: [c.NO, c.NC]}\nintent:');
    for (const job of [() => added(link, 'c', '1 m'), () => removed(link, 'c')])
      expect(job).toThrow(/c has a bare link on it/);
    const box = CHAIN.replace('  a: {from', '  B1: {kind: box, holds: [K1, c]}\n  a: {from');
    expect(() => removed(box, 'c')).toThrow(/box B1 holds c/);
    const passing = CHAIN.replace('white: [K1.A1, a.NO]}}', 'white: [K1.A1, K1.A2]}}');
    expect(() => removed(passing, 'a')).toThrow(/passes a by/);
    const one = removed(removed(CHAIN.replace(', slack: 10 %', ''), 'c'), 'b');
    expect(() => removed(one, 'a')).toThrow(/the only gate/);
  });

  it('what an anchor shares with another place', () => {
    const shared = CHAIN.replace('c: {from: snap}', 'c: &g {from: snap}\n  d: *g');
    expect(removed(shared, 'c')).toMatch(/^refused: .*anchor/);
    expect(removed(added(shared, 'c', '1 m'))).toBe(shared);
  });
});
