/**
 * Files on a disk that is full, and commands that are stopped: what was there stays whole, and nothing is left beside it.
 * The disk is a tmpfs of 200 kB, which only the administrator can mount. What is expected is our own promise.
 */
import { execFileSync, spawn, spawnSync } from 'node:child_process';
import {
  chmodSync,
  copyFileSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { stages } from '../helpers/payloads.ts';
import { pullin } from './fake-io.ts';

const examples = fileURLToPath(new URL('../../examples/', import.meta.url));
const root = fileURLToPath(new URL('../../', import.meta.url));
const disk = mkdtempSync(join(tmpdir(), 'pullin-disk-'));
const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=200k', 'tmpfs', disk]).status === 0;
if (!mounted) console.warn('No full disk is tried: a small one cannot be mounted here.');
afterAll(() => {
  if (mounted) execFileSync('umount', [disk]);
  rmSync(disk, { recursive: true, force: true });
});

const plan = 'saltmarsh-lane.yaml';
const wrong = 'wrong/planer-on-break-tab.yaml';
/** Each command that writes, and the file that it writes; `before` where it stands there already. */
const WRITERS: readonly {
  readonly args: readonly string[];
  readonly file: string;
  readonly before?: string;
}[] = [
  { args: ['page', plan, '-o', 'x.html'], file: 'x.html' },
  { args: ['page', plan, '-o', 'x.html', '--force'], file: 'x.html', before: 'old\n' },
  { args: ['sheet', plan, '-o', 'x.html'], file: 'x.html' },
  { args: ['draw', plan, '-o', 'x.svg'], file: 'x.svg' },
  { args: ['size', plan, '-o', 'x.svg'], file: 'x.svg' },
  { args: ['new', '--answers', 'answers.yaml', '-o', 'x.yaml'], file: 'x.yaml' },
  {
    args: ['mend', '--write', 'wrong.yaml'],
    file: 'wrong.yaml',
    before: readFileSync(examples + wrong, 'utf8'),
  },
  {
    args: ['add', 'gate', 'lathe', 'shop.yaml', '--length', '3 m', '--force'],
    file: 'shop.yaml',
    before: readFileSync(examples + plan, 'utf8'),
  },
  {
    args: ['remove', 'gate', 'planer', 'shop.yaml', '--force'],
    file: 'shop.yaml',
    before: readFileSync(examples + plan, 'utf8'),
  },
  { args: ['hunt', plan, '--saw', 'all shut: off', '--log', 'x.log'], file: 'x.log' },
];

describe.skipIf(!mounted)('a full disk', () => {
  beforeAll(() => {
    copyFileSync(examples + plan, join(disk, plan));
    copyFileSync(`${examples}answers/rookery-lane.answers.yaml`, join(disk, 'answers.yaml'));
  });

  it.each(WRITERS)(
    'leaves everything as it was after $args',
    { timeout: 120_000 },
    async ({ args, file, before }) => {
      if (before !== undefined) writeFileSync(join(disk, file), before);
      const names = readdirSync(disk).sort();
      const fill = join(disk, 'fill');
      // To the last byte.
      spawnSync('sh', ['-c', `cat /dev/zero > '${fill}' 2>/dev/null`]);
      const { status, err } = await pullin(args, { stages, cwd: disk });
      rmSync(fill);
      expect([status, readdirSync(disk).sort()]).toEqual([2, names]);
      expect(err).toMatch(/disk is full|ENOSPC/);
      if (before !== undefined) expect(readFileSync(join(disk, file), 'utf8')).toBe(before);
      if (before !== undefined) rmSync(join(disk, file));
    },
  );
});

/** Ends the built command with a signal once `ready` says so, and tells how it ended. */
async function stopped(
  args: readonly string[],
  cwd: string,
  env: NodeJS.ProcessEnv,
  signal: NodeJS.Signals,
  ready: () => boolean,
) {
  const child = spawn(process.execPath, [join(root, 'bin/pullin.js'), ...args], {
    cwd,
    env,
    stdio: 'ignore',
  });
  const ended = new Promise<NodeJS.Signals | number | null>((done) =>
    child.on('close', (status, by) => done(by ?? status)),
  );
  for (let i = 0; i < 3000 && !ready() && child.exitCode === null; i++)
    await new Promise((next) => setTimeout(next, 10));
  child.kill(signal);
  return ended;
}

describe.skipIf(process.platform === 'win32' || !existsSync(join(root, 'dist/cli.cjs')))('a signal', () => {
  it.each(['SIGINT', 'SIGTERM', 'SIGHUP'] as const)(
    '%s while a browser prints leaves no browser and no folder',
    { timeout: 120_000 },
    async (signal) => {
      const folder = mkdtempSync(join(tmpdir(), 'pullin-signal-'));
      const temporary = join(folder, 'tmp');
      const work = join(folder, 'work');
      for (const f of [temporary, work]) execFileSync('mkdir', [f]);
      // A browser that never comes to an end, and has a child of its own.
      const browser = join(folder, 'chromium');
      const mark = join(folder, 'pid');
      writeFileSync(
        browser,
        `#!/bin/sh\nsleep 300 &\necho "$$ $!" > '${mark}.new'\nmv '${mark}.new' '${mark}'\nwait\n`,
      );
      chmodSync(browser, 0o755);
      const env = { ...process.env, CHROMIUM: browser, TMPDIR: temporary };
      const how = await stopped(['sheet', examples + plan, '-o', 'x.pdf'], work, env, signal, () =>
        existsSync(mark),
      );
      expect(how).toBe(signal);
      expect(readdirSync(work)).toEqual([]);
      expect(readdirSync(temporary)).toEqual([]);
      const pids = readFileSync(mark, 'utf8').trim().split(' ').map(Number);
      await new Promise((done) => setTimeout(done, 200));
      expect(pids.filter(isRunning)).toEqual([]);
      rmSync(folder, { recursive: true });
    },
  );
});

/** Whether a process is there and is no mere entry that nobody has asked for yet. */
function isRunning(pid: number): boolean {
  const state = spawnSync('ps', ['-o', 'stat=', '-p', String(pid)], { encoding: 'utf8' }).stdout.trim();
  return state !== '' && !state.startsWith('Z');
}
