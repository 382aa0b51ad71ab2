/** How `bin/pullin.js` starts: from what V8 made of the script before, where nobody else can have put it there. */
import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
const plan = join(root, 'examples', 'saltmarsh-lane.yaml');
const wrong = join(root, 'examples', 'wrong', 'planer-on-break-tab.yaml');

/** A copy of the package without what the build kept, as a stranger has it from the registry. */
let folder: string;
let home: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'pullin-start-'));
  for (const part of ['bin', 'dist', 'package.json'])
    cpSync(join(root, part), join(folder, part), { recursive: true });
  rmSync(join(folder, 'dist', 'check.cache'), { force: true });
  home = join(folder, 'home');
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function pullin(args: readonly string[], env: Readonly<Record<string, string>> = {}) {
  const { HOME: _, XDG_CACHE_HOME: __, NODE_DISABLE_COMPILE_CACHE: ___, ...rest } = process.env;
  const done = spawnSync(process.execPath, [join(folder, 'bin', 'pullin.js'), ...args], {
    encoding: 'utf8',
    cwd: root,
    env: { ...rest, HOME: home, ...env },
  });
  return { status: done.status, stdout: done.stdout, stderr: done.stderr };
}

const kept = () => join(home, '.cache', 'pullin');
const scripts = () => readdirSync(kept()).filter((name) => name.startsWith('check-'));
const onPosix = process.platform !== 'win32';

describe('the start of a check', () => {
  beforeAll(() => {
    rmSync(home, { recursive: true, force: true });
    mkdirSync(home);
  });

  it('keeps what was made of the script for this user alone, and says the same with it', () => {
    const first = pullin(['check', plan]);
    expect(first).toMatchObject({ status: 0, stderr: '' });
    const [name, ...more] = scripts();
    expect(more).toEqual([]);
    if (onPosix) {
      expect(statSync(kept()).mode & 0o777).toBe(0o700);
      expect(statSync(join(kept(), name!)).mode & 0o777).toBe(0o600);
    }
    const before = statSync(join(kept(), name!)).mtimeMs;
    expect(pullin(['check', plan])).toEqual(first);
    expect(statSync(join(kept(), name!)).mtimeMs).toBe(before);
    expect(pullin(['check', wrong]).status).toBe(1);
  });

  it('says what the same command says among all others', async () => {
    const { main } = (await import(join(root, 'dist', 'cli.cjs'))) as {
      main: (argv: readonly string[], io: object) => Promise<number>;
    };
    for (const args of [
      ['check', plan],
      ['check', '--json', wrong],
      ['check', '--help'],
      ['check', '--nonsense'],
    ]) {
      const texts = { out: '', err: '' };
      const status = await main(args, {
        stdin: (async function* () {})(),
        stdout: { write: (text: string) => (texts.out += text) },
        stderr: { write: (text: string) => (texts.err += text) },
        env: {},
        cwd: root,
      });
      expect(pullin(args), args.join(' ')).toEqual({ status, stdout: texts.out, stderr: texts.err });
    }
  });

  it('makes it anew where it is of another script, cut short or no such thing', () => {
    const file = join(kept(), scripts()[0]!);
    const good = readFileSync(file);
    const first = pullin(['check', plan]).stdout;
    for (const bad of [
      Buffer.from('nothing of the kind'),
      good.subarray(0, good.length / 2),
      Buffer.concat([Buffer.alloc(64, 'a'), good.subarray(64)]),
      Buffer.concat([good, Buffer.from('more')]),
    ]) {
      writeFileSync(file, bad);
      expect(pullin(['check', plan])).toMatchObject({ status: 0, stdout: first, stderr: '' });
      // Lengths differ a little from run to run.
      const anew = readFileSync(file);
      expect(anew.subarray(0, 64)).toEqual(good.subarray(0, 64));
      expect(anew.length).toBeGreaterThan(0.9 * good.length);
    }
  });

  it.runIf(onPosix)('reads nothing that others can write, nor through a link', () => {
    const file = join(kept(), scripts()[0]!);
    const good = readFileSync(file);
    // Were it read, V8 would crash on it or run it: the head is right and the rest is not.
    const planted = Buffer.concat([good.subarray(0, 256), Buffer.alloc(good.length - 256, 0x41)]);
    const first = pullin(['check', plan], { NODE_DISABLE_COMPILE_CACHE: '1' });
    chmodSync(kept(), 0o777);
    writeFileSync(file, planted);
    expect(pullin(['check', plan])).toEqual(first);
    expect(readFileSync(file).equals(planted)).toBe(true);
    chmodSync(kept(), 0o700);
    chmodSync(file, 0o666);
    expect(pullin(['check', plan])).toEqual(first);
    const elsewhere = join(folder, 'planted');
    writeFileSync(elsewhere, planted);
    rmSync(file);
    symlinkSync(elsewhere, file);
    expect(pullin(['check', plan])).toEqual(first);
  });

  it('does without where there is no folder, none can be made, or it is not wanted', () => {
    const first = pullin(['check', plan]);
    writeFileSync(join(folder, 'file'), '');
    for (const env of [
      { HOME: '' },
      { XDG_CACHE_HOME: join(folder, 'file') },
      { XDG_CACHE_HOME: 'relative' },
      { XDG_CACHE_HOME: join(folder, 'unwanted'), NODE_DISABLE_COMPILE_CACHE: '1' },
    ])
      expect(pullin(['check', plan], env)).toEqual(first);
    expect(readdirSync(folder)).not.toContain('unwanted');
  });

  it('leaves but a few files of other versions', () => {
    for (let i = 0; i < 9; i++) writeFileSync(join(kept(), `check-old${i}`), '');
    rmSync(join(kept(), scripts().find((name) => !name.includes('old'))!));
    pullin(['check', plan]);
    expect(scripts().length).toBeLessThanOrEqual(5);
  });
});
