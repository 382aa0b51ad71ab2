/** A run of SARIF: places, names of files, plans that cannot be read, standard input, and what stays the same. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import pkg from '../../../package.json' with { type: 'json' };
import { STAGES } from '../../../src/cli/stages.ts';
import { explanations } from '../../../src/findings/explanations.ts';
import { pullin, stages } from '../../cli/fake-io.ts';
import { TWO_GATES } from '../../meter/hunt/small-plans.ts';
import { type Run, regionText, runOf } from './sarif-schema.ts';

let cwd = '';
beforeAll(() => {
  cwd = mkdtempSync(join(tmpdir(), 'pullin-sarif-'));
});
afterAll(() => rmSync(cwd, { recursive: true }));

async function sarif(
  files: Readonly<Record<string, string>>,
  around: { readonly args?: readonly string[]; readonly stdin?: string; readonly fake?: boolean } = {},
): Promise<{ readonly run: Run; readonly status: number; readonly err: string }> {
  for (const [name, text] of Object.entries(files)) writeFileSync(join(cwd, name), text);
  const args = ['check', '--format', 'sarif', ...(around.args ?? Object.keys(files))];
  const { out, status, err } = await pullin(args, {
    cwd,
    stages: around.fake ? stages : STAGES,
    ...(around.stdin === undefined ? {} : { stdin: [around.stdin] }),
  });
  return { run: runOf(out), status, err };
}

/** The gate of the lathe leads to the break contact of its switch, and a letter beyond U+FFFF stands before it. */
const WRONG = TWO_GATES.replaceAll('saw', '𝐒aw').replace(
  'white: [𝐒aw.NO, lathe.NO]',
  'white: [𝐒aw.NO, lathe.NC]',
);

