import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../src/edit/apply-edits.ts';
import type { Edit } from '../../src/edit/edits.ts';
import { example, good } from '../plan/helpers.ts';

const apply = (text: string, ...edits: Edit[]) => applyEdits(text, good(text), edits);
/** The new text; a refusal fails the test. */
function made(text: string, ...edits: Edit[]): string {
  const result = apply(text, ...edits);
  if ('refused' in result) throw new Error(result.refused);
  return result.text;
}
function refused(text: string, ...edits: Edit[]): string {
  const result = apply(text, ...edits);
  if ('text' in result) throw new Error(`not refused:\n${result.text}`);
  expect(result.refused).toMatch(/^[A-Z].*\.$/s);
  return result.refused;
}
const move = (run: number, core: number, end: 'a' | 'b', to: string): Edit => ({
  do: 'move',
  run,
  core,
  end,
  to,
});
const remove = (run: number, core: number): Edit => ({ do: 'remove', run, core });
const add = (from: string, to: string, like?: number, metres?: number): Edit => ({
  do: 'add',
  from,
  to,
  like,
  metres,
});

/** A plan of joints with the runs as given. */
const plan = (runs: string, more = '') => `format: 1
stock:
  bell: {kind: cable, gauge: 20 AWG, cores: 3, sheath-colours: [red, white, blue]}
parts:
${['a', 'b', 'c', 'd', 'e', 'f', '"null"'].map((j) => `  ${j}: {kind: joint}`).join('\n')}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm}, contact: {ratings: [5 A 250 V AC]}}
${more}${runs}`;
/** The same edit in the runs alone. */
const inRuns = (before: string, after: string, ...edits: Edit[]) =>
  expect(made(plan(before), ...edits)).toBe(plan(after));

const ONE = 'runs:\n  - {cable: bell, length: 2 m, cores: {red: [a, b], white: [c, d]}}\n';

describe('move and swap', () => {
  it('change the one word', () => {
    expect(made(example, move(1, 0, 'b', 'planer.NC'))).toBe(
      example.replace('red: [bandsaw.COM, planer.COM]', 'red: [bandsaw.COM, planer.NC]'),
    );
    const swap: Edit = {
      do: 'swap',
      first: { run: 4, core: 0, end: 'a' },
      second: { run: 4, core: 1, end: 'a' },
    };
    expect(made(example, swap)).toBe(
      example.replace('[D1.K, K1.A1], plain: [D1.A,', '[D1.A, K1.A1], plain: [D1.K,'),
    );
    expect(made(example)).toBe(example);
    expect(made(example, swap, swap)).toBe(example);
  });

  it('keep the quotes that were there, and quote what needs it', () => {
    inRuns(
      `runs:\n- {cable: bell, length: 2 m, cores: {red: ["a", 'b'], white: [c, d]}}\n`,
      `runs:\n- {cable: bell, length: 2 m, cores: {red: ["e", 'f'], white: ['null', d]}}\n`,
      move(0, 0, 'a', 'e'),
      move(0, 0, 'b', 'f'),
      move(0, 1, 'a', 'null'),
    );
  });

  it('reach an end in every style of writing', () => {
    inRuns(
      'runs:\n    -\n         cable: bell # c\n         length: 2 m\n         cores:\n           ? red\n           : - a # first\n             # between\n             - >-\n               b\n           white: [ c , # x\n             d\n           ]\n',
      'runs:\n    -\n         cable: bell # c\n         length: 2 m\n         cores:\n           ? red\n           : - e # first\n             # between\n             - >-\n               f\n           white: [ c , # x\n             K1.A1\n           ]\n',
      move(0, 0, 'a', 'e'),
      move(0, 0, 'b', 'f'),
      move(0, 1, 'b', 'K1.A1'),
    );
  });

  it('work in a link, behind a byte order mark, and with line ends of Windows', () => {
    inRuns('runs:\n  - link: [a, b]\n', 'runs:\n  - link: [a, c]\n', move(0, 0, 'b', 'c'));
    const windows = `\ufeff${plan(ONE).replaceAll('\n', '\r\n')}`;
    expect(made(windows, move(0, 1, 'b', 'e'))).toBe(windows.replace('[c, d]', '[c, e]'));
  });

  it('write an alias of a single terminal out, and leave its anchor', () => {
    const before = 'runs:\n  - {cable: bell, length: 2 m, cores: {red: [&x a, b], white: [*x, d]}}\n';
    inRuns(before, before.replace('*x', 'e'), move(0, 1, 'a', 'e'));
    inRuns(before, before.replace('*x, d', 'd, a'), {
      do: 'swap',
      first: { run: 0, core: 1, end: 'a' },
      second: { run: 0, core: 1, end: 'b' },
    });
    expect(refused(plan(before), move(0, 0, 'a', 'e'))).toMatch(/anchor/);
    inRuns(
      before.replace('*x', 'c'),
      before.replace('*x', 'c').replace('&x a', '&x e'),
      move(0, 0, 'a', 'e'),
    );
  });

  it('refuse what an alias repeats', () => {
    const twice = 'runs:\n  - &r {cable: bell, length: 2 m, cores: {red: [a, b], white: [c, d]}}\n  - *r\n';
    expect(refused(plan(twice), move(0, 0, 'a', 'e'))).toMatch(/anchor/);
    expect(refused(plan(twice), move(1, 0, 'a', 'e'))).toMatch(/anchor/);
    const pair =
      'runs:\n  - {cable: bell, length: 2 m, cores: &c {red: &p [a, b]}}\n  - {cable: bell, length: 1 m, cores: *c}\n  - {link: *p}\n';
    for (const run of [0, 1, 2]) expect(refused(plan(pair), move(run, 0, 'b', 'e'))).toMatch(/anchor/);
  });
});

