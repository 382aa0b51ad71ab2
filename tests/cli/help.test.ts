/** What every command has alike: how its help ends, how it words what is typed wrong, and what its options are called. */
import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { STAGES } from '../../src/cli/stages.ts';
import { WHOLE } from '../helpers/share.ts';
import { pullin } from './fake-io.ts';

/** Every command, those of two words whole. */
const COMMANDS = [
  'new',
  'check',
  'table',
  'read',
  'mend',
  'add gate',
  'remove gate',
  'meter',
  'faults',
  'hunt',
  'draw',
  'wirelist',
  'materials',
  'size',
  'page',
  'sheet',
  'explain',
  'schema',
  'completion',
];
/** Their examples are run in the long tests. */
const SLOW = new Set(
  COMMANDS.filter((c) => !['check', 'read', 'table', 'explain', 'schema', 'completion'].includes(c)),
);
const helpOf = async (command: string) => (await pullin([...command.split(' '), '--help'])).out;

/** A command line as a shell takes it apart. */
const wordsOf = (line: string) =>
  [...line.matchAll(/'([^']*)'|([^' ]+)/g)].map(([, quoted, plain]) => quoted ?? plain!);

let cwd: string;
beforeEach(() => {
  cwd = mkdtempSync(join(tmpdir(), 'pullin-help-'));
});
afterEach(() => rmSync(cwd, { recursive: true }));

test('these are all the commands there are', async () => {
  const { out } = await pullin(['--help']);
  const listed = out
    .slice(out.indexOf('Commands:'))
    .split('\n')
    .flatMap((line) => /^ {2}([a-z]+)/.exec(line)?.[1] ?? [])
    .filter((name) => name !== 'help');
  expect(listed).toEqual([...new Set(COMMANDS.map((c) => c.split(' ')[0]))]);
});

describe.each(COMMANDS)('the help of %s', (command) => {
  test('says what the exit statuses mean and ends with two examples that work', async () => {
    const help = await helpOf(command);
    expect(help).toMatch(/[Ee]xit\s+status/);
    const after = help.slice(help.indexOf('\nExamples:\n') + 11);
    const lines = after
      .trimEnd()
      .replace(/\\\n +/g, '')
      .split('\n');
    expect(lines).toHaveLength(2);
    for (const line of lines) {
      const [name, ...words] = wordsOf(line);
      expect(name).toBe('pullin');
      expect(words.join(' ')).toContain(command);
      // With no answers it asks, and its own tests answer.
      if (words.join() === 'new' || (SLOW.has(command) && !WHOLE)) continue;
      copyFileSync('examples/saltmarsh-lane.yaml', join(cwd, 'shop.yaml'));
      // A watch ends when it is stopped, and its tests do that.
      const { status, err } = await pullin(
        words.filter((word) => word !== '--watch'),
        // Of a page the browser's part is made by the build.
        { cwd, stages: { ...STAGES, page: () => '<!doctype html>' } },
      );
      const works = [0, 1, 3].includes(status);
      expect([line, works ? '' : err]).toEqual([line, '']);
    }
  });
});

test('the same options have the same names', async () => {
  const known = /^ {2}(?:-[a-z], )?--([a-z-]+)/gm;
  const all = new Set<string>();
  for (const command of COMMANDS)
    for (const [, name] of (await helpOf(command)).matchAll(known)) all.add(name!);
  for (const other of ['columns', 'colour', 'out', 'out-file', 'overwrite', 'as', 'form'])
    expect(all).not.toContain(other);
  for (const command of [
    'check',
    'table',
    'read',
    'mend',
    'add gate',
    'meter',
    'wirelist',
    'materials',
    'explain',
  ]) {
    const help = await helpOf(command);
    expect([command, help.includes('--width <columns>')]).toEqual([command, true]);
    expect([command, help.includes('--json')]).toEqual([command, true]);
  }
});

describe('what is typed wrong', () => {
  test.each([
    [
      'chek shop.yaml',
      'pullin: unknown command \'chek\'\n(Did you mean check?)\n"pullin --help" lists the commands.\n',
    ],
    [
      'chek --json',
      'pullin: unknown command \'chek\'\n(Did you mean check?)\n"pullin --help" lists the commands.\n',
    ],
    [
      'chek --help',
      'pullin: unknown command \'chek\'\n(Did you mean check?)\n"pullin --help" lists the commands.\n',
    ],
    [
      'help chek',
      'pullin: unknown command \'chek\'\n(Did you mean check?)\n"pullin --help" lists the commands.\n',
    ],
    [
      'remove gaet x',
      'pullin: unknown command \'gaet\'\n(Did you mean gate?)\n"pullin remove --help" lists the commands.\n',
    ],
    ['shop.yaml', "pullin: unknown command 'shop.yaml'\nTo check that plan: pullin check shop.yaml\n"],
    ['check', 'pullin: missing required argument \'plan\'\n"pullin check --help" says what it takes.\n'],
    ['check no.yaml', 'pullin: no.yaml: there is no such file\n'],
    [
      'draw --widht 3 x',
      'pullin: unknown option \'--widht\'\n(Did you mean --width?)\n"pullin draw --help" says what it takes.\n',
    ],
    [
      'check --jsno x',
      'pullin: unknown option \'--jsno\'\n(Did you mean --json?)\n"pullin check --help" says what it takes.\n',
    ],
    [
      'check --colour alwasy x',
      "pullin: option '--colour <when>' argument 'alwasy' is invalid. Allowed choices are always, never, auto. Did you mean always?\n\"pullin check --help\" says what it takes.\n",
    ],
    [
      'table --format cvs x',
      "pullin: option '--format <format>' argument 'cvs' is invalid. Allowed choices are text, markdown, csv. Did you mean csv?\n\"pullin table --help\" says what it takes.\n",
    ],
    [
      'explain gate-on-wrong-tb',
      'pullin: there is no finding or caution called "gate-on-wrong-tb"; did you mean gate-on-wrong-tab?\n',
    ],
    [
      'explain nonsense',
      'pullin: there is no finding or caution called "nonsense"; "pullin explain" lists them all\n',
    ],
  ])('%s', async (line, expected) => {
    const { status, err } = await pullin(line.split(' '), { cwd, stages: STAGES });
    expect([status, err]).toEqual([2, expected]);
  });
});

describe('explain', () => {
  test('lists what begins so', async () => {
    const { out, status } = await pullin(['explain', 'coil'], { stages: STAGES });
    expect(status).toBe(0);
    for (const id of ['coil-too-low', 'coil-too-high', 'coil-kind']) expect(out).toContain(id);
    expect(out).not.toContain('gate-on-wrong-tab');
    const { out: told } = await pullin(['explain', 'c-unpl'], { stages: STAGES });
    expect(told).toContain('C-UNPLUG');
  });
  test('gives them as data', async () => {
    const { out } = await pullin(['explain', '--json', 'coil-too'], { stages: STAGES });
    expect((JSON.parse(out) as { id: string }[]).map(({ id }) => id).sort()).toEqual([
      'coil-too-high',
      'coil-too-low',
    ]);
  });
});
