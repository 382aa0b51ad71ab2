import { describe, expect, it } from 'vitest';
import type { Mended, Repair, StateLine } from '../../src/repair/mended.ts';
import { asText } from '../../src/report/forms/text.ts';
import { repairsDocument, writtenDocument } from '../../src/report/repairs.ts';
import { columns } from '../../src/text/wrap.ts';

const state = (name: string, runs: Record<string, string>, right = true): StateLine => ({
  state: name,
  runs,
  right,
});
const repair = (over: Partial<Repair> = {}): Repair => ({
  edits: [{ do: 'move', run: 2, core: 1, end: 'b', to: 'planer.NO' }],
  words: ['Move the white core from planer.NC to planer.NO.'],
  asLikely: false,
  uncovers: [],
  dark: [],
  ends: 1,
  metres: 0,
  before: [
    state('at rest', { fan: 'runs', lamp: 'off' }, false),
    state('planer open', { fan: 'off', lamp: 'off' }, false),
    state('bandsaw open', { fan: 'runs', lamp: 'off' }),
  ],
  after: [
    state('at rest', { fan: 'off', lamp: 'off' }),
    state('planer open', { fan: 'runs', lamp: 'off' }),
    state('bandsaw open', { fan: 'runs', lamp: 'off' }),
  ],
  alike: 0,
  ...over,
});
const mended = (over: Partial<Mended> = {}): Mended => ({
  format: 1,
  needed: true,
  repairs: [repair()],
  tried: 12,
  why: null,
  ...over,
});
const shown = (of: Mended, width = 80, unicode = true) => asText(repairsDocument(of), { width, unicode });

describe('what can be mended', () => {
  it('one repair, with the states that change and no others', () => {
    expect(shown(mended())).toBe(`The plan can be mended: 1 end to move.

1. Move the white core from planer.NC to planer.NO.

state         before     after
at rest       fan runs   fan off
planer open   fan off    fan runs

This repair has gone through the whole check. 12 changes were tried.
`);
  });

  it('more repairs, five in a line each', () => {
    const other = (i: number) => repair({ words: [`Do ${i}.`, `Then ${i}.`] });
    const two = shown(mended({ repairs: [repair(), other(1)] }));
    expect(two).toContain(
      '1 more repair moves as few ends:\n- Do 1; Then 1\n\nEach of these repairs has gone through',
    );
    const many = shown(
      mended({ repairs: [repair(), ...[1, 2, 3, 4, 5, 6, 7].map(other), repair({ ends: 2 })] }),
    );
    expect(many).toContain('7 more repairs move as few ends:\n- Do 1; Then 1\n');
    expect(many).toContain('- Do 5; Then 5\n- and 2 more\n\n1 repair moves more ends; --json lists all.\n');
    expect(many).not.toContain('Do 6');
  });

  it('what a repair takes', () => {
    const head = (over: Partial<Repair>) => shown(mended({ repairs: [repair(over)] })).split('\n')[0];
    const end = { run: 0, core: 0, end: 'a' } as const;
    const edit = { do: 'add', from: 'a', to: 'b', like: 0, metres: 3 } as const;
    expect(head({ edits: [{ do: 'swap', first: end, second: end }], ends: 2 })).toBe(
      'The plan can be mended: 2 ends to move.',
    );
    expect(head({ edits: [edit], ends: 0, metres: 3 })).toBe(
      'The plan can be mended: 1 core to add, 3 m of new cable.',
    );
    expect(head({ edits: [edit], ends: 0, metres: null })).toContain(
      '1 core to add, new cable to be measured.',
    );
    expect(head({ edits: [{ do: 'remove', run: 0, core: 0 }], ends: 0 })).toContain(': 1 core to take out.');
    expect(head({ edits: [], ends: 0 })).toBe('The plan can be mended.');
  });

  it('other terminals that do as well', () => {
    expect(shown(mended({ repairs: [repair({ alike: 1 })] }))).toContain(
      '\n1 other terminal on the same conductor would do',
    );
    expect(shown(mended({ repairs: [repair({ alike: 3 })] }))).toContain(
      '\n3 other terminals on the same conductor would',
    );
  });

  it('a state that is told once, or still wrong, is not passed over', () => {
    const text = shown(
      mended({
        repairs: [
          repair({
            before: [state('x', { fan: 'off' })],
            after: [state('x', { fan: 'chatters' }, false), state('y', { fan: 'off' })],
          }),
        ],
      }),
    );
    expect(text).toMatch(/x {7}fan off {4}fan chatters, still wrong\n/);
    expect(text).toMatch(/y {7}not told {3}fan off\n/);
  });
});

describe('nothing to do, and nothing found', () => {
  it('is said', () => {
    expect(shown(mended({ needed: false, repairs: [], tried: 0 }))).toBe(
      'Nothing to mend: the check finds nothing wrong with the wiring.\n',
    );
    expect(shown(mended({ repairs: [], why: 'Two relays would be needed.', tried: 1 }))).toBe(
      'No repair was found. Two relays would be needed. 1 change was tried.\n',
    );
    expect(shown(mended({ repairs: [] }))).toContain('Why not cannot be told.');
  });
});

describe('what was written', () => {
  it('is told with the instructions', () => {
    expect(asText(writtenDocument(repair(), 'lane.yaml'), { width: 80 })).toMatch(
      /^Written into lane\.yaml:\n\n1\. Move the white core .*\n\nstate[\s\S]*\n\nWire it the same way at the bench\.\n$/,
    );
  });
});

describe('the page', () => {
  it('fills any width, and lets no control character through', () => {
    const nasty = repair({
      words: ['Move \u001b[2J the white core \u202e of the long run under the floor to planer.NO, é.'],
      before: [state('bad\u001b[1A name', { 'fan\n': 'off' })],
      after: [state('bad\u001b[1A name', { 'fan\n': 'runs' })],
    });
    for (const width of [20, 33, 80, 200])
      for (const unicode of [true, false]) {
        const text = shown(mended({ repairs: [nasty, nasty] }), width, unicode);
        // biome-ignore lint/suspicious/noControlCharactersInRegex: none may be left
        expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u202e]/);
        expect(Math.max(...text.split('\n').map(columns))).toBeLessThanOrEqual(width);
        if (!unicode) expect(text).toMatch(/^[\n -~]*$/);
      }
  });
});