describe('remove', () => {
  it.each([
    ['{red: [a, b], white: [c, d], blue: [e, f]}', 0, '{white: [c, d], blue: [e, f]}'],
    ['{red: [a, b], white: [c, d], blue: [e, f]}', 1, '{red: [a, b], blue: [e, f]}'],
    ['{red: [a, b], white: [c, d], blue: [e, f]}', 2, '{red: [a, b], white: [c, d]}'],
    ['{red: [a, b], white: [c, d] , }', 1, '{red: [a, b], }'],
    ['{ red: [a, b] ,white: [c, d] }', 0, '{ white: [c, d] }'],
    ['{\n      red: [a, b], # r\n      white: [c, d] # w\n    }', 0, '{\n      white: [c, d] # w\n    }'],
    ['{\n      red: [a, b], # r\n      white: [c, d] # w\n    }', 1, '{\n      red: [a, b] # r\n    }'],
    ['{red: [a, b], # r\n      white: [c, d]}', 1, '{red: [a, b] # r\n      }'],
    ['{red: [a, b], # r\n      white: [c, d]}', 0, '{ # r\n      white: [c, d]}'],
    ['{red: [a, b]\n      , white: [c, d]}', 1, '{red: [a, b]}'],
    ['{? red : [a, b], white: [c, d]}', 0, '{white: [c, d]}'],
    [
      '\n      # one\n      red: [a, b] # r\n      # two\n      white: [c, d]',
      0,
      '\n      # one\n      # two\n      white: [c, d]',
    ],
    [
      '\n      red:\n        - a\n        - b # x\n\n      white:\n      - c\n      - d',
      1,
      '\n      red:\n        - a\n        - b # x\n',
    ],
    ['\n      red: [a,\n        b]\n      white: [c, d]', 0, '\n      white: [c, d]'],
  ])('takes the core out of %j, number %i', (before, core, after) => {
    const run = (cores: string) => `runs:\n  - cores: ${cores}\n    cable: bell\n    length: 2 m\n`;
    inRuns(run(before), run(after), remove(0, core));
  });

  it('takes several out at once, and the run with its last core', () => {
    const three = '  - {cable: bell, length: 2 m, cores: {red: [a, b], white: [c, d], blue: [e, f]}}\n';
    inRuns(
      `runs:\n${three}`,
      'runs:\n  - {cable: bell, length: 2 m, cores: {blue: [e, f]}}\n',
      remove(0, 1),
      remove(0, 0),
    );
    inRuns(
      `runs:\n${three}`,
      'runs:\n  - {cable: bell, length: 2 m, cores: {red: [a, b]}}\n',
      remove(0, 1),
      remove(0, 2),
    );
    inRuns(
      `runs:\n${three}`,
      'runs:\n  - {cable: bell, length: 2 m, cores: {white: [c, d]}}\n',
      remove(0, 0),
      remove(0, 2),
    );
    const link = '  - {link: [a, c]} # short\n  # own line\n';
    inRuns(`runs:\n${link}${three}`, `runs:\n  # own line\n${three}`, remove(0, 0));
    inRuns(`runs:\n${three}${link}`, `runs:\n${three}  # own line\n`, remove(1, 0));
    inRuns(
      'runs: [{link: [a, b]}, {link: [b, c]}, {link: [c, d]}]\n',
      'runs: [{link: [b, c]}]\n',
      remove(0, 0),
      remove(2, 0),
    );
    expect(refused(plan(`runs:\n${link}`), remove(0, 0))).toMatch(/without a run/);
  });

  it('refuses to take away what an alias needs', () => {
    const text =
      'runs:\n  - {cable: bell, length: 2 m, cores: {red: &p [a, b], white: [c, d]}}\n  - {link: *p}\n';
    expect(refused(plan(text), remove(0, 0))).toMatch(/anchor/);
    inRuns(text, text.replace('  - {link: *p}\n', ''), remove(1, 0));
    const cable =
      'runs:\n  - {cable: &w {kind: cable, gauge: 20 AWG, cores: 2}, length: 2 m, cores: {red: [a, b]}}\n  - {cable: *w, length: 1 m, cores: {red: [c, d]}}\n';
    expect(refused(plan(cable), remove(0, 0))).toMatch(/anchor/);
  });
});

