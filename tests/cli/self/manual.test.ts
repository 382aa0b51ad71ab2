/** The manual page: that it has every command, and that formatters that are not ours take every text for what it is. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import pkg from '../../../package.json' with { type: 'json' };
import { manual } from '../../../src/cli/main.ts';
import { literal, macro, roff } from '../../../src/cli/self/roff.ts';
import { STATUS } from '../../../src/cli/status.ts';
import { share } from '../../helpers/share.ts';
import { pullin } from '../fake-io.ts';

const missing = (tool: string) =>
  process.env.PULLIN_TOOLS !== '1' && spawnSync(tool, ['-h']).error !== undefined
    ? `${tool} is not installed`
    : undefined;

/** What bold print is made of: a letter, back, and the letter again. */
const OVERSTRUCK = new RegExp(`.${String.fromCharCode(8)}`, 'gu');

/** In columns enough that nothing breaks, without overstrikes. */
function formatted(page: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'pullin-manual-'));
  try {
    writeFileSync(join(folder, 'page.1'), page);
    const { stdout, status, stderr } = spawnSync(
      'mandoc',
      ['-Tutf8', '-Owidth=400', join(folder, 'page.1')],
      { encoding: 'utf8' },
    );
    if (status === null) throw new Error(stderr);
    return stdout.replace(OVERSTRUCK, '');
  } finally {
    rmSync(folder, { recursive: true });
  }
}

describe('the manual page', () => {
  it('has the sections in the order that manuals have them', async () => {
    const sections = [...(await manual()).matchAll(/^\.SH (.*)$/gm)].map(([, name]) => name);
    // man-pages(7): NAME, SYNOPSIS, DESCRIPTION, then what is of this command, EXIT STATUS, ENVIRONMENT, EXAMPLES, SEE ALSO.
    expect(sections).toEqual([
      'NAME',
      'SYNOPSIS',
      'DESCRIPTION',
      'COMMANDS',
      'EXIT STATUS',
      'ENVIRONMENT',
      'EXAMPLES',
      'SEE ALSO',
    ]);
    expect(pkg.man).toBe('dist/pullin.1');
  });

  it('has every command and every option, the caution, and every exit status', async () => {
    const page = await manual();
    const { out } = await pullin(['--help']);
    for (const [, name] of out.slice(out.indexOf('Commands:')).matchAll(/^ {2}([a-z]+)/gm)) {
      if (name === 'help') continue;
      const words = [name!, ...(['add', 'remove'].includes(name!) ? ['gate'] : [])];
      const at = page.indexOf(`.SS "pullin ${words.join(' ')}"`);
      expect([name, at > 0]).toEqual([name, true]);
      const own = page.slice(at, page.indexOf('\n.S', at + 1));
      const { out: help } = await pullin([...words, '--help']);
      for (const [, long] of help.matchAll(/^ {2}(?:-\w, )?--([a-z-]+)/gm))
        if (long !== 'help')
          expect([name, long, own.includes(roff(`--${long}`))]).toEqual([name, long, true]);
    }
    for (const status of Object.values(STATUS)) expect(page).toContain(`\n\\fB${status}\\fR\n`);
    expect(page).toContain('mains kills');
    expect(page).not.toMatch(/undefined|\[object/);
  });

  const reason = missing('mandoc') ?? missing('groff');
  if (reason !== undefined) {
    it.skip(`is not tried in a formatter: ${reason}`, () => {});
    return;
  }

  it('is clean to mandoc and to groff', async () => {
    const page = await manual();
    const lint = spawnSync('mandoc', ['-Tlint'], { input: page, encoding: 'utf8' });
    // A page that is the same from every build of a version has no date.
    const said = lint.stdout.split('\n').filter((line) => line !== '' && !line.includes('missing date'));
    expect(said).toEqual([]);
    const groff = spawnSync('groff', ['-man', '-Tutf8', '-ww', '-z'], { input: page, encoding: 'utf8' });
    expect([groff.status, groff.stderr]).toEqual([0, '']);
  });

  it('shows any text as it is', () => {
    // Spaces at either end and in a row are for filling.
    const text = fc
      .array(fc.constantFrom(...'.\'\\-~^`"|a Bé°×{}()[]*$&;'), { minLength: 1, maxLength: 12 })
      .map((letters) => letters.join('').trim().replace(/ +/g, ' '))
      .filter((line) => line !== '');
    const all = fc.sample(text, { numRuns: share(400), seed: Number(process.env.FC_SEED ?? 1) });
    const lines = [...all, '.SH NAME', "'br", '\\fBbold', '.', '-\\- \\(dq', 'a\\', '.\\" gone', "'", '"'];
    const page = [
      '.TH X 1 2026-01-01',
      '.SH TEXT',
      ...lines.flatMap((line) => ['.PP', `A:${'\n'}${literal(line)}`, ':Z']),
    ].join('\n');
    const shown = [...formatted(page).matchAll(/A: (.*?) {1,2}:Z/g)].map(([, words]) => words);
    expect(shown).toEqual(lines);
  });

  it('shows any words of a macro as they are', () => {
    const words = ['a "b" c', '.SH', '\\fB', '--x', "it's"];
    const page = ['.TH X 1 2026-01-01', '.SH TEXT', ...words.map((word) => macro('SS', word))].join('\n');
    const shown = formatted(page)
      .split('\n')
      .map((line) => line.trim());
    for (const word of words) expect(shown).toContain(word);
  });
});
