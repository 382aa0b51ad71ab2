/** What bash, zsh and fish complete, in the shells themselves; and that nothing of a name is ever carried out. */
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { STAGES } from '../../../src/cli/stages.ts';
import { WHOLE } from '../../helpers/share.ts';
import { binOf, completed, missing, type Shell, wordsBy } from '../../helpers/shells.ts';
import { pullin } from '../fake-io.ts';

const SHELLS: readonly Shell[] = ['bash', 'zsh', 'fish'];
const scriptOf = async (shell: string) => (await pullin(['completion', shell], { stages: STAGES })).out;

/** In the place of the command, which is asked in the long tests alone: it answers at once. */
const QUICK = `case "$*" in
*'--names gates '*) printf 'bandsaw\\nplaner\\nrouter\\n' ;;
*'--names terminals '*) printf 'PS1.+\\nPS1.L\\nK1.A1\\nK1.A2\\n' ;;
esac`;

const folder = mkdtempSync(join(tmpdir(), 'pullin-shells-'));
beforeAll(async () => {
  for (const shell of SHELLS) writeFileSync(join(folder, shell), await scriptOf(shell));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** A line as typed, and words that the shell has to offer at its end; `not`: words that it must not. */
interface Case {
  readonly line: string;
  readonly has: readonly string[];
  readonly not?: readonly string[];
}

const CASES: readonly Case[] = [
  { line: 'pullin chec', has: ['check'] },
  { line: 'pullin ', has: ['new', 'check', 'remove', 'explain', 'completion', 'help'], not: ['shop.yaml'] },
  { line: 'pullin add ', has: ['gate'] },
  { line: 'pullin help mat', has: ['materials'] },
  { line: 'pullin check --js', has: ['--json'] },
  { line: 'pullin add gate --', has: ['--after', '--dry-run', '--color'], not: ['--watch', '--names'] },
  { line: 'pullin new --prac', has: ['--practice'] },
  { line: 'pullin check ', has: ['shop.yaml', 'second.yml', 'sub'], not: ['notes.txt', 'planer'] },
  { line: 'pullin check shop.yaml sec', has: ['second.yml'] },
  { line: 'pullin check sub/', has: ['sub/third.yaml'] },
  { line: 'pullin check --quiet --width 60 sh', has: ['shop.yaml'] },
  { line: 'pullin hunt --log no', has: ['notes.txt'] },
  { line: 'pullin check --color ', has: ['always', 'never', 'auto'], not: ['shop.yaml'] },
  { line: 'pullin table --format m', has: ['markdown'], not: ['text'] },
  { line: 'pullin draw --size ', has: ['a4', 'letter'], not: ['shop.yaml'] },
  { line: 'pullin explain gate-on-wrong', has: ['gate-on-wrong-tab'] },
  { line: 'pullin explain C-UNP', has: ['C-UNPLUG'] },
  { line: 'pullin schema mat', has: ['materials'] },
  { line: 'pullin completion ', has: ['bash', 'zsh', 'fish'] },
  { line: 'pullin read shop.yaml --open ', has: ['bandsaw', 'planer', 'router'], not: ['K1', 'shop.yaml'] },
  { line: 'pullin read shop.yaml --open planer,rou', has: ['planer,router'] },
  { line: 'pullin add gate lathe shop.yaml --after pl', has: ['planer'] },
  { line: 'pullin read shop.yaml PS1.', has: ['PS1.+', 'PS1.L'] },
  { line: 'pullin read shop.yaml PS1.+ K1.A', has: ['K1.A1', 'K1.A2'] },
  { line: 'pullin hunt --saw ', has: [], not: ['shop.yaml', 'planer'] },
];

describe.each(SHELLS.filter((shell) => WHOLE || shell === 'bash'))('in %s', (shell) => {
  const reason = missing(shell);
  if (reason !== undefined) {
    it.skip(`nothing is tried: ${reason}`, () => {});
    return;
  }
  const place = (cwd: string, answer: string | undefined = WHOLE ? undefined : QUICK) => ({
    cwd,
    bin: binOf(cwd, answer),
    script: join(folder, shell),
  });

  it.runIf(WHOLE)('commands, options, choices, files and names are offered where they belong', () => {
    const cwd = mkdtempSync(join(folder, 'shop-'));
    copyFileSync('examples/saltmarsh-lane.yaml', join(cwd, 'shop.yaml'));
    mkdirSync(join(cwd, 'sub'));
    for (const name of ['second.yml', 'notes.txt', 'sub/third.yaml']) writeFileSync(join(cwd, name), '');
    const lines = completed(
      shell,
      CASES.map(({ line }) => line),
      place(cwd),
    );
    for (const [i, { line, has, not = [] }] of CASES.entries()) {
      const own = wordsBy(shell, lines[i]!, place(cwd));
      const offered = own
        .slice(line.split(' ').length - 2)
        .map((word) => word.replace(/^--\w+=(?=.)/, '').replace(/[/=]$/, ''));
      expect([line, has.filter((word) => !offered.includes(word))]).toEqual([line, []]);
      expect([line, not.filter((word) => offered.includes(word))]).toEqual([line, []]);
    }
  });

  it.runIf(WHOLE)('the only plan of a folder tells its names before it is typed', () => {
    const cwd = mkdtempSync(join(folder, 'one-'));
    copyFileSync('examples/saltmarsh-lane.yaml', join(cwd, 'shop.yaml'));
    expect(completed(shell, ['pullin remove gate rou'], place(cwd))).toEqual(['pullin remove gate router']);
  });

  it.runIf(WHOLE)('names of files are taken for what they are, and never carried out', () => {
    const cwd = mkdtempSync(join(folder, 'files-'));
    const hostile = [
      '$(touch pwned).yaml',
      '`touch pwned`.yaml',
      'a;touch pwned;.yaml',
      'a&touch pwned&.yaml',
      'two words.yaml',
      `it's "x".yaml`,
      '*.yaml',
      '$'.concat('{IFS}.yaml'),
    ];
    for (const name of hostile) copyFileSync('examples/saltmarsh-lane.yaml', join(cwd, name));
    // In the place of the command, which no name of a file should ever make do more: it writes down what it is asked.
    const own = place(cwd, `printf '%s\\n' "$*" >> '${join(cwd, '.bin', 'asked')}'`);
    const lines = completed(
      shell,
      ['pullin check ', 'pullin check $(tou', "pullin check '$(tou", 'pullin check --quiet t'],
      own,
    );
    expect(wordsBy(shell, lines[0]!, own).slice(1).sort()).toEqual([...hostile].sort());
    expect(wordsBy(shell, lines[3]!, own).at(-1)).toBe('two words.yaml');
    // The name of the plan goes to the command that tells its names.
    completed(
      shell,
      hostile.map((name) => `pullin read '${name.replaceAll("'", "'\\''")}' --open `),
      own,
    );
    const asked = readFileSync(join(cwd, '.bin', 'asked'), 'utf8')
      .trimEnd()
      .split('\n');
    for (const name of hostile) expect(asked.filter((one) => one.endsWith(` --of ${name}`))).not.toEqual([]);
    expect(readdirSync(cwd)).not.toContain('pwned');
  });

  it.runIf(WHOLE)('nor are names out of a plan', () => {
    const cwd = mkdtempSync(join(folder, 'names-'));
    writeFileSync(join(cwd, 'shop.yaml'), '');
    const hostile = [
      '$(touch pwned)',
      '`touch pwned`',
      '$'.concat('{X:=$(touch pwned)}'),
      ';touch pwned;',
      "it's",
      '*',
      'good',
    ];
    writeFileSync(join(cwd, 'names'), `${hostile.join('\n')}\n`);
    const own = place(cwd, 'cat names');
    const lines = completed(
      shell,
      ['pullin remove gate ', 'pullin read shop.yaml --open go', 'pullin read shop.yaml '],
      own,
    );
    expect(wordsBy(shell, lines[0]!, own).slice(2).sort()).toEqual([...hostile].sort());
    expect(wordsBy(shell, lines[1]!, own).at(-1)).toBe('good');
    expect(existsSync(join(cwd, 'pwned'))).toBe(false);
  });
});

describe('the scripts', () => {
  it.each(SHELLS)('%s: every command and every option is in it', async (shell) => {
    const script = await scriptOf(shell);
    const { out } = await pullin(['--help']);
    for (const [, name] of out.slice(out.indexOf('Commands:')).matchAll(/^ {2}([a-z]+)/gm)) {
      expect(script).toContain(name);
      const { out: help } = await pullin([
        name!,
        ...(['add', 'remove'].includes(name!) ? ['gate'] : []),
        '--help',
      ]);
      for (const [, long] of help.matchAll(/^ {2}(?:-\w, )?--([a-z-]+)/gm))
        expect([name, script.includes(long!)]).toEqual([name, true]);
    }
    expect(script).not.toContain('undefined');
  });

  it('are for three shells, and another is told so', async () => {
    expect(await pullin(['completion', 'zhs'], { stages: STAGES })).toMatchObject({
      status: 2,
      err: 'pullin: there is no completion for "zhs"; did you mean zsh?\n',
    });
    expect((await pullin(['completion'], { stages: STAGES })).status).toBe(2);
  });

  it('take names from a plan, none from one that cannot be read', async () => {
    const names = (kind: string, file: string) =>
      pullin(['completion', 'bash', '--names', kind, '--of', file], { stages: STAGES });
    expect((await names('gates', 'examples/saltmarsh-lane.yaml')).out).toBe('bandsaw\nplaner\nrouter\n');
    expect((await names('nothing', 'examples/saltmarsh-lane.yaml')).out).toBe('');
    expect((await names('gates', 'package.json')).out).toBe('');
    expect((await names('gates', 'no.yaml')).status).toBe(2);
  });
});