describe('add', () => {
  const NEW = '{cable: bell, length: 3 m, cores: {blue: [e, K1.A2]}}';
  it('writes a run in the way of the list', () => {
    inRuns(ONE, `${ONE}  - ${NEW}\n`, add('e', 'K1.A2', 0, 3));
    inRuns(`${ONE}\n# end\n`, `${ONE}  - ${NEW}\n\n# end\n`, add('e', 'K1.A2', 0, 3));
    inRuns(ONE.trimEnd(), `${ONE}  - ${NEW}`, add('e', 'K1.A2', 0, 3));
    inRuns(
      ONE.replace('  - ', '-   '),
      `${ONE}  - ${NEW}\n`.replaceAll('  - ', '-   '),
      add('e', 'K1.A2', 0, 3),
    );
    inRuns(ONE, `${ONE}  - {link: [e, 'null']}\n`, add('e', 'null'));
    const windows = plan(ONE).replaceAll('\n', '\r\n');
    expect(made(windows, add('a', 'f'))).toBe(`${windows}  - {link: [a, f]}\r\n`);
    expect(made(windows.trimEnd(), add('a', 'f'))).toBe(`${windows}  - {link: [a, f]}`);
  });

  it('writes lines where the last run is in lines, brackets where the list is in brackets', () => {
    const lines = 'runs:\n  -  cable: bell\n     length: 2 m\n     cores:\n       red: [a, b]\n';
    inRuns(
      lines,
      `${lines}  -  cable: bell\n     length: 25 cm\n     cores: {white: [c, d]}\n`.replace(
        '25 cm',
        '0.25 m',
      ),
      add('c', 'd', 0, 0.25),
    );
    const { length } = 'runs: [';
    const flow = `runs: [${ONE.slice(10).trim()}`;
    expect(length).toBe(7);
    inRuns(`${flow.replace('- ', '')}]\n`, `${flow.replace('- ', '')}, ${NEW}]\n`, add('e', 'K1.A2', 0, 3));
    inRuns(
      'runs: [\n  {link: [a, b]} # x\n]\n',
      'runs: [\n  {link: [a, b]}, # x\n  {link: [c, d]}\n]\n',
      add('c', 'd'),
    );
    inRuns(
      'runs: [\n  {link: [a, b]}, # x\n]\n',
      'runs: [\n  {link: [a, b]}, # x\n  {link: [c, d]},\n]\n',
      add('c', 'd'),
    );
    inRuns('runs: []\n', 'runs: [{link: [c, d]}, {link: [d, e]}]\n', add('c', 'd'), add('d', 'e'));
  });

  it('takes the cable of the run named, wherever it is written', () => {
    const own =
      'runs:\n  - cable: &w\n      kind: cable\n      gauge: 20 AWG\n      cores: 2\n      sheath-colours: ["red, thin", blue]\n    length: 2 m\n    slack: 10 %\n    route: "under: floor"\n    cores: {blue: [a, b]}\n  - {link: [a, c]}\n';
    inRuns(
      own,
      `${own}  - {cable: {kind: cable, gauge: 20 AWG, cores: 2, sheath-colours: ["red, thin", blue]}, length: 2 m, route: "under: floor", slack: 10 %, cores: {'red, thin': [c, d]}}\n`,
      add('c', 'd', 0),
    );
    const alias = own
      .replace('a, b', 'a, f')
      .replace('- {link: [a, c]}', '- {cable: *w, length: 1 m, cores: {"red, thin": [a, c]}}');
    inRuns(alias, `${alias}  - {cable: *w, length: 1 m, cores: {blue: [c, d]}}\n`, add('c', 'd', 1));
    const full = 'runs:\n  - {cable: bell, length: 2 m, cores: {red: [a, b], white: [c, d], blue: [d, e]}}\n';
    inRuns(full, `${full}  - {cable: bell, length: 2 m, cores: {jumper: [e, f]}}\n`, add('e', 'f', 0));
  });

  it('goes with the other edits', () => {
    const two = `${ONE}  - {link: [e, f]} # last\n`;
    inRuns(
      two,
      'runs:\n  - {cable: bell, length: 2 m, cores: {red: [a, e]}}\n  - {cable: bell, length: 1.5 m, cores: {blue: [d, f]}}\n',
      remove(1, 0),
      move(0, 0, 'b', 'e'),
      remove(0, 1),
      add('d', 'f', 0, 1.5),
    );
  });
});

