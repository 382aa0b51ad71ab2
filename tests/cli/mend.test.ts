import {
  chmodSync,
  existsSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import fsp from 'node:fs/promises';
import { syncBuiltinESMExports } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { STAGES, type Stages } from '../../src/cli/stages.ts';
import type { Edit } from '../../src/edit/edits.ts';
import type { Mended, Repair } from '../../src/repair/mended.ts';
import { pullin, type Surroundings } from './fake-io.ts';

const LANE = `# Lane
format: 1
parts:
  a: {kind: joint}
  b: {kind: joint}
  c: {kind: joint}
runs:
  - {link: [a, b]} # é
  - {link: [b, c]}
`;
const MENDED = LANE.replace('[a, b]', '[a, c]');
const DIFF = `--- lane.yaml
+++ lane.yaml
@@ -5,5 +5,5 @@
   b: {kind: joint}
   c: {kind: joint}
 runs:
-  - {link: [a, b]} # é
+  - {link: [a, c]} # é
   - {link: [b, c]}
`;

const repair = (...edits: Edit[]): Repair => ({
  edits,
  words: ['Move the link from b to c.'],
  asLikely: true,
  uncovers: [],
  dark: [],
  ends: 1,
  metres: 0,
  before: [],
  after: [],
  alike: 0,
});
const found: Mended = {
  format: 1,
  needed: true,
  repairs: [repair({ do: 'move', run: 0, core: 0, end: 'b', to: 'c' })],
  tried: 4,
  why: null,
};
const nothing: Mended = { format: 1, needed: false, repairs: [], tried: 0, why: null };
const none: Mended = { ...found, repairs: [], why: 'One end is not enough.' };
/** True stages but for the search. */
const stages = (answer: Mended, meanwhile?: () => void): Stages => ({
  ...STAGES,
  mend: () => {
    meanwhile?.();
    return answer;
  },
});

let cwd = '';
let lane = '';
beforeEach(() => {
  cwd = mkdtempSync(join(tmpdir(), 'pullin-mend-'));
  lane = join(cwd, 'lane.yaml');
  writeFileSync(lane, LANE);
});
afterEach(() => {
  vi.restoreAllMocks();
  syncBuiltinESMExports();
  rmSync(cwd, { recursive: true });
});

/** Another last step of writing, once. What is spied on is the object; the exports follow it. */
function lastStep(rename: typeof fsp.rename) {
  const spy = vi.spyOn(fsp, 'rename').mockImplementationOnce(rename);
  syncBuiltinESMExports();
  return spy;
}

const mend = (args: string, answer: Mended = found, around: Surroundings = {}) =>
  pullin(['mend', ...args.split(' ')], { cwd, stages: stages(answer), ...around });
const leftAlone = (text = LANE) => {
  expect(readFileSync(lane, 'utf8')).toBe(text);
  expect(readdirSync(cwd)).toEqual(['lane.yaml']);
};

describe('what is printed', () => {
  it('the repair, and status 1', async () => {
    const { status, out, err } = await mend('lane.yaml');
    expect([status, err]).toEqual([1, '']);
    expect(out).toMatch(/^The plan can be mended: 1 end to move\.\n\n1\. Move the link from b to c\.\n/);
    expect((await mend('lane.yaml --width 20')).out.split('\n')[0]!.length).toBeLessThanOrEqual(20);
    leftAlone();
  });

  it('nothing to mend with status 0, none found with status 1, whatever is asked for', async () => {
    for (const option of ['', ' --write']) {
      expect(await mend(`lane.yaml${option}`, nothing)).toMatchObject({
        status: 0,
        err: '',
        out: expect.stringMatching(/^Nothing to mend/),
      });
      expect(await mend(`lane.yaml${option}`, none)).toMatchObject({
        status: 1,
        err: '',
        out: expect.stringMatching(/^No repair was found\. One end/),
      });
    }
    expect(await mend('lane.yaml --diff', nothing)).toMatchObject({
      status: 0,
      out: '',
      err: expect.stringMatching(/^Nothing/),
    });
    expect(await mend('lane.yaml --diff', none)).toMatchObject({
      status: 1,
      out: '',
      err: expect.stringMatching(/^No repair/),
    });
    leftAlone();
  });

  it('JSON', async () => {
    for (const [answer, expected] of [
      [found, 1],
      [nothing, 0],
      [none, 1],
    ] as const) {
      const { status, out, err } = await mend('lane.yaml --json', answer);
      expect([status, err]).toEqual([expected, '']);
      expect(JSON.parse(out)).toEqual(answer);
    }
  });

  it('a diff', async () => {
    expect(await mend('lane.yaml --diff')).toEqual({ status: 1, out: DIFF, err: '' });
    const piped = await mend('- --diff', found, { stdin: [LANE] });
    expect(piped).toEqual({ status: 1, out: DIFF.replaceAll(' lane.yaml', ' standard input\t'), err: '' });
    leftAlone();
  });

  it('a diff byte by byte into a file, without control characters on a terminal', async () => {
    const odd = `\ufeff${LANE.replace('# é', '# \u202e')}`.replaceAll('\n', '\r\n');
    writeFileSync(lane, odd);
    expect((await mend('lane.yaml --diff')).out).toContain(
      '-  - {link: [a, b]} # \u202e\r\n+  - {link: [a, c]} # \u202e\r\n',
    );
    const seen = (await mend('lane.yaml --diff', found, { isTTY: true })).out;
    expect(seen).toContain('+  - {link: [a, c]} # \\u202e\n');
    expect(seen).not.toContain('\r');
  });

  it('help, and command lines that cannot be', async () => {
    expect((await mend('--help')).out).toMatch(/pullin mend .*<plan>[\s\S]*--write[\s\S]*Exit status/);
    for (const args of [
      'lane.yaml --diff --write',
      'lane.yaml --json --diff',
      'lane.yaml --write --json',
      'lane.yaml --width 3',
      'no.yaml',
    ])
      expect(await mend(args)).toMatchObject({ status: 2, out: '' });
    writeFileSync(lane, 'format: 1\n');
    expect(await mend('lane.yaml --write')).toMatchObject({ status: 2, out: '' });
  });
});

describe('--write', () => {
  it('changes the file, keeps its mode, leaves nothing beside it, and ends with 0', async () => {
    chmodSync(lane, 0o640);
    const { status, out, err } = await mend('lane.yaml --write');
    expect([status, err]).toEqual([0, '']);
    expect(out).toMatch(/^Written into lane\.yaml:\n\n1\. Move the link/);
    leftAlone(MENDED);
    expect(statSync(lane).mode & 0o7777).toBe(0o640);
  });

  it('keeps a byte order mark and the line ends of Windows', async () => {
    const odd = (text: string) => `\ufeff${text.replaceAll('\n', '\r\n')}`;
    writeFileSync(lane, odd(LANE));
    expect((await mend('lane.yaml --write')).status).toBe(0);
    leftAlone(odd(MENDED));
  });

  it('follows a link, which stays one', async () => {
    const elsewhere = join(cwd, 'elsewhere');
    mkdirSync(elsewhere);
    symlinkSync(lane, join(elsewhere, 'link.yaml'));
    expect((await mend('elsewhere/link.yaml --write')).status).toBe(0);
    expect(lstatSync(join(elsewhere, 'link.yaml')).isSymbolicLink()).toBe(true);
    expect(readFileSync(lane, 'utf8')).toBe(MENDED);
    expect(readdirSync(elsewhere)).toEqual(['link.yaml']);
    expect(readdirSync(cwd).sort()).toEqual(['elsewhere', 'lane.yaml']);
  });

  it('refuses standard input', async () => {
    expect(await mend('- --write', found, { stdin: [LANE] })).toMatchObject({
      status: 2,
      out: '',
      err: expect.stringMatching(/needs a file/),
    });
  });

  it('refuses a file that has changed meanwhile, or gone', async () => {
    const later = LANE.replace('# Lane', '# Lane, second thoughts');
    const changed = await mend('lane.yaml --write', found, {
      stages: stages(found, () => writeFileSync(lane, later)),
    });
    expect(changed).toMatchObject({
      status: 2,
      out: '',
      err: expect.stringMatching(/has changed since it was read/),
    });
    leftAlone(later);
    writeFileSync(lane, LANE);
    const gone = await mend('lane.yaml --write', found, { stages: stages(found, () => rmSync(lane)) });
    expect(gone).toMatchObject({ status: 2, out: '', err: expect.stringMatching(/no longer there/) });
    expect(existsSync(lane)).toBe(false);
    expect(readdirSync(cwd)).toEqual([]);
  });

  it('leaves the old file, and nothing beside it, when the last step fails', async () => {
    lastStep(() => Promise.reject(Object.assign(new Error('no'), { code: 'EACCES' })));
    const { status, out, err } = await mend('lane.yaml --write');
    expect([status, out]).toEqual([2, '']);
    expect(err).toBe('pullin: lane.yaml: could not be written, so it is left as it is: permission denied\n');
    leftAlone();
  });

  it('has the whole new text beside the file before the name changes hands', async () => {
    const rename = lastStep(async (from) => {
      expect(readFileSync(String(from), 'utf8')).toBe(MENDED);
      expect(readFileSync(lane, 'utf8')).toBe(LANE);
      rmSync(String(from));
    });
    expect((await mend('lane.yaml --write')).status).toBe(0);
    expect(rename).toHaveBeenCalledTimes(1);
  });

  // The administrator may write everywhere.
  it.skipIf(process.getuid?.() === 0)('refuses a read-only file and a read-only folder', async () => {
    chmodSync(lane, 0o444);
    expect(await mend('lane.yaml --write')).toMatchObject({
      status: 2,
      err: expect.stringMatching(/permission denied/),
    });
    chmodSync(lane, 0o644);
    chmodSync(cwd, 0o555);
    expect(await mend('lane.yaml --write')).toMatchObject({
      status: 2,
      err: expect.stringMatching(/permission denied/),
    });
    chmodSync(cwd, 0o755);
    leftAlone();
  });

  it('refuses a repair that the file cannot take, as --diff does', async () => {
    const alias = LANE.replace('[a, b]', '&l [a, b]').replace('[b, c]', '*l');
    writeFileSync(lane, alias);
    for (const option of ['--write', '--diff'])
      expect(await mend(`lane.yaml ${option}`)).toMatchObject({
        status: 2,
        out: '',
        err: expect.stringMatching(/make it by hand\. .*anchor/),
      });
    leftAlone(alias);
  });
});