describe('a run', () => {
  it('tells who it is and what it looks for', async () => {
    const { run, status } = await sarif({ 'shop.yaml': TWO_GATES });
    expect(status).toBe(run.invocations[0]!.exitCode);
    expect(run.tool.driver.version).toBe(pkg.version);
    expect(run.tool.driver.rules.map(({ id }) => id)).toEqual(explanations.map(({ id }) => id));
    expect(run.columnKind).toBe('utf16CodeUnits');
  });

  it('counts columns in UTF-16 units, up to the end of the word', async () => {
    const { run, status } = await sarif({ 'wrong.yaml': WRONG });
    expect(status).toBe(1);
    const places = run.results.flatMap(({ locations, relatedLocations }) => [
      ...locations,
      ...relatedLocations,
    ]);
    expect(places.length).toBeGreaterThan(2);
    const shown = places.map(({ physicalLocation }) => regionText(WRONG, physicalLocation.region!));
    expect(shown).toContain('lathe.NC');
    for (const word of shown) expect(word).toMatch(/^(\S+)$/);
    for (const { relatedLocations } of run.results)
      for (const { message, physicalLocation } of relatedLocations)
        expect(regionText(WRONG, physicalLocation.region!)).toBe(message.text);
  });

  it('knows a finding again where lines come before it, where line ends and a byte order mark differ', async () => {
    const prints = async (text: string) =>
      (await sarif({ 'wrong.yaml': text })).run.results.map((r) => r.partialFingerprints);
    const plain = await prints(WRONG);
    expect(plain.length).toBeGreaterThan(0);
    const shifted = WRONG.replace('parts:', '# one more\n# and another\nparts:');
    expect(await prints(`\ufeff${shifted.replaceAll('\n', '\r\n')}`)).toEqual(plain);
    expect(await prints(WRONG.replaceAll('lathe', 'planer'))).not.toEqual(plain);
  });

  it('names files by what RFC 3986 lets stand in an address', async () => {
    const name = 'a b"ü%#?[31m\u001b.yaml';
    mkdirSync(join(cwd, 'in'), { recursive: true });
    writeFileSync(join(cwd, 'in', 'c:d.yaml'), 'pass');
    const outside = join(tmpdir(), 'no such plan.yaml');
    const files = { [name]: 'fail', 'x.yaml': 'pass' };
    const args = [name, 'in/c:d.yaml', './in/../x.yaml', join(cwd, 'x.yaml'), outside];
    const { run, status } = await sarif(files, { args, fake: true });
    expect(status).toBe(2);
    expect(run.artifacts.map(({ location }) => location?.uri)).toEqual([
      'a%20b%22%C3%BC%25%23%3F%5B31m%1B.yaml',
      'in/c%3Ad.yaml',
      'x.yaml',
      expect.stringMatching(/^file:\/\/\/.*no%20such%20plan\.yaml$/),
    ]);
    expect(run.results[0]!.locations![0]!.physicalLocation.artifactLocation.index).toBe(0);
  });

  it('has a plan that cannot be read among its notifications, each error with its line', async () => {
    const bad = TWO_GATES.replace('rating: 500 mA', 'rating: "{0} [x](https://example.org) \\u202e"').replace(
      'runs-on: [saw, lathe]',
      'runs-on: [saw, laht]',
    );
    const { run, status } = await sarif({ 'bad.yaml': bad, 'good.yaml': TWO_GATES });
    expect(status).toBe(2);
    const [invocation] = run.invocations;
    expect(invocation).toMatchObject({ executionSuccessful: false, exitCode: 2 });
    expect(run.artifacts.map(({ properties }) => properties.verdict)[0]).toBe('unreadable');
    const told = invocation!.toolExecutionNotifications;
    expect(told.map(({ descriptor }) => descriptor.id)).toEqual(['plan-unreadable', 'plan-unreadable']);
    const lines = bad.split('\n');
    const places = told.map(({ locations }) => locations![0]!.physicalLocation.region!);
    expect(places.map(({ startLine }) => startLine - 1)).toEqual([
      lines.findIndex((line) => line.includes('F1:')),
      lines.findIndex((line) => line.includes('laht]')),
    ]);
    // No placeholder (3.11.5), no link (3.11.6), no sign that turns a line round.
    expect(told[0]!.message.text).toContain('{{0}}');
    expect(told[0]!.message.text).not.toMatch(/\]\(|\u202e/);
  });

  it('tells a mistake of its own as such', async () => {
    const { run, status } = await sarif({ 'crash.yaml': 'crash', 'pass.yaml': 'pass' }, { fake: true });
    expect(status).toBe(70);
    expect(run.invocations[0]).toMatchObject({
      executionSuccessful: false,
      exitCode: 70,
      toolExecutionNotifications: [{ descriptor: { id: 'own-mistake' } }],
    });
    expect(run.artifacts.map(({ properties }) => properties.verdict)).toEqual(['mistake', 'pass']);
  });

  it('takes standard input for what it is', async () => {
    const { run } = await sarif(
      { 'pass.yaml': 'pass' },
      { args: ['-', 'pass.yaml'], stdin: 'fail', fake: true },
    );
    expect(run.invocations[0]!.stdin).toEqual({ index: 0 });
    expect(run.artifacts[0]).toMatchObject({ roles: ['analysisTarget', 'standardStream'] });
    expect(run.results[0]!.locations![0]!.physicalLocation.artifactLocation).toEqual({ index: 0 });
  });

  it('has each caution once, with the plans it is told of', async () => {
    const { run } = await sarif({ 'a.yaml': 'pass', 'b.yaml': 'fail', 'c.yaml': 'pass' }, { fake: true });
    const { cautions } = run.properties;
    expect(cautions.length).toBeGreaterThan(3);
    expect(cautions.map(({ id }) => id)).toContain('C-LOCAL');
    for (const { artifacts } of cautions) expect(artifacts).toEqual([0, 1, 2]);
    const texts = cautions.map(({ id, text }) => `${id} ${text}`);
    expect(new Set(texts).size).toBe(texts.length);
  });

  it('never leaves out what cannot be told', async () => {
    const { run, status } = await sarif({ 'doubt.yaml': 'doubt' }, { fake: true });
    expect(status).toBe(3);
    expect(run.results.map(({ level }) => level)).toEqual(['warning']);
    expect(run.results[0]).not.toHaveProperty('kind');
  });
});