describe('refusals', () => {
  it('of a file that has changed', () => {
    for (const other of [ONE.replace('[a, b]', '[a, e]'), `\n${ONE}`, ONE.replace('2 m', '3 m')]) {
      const result = applyEdits(plan(other), good(plan(ONE)), [move(0, 0, 'a', 'c')]);
      expect(result).toEqual({ refused: expect.stringMatching(/changed since/) });
    }
    expect(applyEdits('runs: [', good(plan(ONE)), [])).toHaveProperty('refused');
  });

  it.each<[string, Edit[], RegExp]>([
    ['a terminal there is not', [move(0, 0, 'a', 'K1.A9')], /no terminal K1\.A9/],
    ['a part without its terminal', [move(0, 0, 'a', 'K1')], /no terminal K1/],
    ['a joint with a dot', [move(0, 0, 'a', 'e.')], /no terminal e\./],
    ['a run there is not', [move(7, 0, 'a', 'e')], /no core 1 in run 8/],
    ['a core there is not', [remove(0, 2)], /no core 3 in run 1/],
    ['both ends on one terminal', [move(0, 0, 'a', 'b')], /both ends/],
    ['the same core twice', [remove(0, 0), remove(0, 0)], /twice/],
    ['a core moved and removed', [move(0, 0, 'a', 'e'), remove(0, 0)], /both moved and removed/],
    ['a cable there is not', [add('a', 'e', 4)], /no cable in run 5/],
    ['no length', [add('a', 'e', 0, 0)], /length/],
    ['a length that is no number', [add('a', 'e', 0, Number.NaN)], /length/],
  ])('of %s', (_name, edits, words) => {
    expect(refused(plan(ONE), ...edits)).toMatch(words);
  });

  it('of an edit that changes what a machine is', () => {
    const text = plan(
      'runs:\n  - {cable: bell, length: 2 m, cores: {red: [P1.L1, X1.L1], white: [P1.L2, X1.L2]}}\n  - {link: [a, b]}\n',
      '  P1: {kind: plug, volts: 240 V AC}\n  X1: {kind: outlet}\n',
    );
    expect(refused(text, remove(0, 0), remove(0, 1))).toMatch(/besides its wiring/);
  });
});
