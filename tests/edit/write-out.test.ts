import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../src/edit/apply-edits.ts';
import type { Edit } from '../../src/edit/edits.ts';
import { good } from '../plan/helpers.ts';

const plan = (parts: string, runs: string) => `format: 1
stock:
  bell: {kind: cable, gauge: 20 AWG, cores: 3, sheath-colours: [red, white, blue]}
  snap: {kind: gate}
parts:
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm}, contact: {ratings: [5 A 250 V AC]}}
${parts}runs:
${runs}`;
const GATES = '  shop: {from: snap, names: [a, b, c]} # all of them\n';
const made = (text: string, ...edits: Edit[]): string => {
  const result = applyEdits(text, good(text), edits);
  if ('refused' in result) throw new Error(result.refused);
  return result.text;
};
const refused = (text: string, ...edits: Edit[]): string => {
  const result = applyEdits(text, good(text), edits);
  if ('text' in result) throw new Error(`not refused:\n${result.text}`);
  return result.refused;
};
const inRuns = (before: string, after: string, ...edits: Edit[]) =>
  expect(made(plan(GATES, before), ...edits)).toBe(plan(GATES, after));
const inParts = (before: string, after: string, ...edits: Edit[]) => {
  const runs = '  - {link: [a.NO, K1.A1]}\n';
  expect(made(plan(before, runs), ...edits)).toBe(plan(after, runs));
};
const move = (run: number, core: number, end: 'a' | 'b', to: string): Edit => ({
  do: 'move',
  run,
  core,
  end,
  to,
});
const turned = (part: string, value: 'open' | 'shut' = 'shut'): Edit => ({
  do: 'say',
  part,
  field: 'pressed-when',
  value,
});

describe('an end in a run along parts', () => {
  it('moves in its piece, and the run is written out', () => {
    inRuns(
      `  - {link: [a.NO, K1.A1]}
  # zone 1
  - {cable: bell, along: [a, b, c], lengths: [4 m, 3 ft], route: "over, there", cores: {red: COM, white: NO}} # behind
  - {link: [c.NO, K1.A2]}
`,
      `  - {link: [a.NO, K1.A1]}
  # zone 1
  - {cable: bell, length: 4 m, route: "over, there", cores: {red: [a.COM, b.COM], white: [a.NO, b.NO]}} # behind
  - {cable: bell, length: 3 ft, route: "over, there", cores: {red: [b.COM, c.COM], white: [b.NO, c.NC]}}
  - {link: [c.NO, K1.A2]}
`,
      move(2, 1, 'b', 'c.NC'),
    );
  });

  it('keeps remarks, quotes and the other runs along parts', () => {
    inRuns(
      `    - cable: bell # the blue roll
      name: trunk
      along: [a, # first
        b, c]
      length: 4 m
      cores:
        red: COM # upper tab
        white: NO # lower tab
    - {cable: bell, along: shop, length: 1 m, cores: {blue: NC}}`,
      `    # the blue roll
    # first
    # upper tab
    - {cable: bell, name: trunk piece 1, length: 4 m, cores: {red: [a.COM, b.COM], white: [a.NO, b.NC]}} # lower tab
    - {cable: bell, name: trunk piece 2, length: 4 m, cores: {red: [b.COM, c.COM], white: [b.NO, c.NO]}}
    - {cable: bell, along: shop, length: 1 m, cores: {blue: NC}}`,
      move(0, 1, 'b', 'b.NC'),
    );
  });

  it('is found behind runs along parts, which stay', () => {
    inRuns(
      `  - {cable: bell, along: shop, length: 1 m, cores: {blue: NC}}
  - {link: [c.NO, K1.A2]}
`,
      `  - {cable: bell, along: shop, length: 1 m, cores: {blue: NC}}
  - {link: [c.NC, K1.A2]}
  - {cable: bell, length: 1 m, cores: {red: [a.NO, b.NO]}}
`,
      move(2, 0, 'a', 'c.NC'),
      { do: 'add', from: 'a.NO', to: 'b.NO', like: 1, metres: undefined },
    );
  });

  it('goes, and so does a whole piece', () => {
    inRuns(
      `  - {cable: bell, along: [a, b, c], lengths: [4 m, 3 m], cores: {red: COM}}
  - {link: [c.NO, K1.A2]}
`,
      `  - {cable: bell, length: 4 m, cores: {red: [a.COM, b.COM]}}
  - {link: [c.NO, K1.A2]}
  - {cable: bell, length: 3 m, cores: {white: [a.NO, K1.A1]}}
`,
      { do: 'remove', run: 1, core: 0 },
      { do: 'add', from: 'a.NO', to: 'K1.A1', like: 1, metres: undefined },
    );
  });

  it('is written in brackets where the list is', () => {
    const flow = (runs: string) => plan(GATES, '').replace('runs:\n', `runs: ${runs}\n`);
    expect(
      made(
        flow('[{cable: bell, along: [a, b, c], length: 4 m, cores: {red: COM}}, {link: [c.NO, K1.A2]}]'),
        move(1, 0, 'b', 'c.NO'),
      ),
    ).toBe(
      flow(
        '[{cable: bell, length: 4 m, cores: {red: [a.COM, b.COM]}}, {cable: bell, length: 4 m, cores: {red: [b.COM, c.NO]}}, {link: [c.NO, K1.A2]}]',
      ),
    );
  });

  it('is refused where more than one place uses it', () => {
    const runs = `  - {cable: bell, along: &n [a, b, c], length: 4 m, cores: {red: COM}}
  - {cable: bell, along: *n, length: 4 m, cores: {red: NO}}
`;
    expect(refused(plan(GATES, runs), move(0, 0, 'b', 'b.NC'))).toMatch(/shared by an anchor/);
    expect(made(plan(GATES, runs), move(2, 0, 'b', 'b.NC'))).toContain('red: [a.NO, b.NC]');
  });
});

describe('what one part of a group is to say', () => {
  it('takes the group apart', () => {
    inParts(
      '  shop: {from: snap, names: [a, b, c]} # all of them\n',
      `  a: {from: snap} # all of them
  b: {from: snap, pressed-when: shut}
  c: {from: snap}
`,
      turned('b'),
    );
    inParts(
      `  shop:
    from: snap # the cheap ones
    names: # three
      - a
      - b
      - c
`,
      `  # the cheap ones
  # three
  a: {from: snap, pressed-when: shut}
  b: {from: snap, pressed-when: shut}
  c: {from: snap}
`,
      turned('a'),
      turned('b'),
    );
  });
  it('is said of the group where all are to say the same', () => {
    inParts(
      '  shop: {kind: gate, names: [a, b, c]}\n',
      '  shop: {kind: gate, names: [a, b, c], pressed-when: shut}\n',
      turned('a'),
      turned('b'),
      turned('c'),
    );
  });
});
