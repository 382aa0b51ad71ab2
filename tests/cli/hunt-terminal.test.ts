/** `pullin hunt` in a pseudo-terminal, with somebody who answers what it asks. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { WHOLE } from '../helpers/share.ts';
import { HAS_TERMINAL, inTerminal, type Step } from '../helpers/terminal.ts';
import { TWO_GATES } from '../meter/hunt/small-plans.ts';

let cwd = '';
beforeEach(() => {
  cwd = mkdtempSync(join(tmpdir(), 'pullin-hunted-'));
  writeFileSync(join(cwd, 'shop.yaml'), TWO_GATES);
});
afterEach(() => rmSync(cwd, { recursive: true, force: true }));

const type = (wait: string, text: string): Step => ({ wait, send: `${text}\r` });
const log = () => readFileSync(join(cwd, 'shop.log'), 'utf8');
const lines = () => log().split('\n').slice(1, -1);
const hunt = (args: readonly string[], steps: readonly Step[], env = {}, columns = 80) => {
  const { status, output } = inTerminal(['hunt', 'shop.yaml', ...args], steps, { cwd, columns, env });
  return { status, output, text: output.replace(/\s+/g, ' ') };
};

/** The far gate is dead because its lever is not reached. */
const LEVER: readonly Step[] = [
  type('seen: ', 'lathe open: off'),
  type('seen, or Enter: ', ''),
  type('quit):', 'saw open: runs'),
  type('quit):', 'yes'),
  type('volts (?', '12'),
];

describe.skipIf(!HAS_TERMINAL)('a hunt in a terminal', () => {
  it.runIf(WHOLE)(
    'goes to its end through slips, doubts and answers taken back, with no sign but plain ones',
    () => {
      const { status, output, text } = hunt(
        ['--log', 'shop.log'],
        [
          type('seen: ', 'lahte open: off'),
          type('did you mean lathe?', ''),
          // Enter: to be asked.
          type('quit):', ''),
          type('! nothing was typed', 'perhaps'),
          type('! found "perhaps", expected yes', '?'),
          type('quit):', 'undo'),
          type('quit):', 'undo'),
          type('There is nothing to take back.', 'lathe open: runs'),
          type('quit):', 'undo'),
          type('quit):', 'lathe open: off'),
          type('quit):', 'saw open: runs'),
          type('quit):', 'yes'),
          type('volts (?', '12'),
          type('Did that put it right?', 'perhaps'),
          type('Did that put it right?', 'yes'),
        ],
        { NO_COLOR: '1' },
      );
      expect([status, text.slice(-400)]).toEqual([0, expect.stringContaining('Did that put it right?')]);
      for (const words of [
        'No probe goes on live mains',
        'What to do',
        'Move the switch of lathe',
        'For the notes kept with the plan',
      ])
        expect(text).toContain(words);
      // biome-ignore lint/suspicious/noControlCharactersInRegex: looking for them is the purpose
      expect(output).not.toMatch(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/);
      expect(lines().filter((l) => l !== 'saw lathe open: ?')).toEqual([
        expect.stringMatching(/ \?$/),
        'undo',
        'saw lathe open: runs',
        'undo',
        'saw lathe open: off',
        'saw saw open: runs',
        'saw lathe open by finger: runs',
        expect.stringMatching(/^reading \S+ lathe\.NO = 12 V DC with lathe open$/),
        'mended: lathe: open, it does not move the lever of its switch',
      ]);
    },
  );
});

