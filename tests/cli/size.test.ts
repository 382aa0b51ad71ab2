/** `pullin size` */
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { STAGES } from '../../src/cli/stages.ts';
import type { Size } from '../../src/lists/size/size-model.ts';
import { examplePath } from '../helpers/example-plans.ts';
import { WHOLE } from '../helpers/share.ts';
import { fileOf, textOf } from '../lists/size/moved-text.ts';
import { pullin } from './fake-io.ts';

const LANE = examplePath('saltmarsh-lane');
const WRONG = examplePath('wrong/mains-core-on-coil');
let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'pullin-size-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const run = (...args: string[]) => pullin(['size', ...args], { stages: STAGES, cwd: folder });

describe('pullin size', () => {
  it.runIf(WHOLE)(
    'prints text with a drawing beside it, and does not write over a file unasked',
    async () => {
      const { status, out, err } = await run(LANE, '-o', 'lane.svg');
      expect(status).toBe(0);
      expect(err).toMatch(/^lane\.svg: a sheet of A4/);
      for (const words of [
        'Sizes for Saltmarsh Lane',
        'Thinnest wire',
        'How far the farthest gate could be',
        'contact marked 1-1/2 hp at 120 V AC',
        '[conductor-unprotected]',
        'no approval',
      ])
        expect(out).toContain(words);
      expect(out.split('\n').every((l) => l.length <= 80)).toBe(true);
      const svg = readFileSync(join(folder, 'lane.svg'), 'utf8');
      expect(svg.match(/class="gauge"/g)).toHaveLength(6);
      for (const gauge of ['14 AWG', '24 AWG', 'bandsaw', 'needs 10.59 V']) expect(svg).toContain(gauge);
      const again = await run(LANE, '-o', 'lane.svg');
      expect([again.status, again.err]).toEqual([2, expect.stringMatching(/lane\.svg/)]);
    },
  );

  it.runIf(WHOLE)(
    'tells a size at the end of what was tried without a bound, names no part twice over, and hints at a drawing once',
    async () => {
      const plain = (await run(LANE)).out.replace(/\s+/g, ' ');
      expect(plain).toContain('least current of 100 mA, the least that was tried');
      expect(plain).not.toMatch(/or less, the least/);
      expect(plain).toContain('- the same: least current');
      expect(plain).toContain('-o FILE.svg draws');
      const drawn = await run(LANE, '-o', 'once.svg');
      expect(drawn.out).not.toContain('-o FILE.svg draws');
    },
  );

  it.runIf(WHOLE)('prints JSON and Markdown with a what-if at the head', async () => {
    const json: Size = JSON.parse((await run(LANE, '--json', '--with', 'bell=18 AWG')).out);
    expect(json).toMatchObject({ format: 1, with: ['bell: gauge 18 AWG'], check: { verdict: 'pass' } });
    expect(json.plot!.lines.find((l) => l.own)!.gauge).toBe('18 AWG');
    const markdown = await run(WRONG, '--format', 'markdown');
    expect(markdown.out).toMatch(/^# Sizes for /);
    expect(markdown.out).toContain('this plan fails the check');
    expect(markdown.out).toContain('the wiring comes first');
    expect(markdown.status).toBe(0);
  });

  it.each([
    [['--with', 'colector=3 hp'], /^pullin: --with "colector=3 hp": no part .* did you mean collector\?/],
    [['--with', 'K1=7 kg'], /is not understood here; a relay takes coil\.rated/],
    [['--with', '\u001b[2J=1'], /\\x1b\[2J/],
    [['-o', 'lane.png'], /It takes a file that ends in \.svg/],
    [['--json', '--format', 'markdown'], /cannot be used with/],
  ])('says what is wrong with %j', async (args, problem) => {
    const { status, out, err } = await run(LANE, ...args);
    expect([status, out]).toEqual([2, '']);
    expect(err).toMatch(problem);
  });

  it('tells a plan that is not there, or has nothing to draw', async () => {
    expect((await run('nowhere.yaml')).err).toContain('there is no such file');
    const nothing = await run(WRONG, '-o', 'wrong.svg');
    expect([nothing.status, nothing.err]).toEqual([2, expect.stringContaining('nothing to draw')]);
    expect(existsSync(join(folder, 'wrong.svg'))).toBe(false);
  });

  it.runIf(WHOLE)('lets no name out of its place in the drawing', async () => {
    const evil = '</text><script>alert(1)</script>';
    const text = textOf(fileOf('saltmarsh-lane')).replace(/^title: .*$/m, `title: '${evil} \u202e & "x"'`);
    writeFileSync(join(folder, 'evil.yaml'), text);
    const { status, out } = await run('evil.yaml', '-o', '-');
    expect(status).toBe(0);
    expect(out).not.toContain('<script');
    expect(out).not.toContain('\u202e');
    expect(out).toContain('&lt;script&gt;');
    expect(out).toMatch(/^<svg /);
  });
});
