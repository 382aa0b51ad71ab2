/** The built command with workers: the same bytes as without, one that dies of hunger, and Ctrl-C in the midst of it. */
import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { planOf } from '../../bench/plans.mjs';
import { builtCommand } from '../../helpers/command.ts';
import { exampleNames, examplePath } from '../../helpers/example-plans.ts';
import { runOf } from '../../report/sarif/sarif-schema.ts';

let cwd = '';
beforeAll(() => {
  cwd = mkdtempSync(join(tmpdir(), 'pullin-workers-'));
  for (let k = 0; k < 60; k++) writeFileSync(join(cwd, `p${k}.yaml`), planOf(2 + (k % 7), 'chain'));
  writeFileSync(join(cwd, 'large.yaml'), planOf(1500, 'star'));
  writeFileSync(join(cwd, 'junk.yaml'), 'format: 1\nparts: {a b: {kind: "\u001b[31m"}}\n');
});
afterAll(() => rmSync(cwd, { recursive: true }));

function pullin(args: readonly string[], around: { readonly env?: object; readonly input?: string } = {}) {
  const { env = {}, input = '' } = around;
  const done = spawnSync(process.execPath, [builtCommand(), 'check', ...args], {
    cwd,
    encoding: 'utf8',
    input,
    env: { ...process.env, NODE_OPTIONS: '', ...env },
    maxBuffer: 1e9,
  });
  return { status: done.status, out: done.stdout, err: done.stderr };
}

const some = Array.from({ length: 7 }, (_, k) => `p${k}.yaml`);

describe('with workers', () => {
  it.each([
    [['--json'], ['2', '5']],
    [[], ['2']],
    [['--all', '--width', '60', '--color', 'always'], ['3']],
    [['--quiet'], ['2']],
    [['--format', 'sarif'], ['3']],
  ])('%j gives the same bytes as without, on both streams, with %j at once', (options, counts) => {
    const wrong = exampleNames('wrong').slice(0, 2).map(examplePath);
    const files = [...wrong, ...some, 'absent.yaml', 'junk.yaml', '-', 'p3.yaml'];
    const around = { input: planOf(3, 'star') };
    const one = pullin([...options, '--at-once', '1', ...files], around);
    expect(one.status).toBe(2);
    for (const count of counts)
      expect(pullin([...options, '--at-once', count, ...files], around)).toEqual(one);
  });

  it('a plan for which the memory does not suffice is told in its place, and the others are checked', () => {
    // A limit that small plans do not feel and 1500 gates do.
    const env = { NODE_OPTIONS: '--max-old-space-size=32' };
    const files = ['p0.yaml', 'large.yaml', ...some];
    const json = pullin(['--json', '--at-once', '2', ...files], { env });
    expect(json.status).toBe(70);
    const entries = JSON.parse(json.out) as { readonly verdict?: string; readonly ownMistake?: boolean }[];
    expect(entries.map(({ verdict }) => verdict)).toEqual(
      files.map((f) => (f === 'large.yaml' ? undefined : 'pass')),
    );
    expect(entries[1]).toMatchObject({ file: 'large.yaml', ownMistake: true });
    expect(json.err).toMatch(/^large\.yaml: pullin stopped because of a mistake of its own.*memory/);
  });
});

/** Ends the command with a signal once it has written so much. */
async function endedBy(signal: NodeJS.Signals, args: readonly string[]) {
  const child = spawn(process.execPath, [builtCommand(), 'check', ...args], { cwd });
  let [out, err] = ['', ''];
  let sent = false;
  child.stdout.on('data', (chunk: Buffer) => {
    out += String(chunk);
    if (out.length > 3_000 && !sent) sent = child.kill(signal);
  });
  child.stderr.on('data', (chunk: Buffer) => {
    err += String(chunk);
  });
  const status = await new Promise((done) => child.on('close', done));
  return { status, out, err };
}

describe('a signal', () => {
  const many = [...Array(20).keys()].flatMap(() => Array.from({ length: 60 }, (_, k) => `p${k}.yaml`));

  it.each([
    ['SIGINT', 130, '1'],
    ['SIGINT', 130, '2'],
    ['SIGTERM', 143, '2'],
  ] as const)(
    '%s leaves a whole array behind and ends with %d, with %s at once',
    async (signal, status, count) => {
      const ended = await endedBy(signal, ['--json', '--at-once', count, ...many]);
      expect(ended.status).toBe(status);
      const entries = JSON.parse(ended.out) as { readonly plan: { readonly file: string } }[];
      expect(entries.length).toBeLessThan(many.length);
      expect(entries.map(({ plan }) => plan.file)).toEqual(many.slice(0, entries.length));
      expect(ended.err).toBe(
        `pullin: Cut short after ${entries.length} of ${many.length} plans: in ${entries.length} nothing in this check failed.\n`,
      );
    },
  );

  it('leaves a SARIF log behind that says it is cut short', async () => {
    const ended = await endedBy('SIGINT', [
      '--format',
      'sarif',
      '--at-once',
      '2',
      examplePath(`${exampleNames('wrong')[0]}`),
      ...many,
    ]);
    expect(ended.status).toBe(130);
    expect(runOf(ended.out).invocations[0]).toMatchObject({ executionSuccessful: false, exitCode: 130 });
  });
});
