/** The rule of colours and the exit statuses, in every command alike. */
import { copyFileSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, test } from 'vitest';
import { withHelpLast, withoutColour } from '../../../src/cli/line/typed.ts';
import { main } from '../../../src/cli/main.ts';
import { STAGES } from '../../../src/cli/stages.ts';
import { WHOLE } from '../../helpers/share.ts';
import { type Outcome, pullin } from '../fake-io.ts';

let cwd = '';
beforeAll(() => {
  cwd = mkdtempSync(join(tmpdir(), 'pullin-typed-'));
  copyFileSync('examples/linnet-garage.yaml', join(cwd, 'shop.yaml'));
  copyFileSync('examples/wrong/planer-on-break-tab.yaml', join(cwd, 'wrong.yaml'));
  writeFileSync(join(cwd, 'broken.yaml'), 'format: 1\nparts: [\n');
});
afterAll(() => rmSync(cwd, { recursive: true }));

const ESCAPE = '\u001b[';

describe('--color', () => {
  test.each([
    ['check a.yaml', 'check a.yaml', 'auto'],
    ['check --color a.yaml', 'check a.yaml', 'always'],
    ['check a.yaml --colour', 'check a.yaml', 'always'],
    ['check --colour=never a.yaml', 'check a.yaml', 'never'],
    ['check --color never a.yaml', 'check a.yaml', 'never'],
    ['--color=always check a.yaml', 'check a.yaml', 'always'],
    ['check --color=always --colour auto a.yaml', 'check a.yaml', 'auto'],
    // Typed wrong, and left for the command to refuse.
    ['check --color alwasy a.yaml', 'check --color alwasy a.yaml', 'auto'],
    ['check --color=pink a.yaml', 'check --color=pink a.yaml', 'auto'],
    ['check -- --color a.yaml', 'check -- --color a.yaml', 'auto'],
  ])('%s', (line, words, colour) => {
    expect(withoutColour(line.split(' '))).toEqual({ words: words.split(' '), colour });
  });

  it('is in the help of every command, and refuses what it does not know', async () => {
    const { out } = await pullin(['--help']);
    const names = [...out.slice(out.indexOf('Commands:')).matchAll(/^ {2}([a-z]+)/gm)].map(([, n]) => n!);
    for (const name of names.filter((one) => one !== 'help')) {
      const words = [name, ...(['add', 'remove'].includes(name) ? ['gate'] : [])];
      expect((await pullin([...words, '--help'])).out).toContain('--color <when>');
      const { status, err } = await pullin([...words, '--colour=nevr', 'x']);
      expect([name, status, err.includes('Did you mean never?')]).toEqual([name, 2, true]);
    }
  });
});

test('the help of a command is asked for in two ways', () => {
  expect(withHelpLast(['help', 'add', 'gate'])).toEqual(['add', 'gate', '--help']);
  expect(withHelpLast(['help'])).toEqual(['help']);
  expect(withHelpLast(['check', 'help'])).toEqual(['check', 'help']);
});

/** A command line for every command, with a plan that gives it something to print. */
const LINES = [
  'check wrong.yaml',
  'table shop.yaml',
  'read shop.yaml',
  'mend wrong.yaml',
  'mend --diff wrong.yaml',
  'add gate another --length 1m --dry-run shop.yaml',
  'wirelist shop.yaml',
  'materials shop.yaml',
  'explain coil',
  'schema table',
  'completion fish',
  'draw shop.yaml',
  ...(WHOLE
    ? ['meter shop.yaml', 'faults shop.yaml', 'hunt shop.yaml', 'size shop.yaml', 'sheet -o - shop.yaml']
    : []),
];

describe('what is printed', () => {
  const outcome = (line: string, around: object): Promise<Outcome> =>
    pullin(line.split(' '), { cwd, stages: STAGES, ...around });

  test.each(LINES)(
    'by %s is plain in a pipe unless colours are asked for, and where they are not wanted',
    async (line) => {
      const piped = await outcome(line, {});
      expect(piped.out + piped.err).not.toContain(ESCAPE);
      expect((await outcome(line, { isTTY: true, env: { NO_COLOR: '1' } })).out).not.toContain(ESCAPE);
      expect(
        (await outcome(`${line} --color=never`, { isTTY: true, env: { FORCE_COLOR: '1' } })).out,
      ).not.toContain(ESCAPE);
      const forced = await outcome(`${line} --colour`, {});
      // Colours are all that is added, and nothing for a program to read gets any.
      expect(forced.out.replaceAll(COLOURS, '')).toBe(piped.out);
      if (/--diff|schema|completion|-o -/.test(line)) expect(forced.out).toBe(piped.out);
      if (/^check/.test(line)) expect(forced.out).toContain(ESCAPE);
    },
  );

  test.each(['check --json wrong.yaml', 'table --format csv shop.yaml', 'table --format markdown shop.yaml'])(
    'by %s never has colours',
    async (line) => {
      expect((await outcome(`${line} --color=always`, {})).out).not.toContain(ESCAPE);
    },
  );
});