describe.skipIf(!HAS_TERMINAL || !WHOLE)('a hunt in a terminal, more of it', () => {
  it('is left at Ctrl-C with the log whole, and gone on from there', () => {
    const left = hunt(['--log', 'shop.log'], [...LEVER.slice(0, 3), { wait: 'quit):', send: '\u0003' }]);
    expect([left.status, left.text.slice(-200)]).toEqual([
      0,
      expect.stringContaining('Left there. The log has all of it.'),
    ]);
    expect(lines()).toEqual(['saw lathe open: off', 'saw saw open: runs']);
    const resumed = hunt(['--log', 'shop.log'], [...LEVER.slice(3), type('Did that put it right?', 'y')]);
    expect([resumed.status, resumed.text]).toEqual([0, expect.not.stringContaining('seen: ')]);
    expect(lines().slice(0, 3)).toEqual([
      'saw lathe open: off',
      'saw saw open: runs',
      'saw lathe open by finger: runs',
    ]);
  });

  it.each([
    ['quit', 'quit\r'],
    ['q', 'q\r'],
    ['Ctrl-D', '\u0004'],
    ['Ctrl-C', '\u0003'],
  ])('is left at the first question by %s', (_, send) => {
    const { status, text } = hunt([], [{ wait: 'seen: ', send }]);
    expect([status, text.trimEnd().endsWith('Left there.')]).toEqual([0, true]);
  });

  it('hears all that was seen before it asks, and takes back what did not help', () => {
    const { status, text } = hunt(
      ['--log', 'shop.log'],
      [
        type('seen: ', 'lathe open: off'),
        type('seen, or Enter: ', 'saw open: off'),
        type('seen, or Enter: ', 'undo'),
        type('seen, or Enter: ', 'saw open: runs'),
        type('seen, or Enter: ', 'lathe open by finger: runs'),
        type('seen, or Enter: ', 'nothing more'),
        type('volts (?', '12'),
        type('Did that put it right?', 'no'),
        type('quit):', 'undo'),
        type('Did that put it right?', 'mended'),
      ],
    );
    expect([status, text]).toEqual([0, expect.stringContaining('Mended: lathe: open, it does not move')]);
    expect(lines().slice(-3)).toEqual([
      'no help: lathe: open, it does not move the lever of its switch',
      'undo',
      'mended: lathe: open, it does not move the lever of its switch',
    ]);
  });

  it('takes several lines that are pasted at once', () => {
    const { status, text } = hunt(
      ['--log', 'shop.log'],
      [type('seen: ', 'lathe open: off\r\rsaw open: runs\rlathe open by finger: runs\r12\ryes')],
    );
    expect([status, text]).toEqual([0, expect.stringContaining('Move the switch of lathe')]);
    expect(lines().slice(0, 3)).toEqual([
      'saw lathe open: off',
      'saw saw open: runs',
      'saw lathe open by finger: runs',
    ]);
  });

  it('goes on where what was done did not help, and remembers that', () => {
    const { status } = hunt(
      ['--log', 'shop.log'],
      [...LEVER, type('Did that put it right?', 'no'), type('quit):', 'quit')],
    );
    expect(status).toBe(0);
    expect(lines()).toContain('no help: lathe: open, it does not move the lever of its switch');
    const again = hunt(['--log', 'shop.log'], [type('quit):', 'quit')]);
    expect(again.text).not.toContain('the likeliest: lathe: open, it does not move');
  });

  it('has an answer looked at again where nothing agrees with all of it', () => {
    const { text } = hunt(
      [],
      [
        type('seen: ', 'saw open: off'),
        type('seen, or Enter: ', 'nothing more'),
        type('quit):', 'K1.A1 K1.A2 = 300 V with saw open'),
        type('look again', 'K1.A1 K1.A2 = 0 V with saw open'),
        type('quit):', 'quit'),
      ],
    );
    expect(text).toContain('Nothing agrees with all of it');
    expect(text).toContain('speaks against is "reading K1.A1 K1.A2 = 300 V DC with saw open"');
    expect(text.slice(text.lastIndexOf('300 V'))).toMatch(/\d+ suspects agree with all of it/);
  });

  it('fills 60 columns, and those of a terminal that is made wider and narrower', () => {
    const narrow = hunt([], [...LEVER, type('Did that put it right?', 'yes')], {}, 60);
    expect(Math.max(...narrow.output.split(/\r?\n/).map((l) => l.length))).toBeLessThanOrEqual(60);
    const steps = [
      { ...LEVER[0]!, resize: 40 },
      { ...LEVER[1]!, resize: 120 },
      ...LEVER.slice(2),
      type('right?', 'yes'),
    ];
    const { status, text } = hunt([], steps);
    expect([status, text]).toEqual([0, expect.stringContaining('Move the switch of lathe')]);
  });

  it('asks nothing where the answer is to be JSON or what was seen is on the command line', () => {
    const json = hunt(['--json'], []);
    expect([json.status, JSON.parse(json.text).format]).toEqual([0, 1]);
    const told = hunt(['--saw', 'lathe open: off'], []);
    expect([told.status, told.text.includes('seen: ')]).toEqual([0, false]);
  });

  it('shows what was typed as code points where it could move the cursor', () => {
    const { output } = hunt([], [type('seen: ', '\u009b2Jlathe open: off'), type('! ', 'quit')]);
    expect(output.slice(output.indexOf('! '))).toContain('\\u009b2Jlathe');
  });
});