const COLOURS = new RegExp(`${'\\u001b'}\\[[0-9;]*m`, 'g');

describe('what is said on standard error', () => {
  async function said(args: readonly string[], stderr: { isTTY?: boolean }, env: Record<string, string>) {
    let text = '';
    const quiet = { write: () => true };
    const io = {
      stdin: (async function* () {})(),
      stdout: { ...quiet, isTTY: true },
      stderr: { ...stderr, write: (part: string) => (text += part) },
      env,
      cwd,
    };
    const status = await main(args, io);
    return { status, text };
  }

  test.each([
    [['check', 'no.yaml'], {}, {}, false],
    [['check', 'no.yaml'], { isTTY: true }, {}, true],
    [['check', 'no.yaml'], { isTTY: true }, { NO_COLOR: '1' }, false],
    [['check', 'no.yaml'], {}, { FORCE_COLOR: '1' }, true],
    [['check', 'no.yaml', '--color=never'], { isTTY: true }, {}, false],
    [['chekc', '--color'], {}, {}, true],
    [['check', 'broken.yaml'], { isTTY: true }, {}, true],
    [['check', 'broken.yaml'], {}, {}, false],
  ] as const)('%j on %j with %j: in colour %s', async (args, stream, env, coloured) => {
    const { status, text } = await said(args, stream, env);
    expect(status).toBe(2);
    expect(text.includes(ESCAPE)).toBe(coloured);
    expect(text.replaceAll(COLOURS, '')).toBe(
      (
        await said(
          args.filter((a) => !a.startsWith('--c')),
          {},
          {},
        )
      ).text,
    );
  });

  it('has no colours but ours, whatever a file is called', async () => {
    const { text } = await said(['check', '\u001b[31mpullin: x.yaml:1:2: '], { isTTY: true }, {});
    expect(text.replaceAll(COLOURS, '')).not.toContain('\u001b');
    expect(text).toContain('\\u001b[31m');
  });
});

describe('exit statuses', () => {
  /** Command lines with the status that each ends with. */
  const ENDS: readonly (readonly [string, number])[] = [
    ['check shop.yaml', 0],
    ['check wrong.yaml', 1],
    ['check broken.yaml', 2],
    ['table wrong.yaml', 0],
    ['table broken.yaml', 2],
    ['read wrong.yaml', 0],
    ['read shop.yaml X', 2],
    ['mend shop.yaml', 0],
    ['mend wrong.yaml', 1],
    ['mend no.yaml', 2],
    ['add gate another --length 1m --dry-run shop.yaml', 0],
    ['add gate another --length 1m --dry-run wrong.yaml', 1],
    ['add gate another --length 1m no.yaml', 2],
    ['remove gate nobody --dry-run shop.yaml', 2],
    ['draw --size a5 shop.yaml', 2],
    ['wirelist --reel 1cm shop.yaml', 2],
    ['wirelist wrong.yaml', 0],
    ['materials no.yaml', 2],
    ['explain coil', 0],
    ['explain nothing-like-it', 2],
    ['schema', 0],
    ['schema nothing', 2],
    ['completion bash', 0],
    ['completion tcsh', 2],
    ['new --title X', 2],
    ['hunt no.yaml', 2],
  ];

  test.each(ENDS)('%s: %i, and the help of the command tells it', async (line, expected) => {
    const { status, err } = await pullin(line.split(' '), { cwd, stages: STAGES });
    expect(status, err).toBe(expected);
    const words = line.split(' ').slice(0, /^(add|remove)/.test(line) ? 2 : 1);
    const { out } = await pullin([...words, '--help']);
    const told = /Exit status: ([\s\S]*?)\.\nExamples:/.exec(out)![1]!.replaceAll(/\s+/g, ' ').split('; ');
    const numbers = told.map((one) => Number.parseInt(one, 10));
    expect(numbers).toContain(expected);
    expect(numbers).toEqual([...numbers].sort((a, b) => a - b));
    expect(told).toContain('70 a mistake in pullin');
  });
});
