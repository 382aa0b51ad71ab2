/** `pullin faults`: what each single failure would do, in each form. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { STAGES } from '../../src/cli/stages.ts';
import type { FaultTable } from '../../src/meter/faults/table-model.ts';
import { faultsJsonSchema } from '../../src/meter/faults/table-schema.ts';
import { examplePath } from '../helpers/example-plans.ts';
import { TWO_GATES } from '../meter/hunt/small-plans.ts';
import { pullin } from './fake-io.ts';

let cwd = '';
beforeAll(() => {
  cwd = mkdtempSync(join(tmpdir(), 'pullin-faults-'));
  writeFileSync(join(cwd, 'shop.yaml'), TWO_GATES);
  // The lathe's switch on its other contact: the fan runs with everything shut.
  writeFileSync(
    join(cwd, 'wrong.yaml'),
    TWO_GATES.replace('white: [saw.NO, lathe.NO]', 'white: [saw.NO, lathe.NC]'),
  );
});
afterAll(() => rmSync(cwd, { recursive: true, force: true }));

const run = (...args: string[]) => pullin(['faults', ...args], { stages: STAGES, cwd });
const table = async (file: string): Promise<FaultTable> => JSON.parse((await run(file, '--json')).out);

describe('pullin faults', () => {
  it('lists them by how grave they are, and those that nothing shows where all are asked for', async () => {
    const { status, out, err } = await run('shop.yaml');
    // How far it is is told where it takes long, as it may on a busy machine.
    expect([status, err.replace(/^trying failures: \d+ %\n/gm, '')]).toEqual([0, '']);
    const heads = [
      ...out.matchAll(/^(Danger|The worse way|Loss of function|Nuisance|Nothing seen) \((\d+)\)/gm),
    ];
    expect(heads.map((h) => h[1])).toEqual(
      ['Danger', 'The worse way', 'Loss of function', 'Nuisance', 'Nothing seen'].filter((name) =>
        heads.some((h) => h[1] === name),
      ),
    );
    const { rows } = await table('shop.yaml');
    const told = heads.reduce((sum, h) => sum + Number(h[2]), 0);
    expect(told).toBe(rows.length);
    const all = (await run('shop.yaml', '--all')).out;
    const silent = rows.find((r) => r.severity === 'none')!;
    expect([out.includes(silent.failureMode), all.includes(silent.failureMode)]).toEqual([false, true]);
    expect(all).not.toContain('--all');
  });

  it('tells the same as JSON that its schema takes, as CSV and as Markdown', async () => {
    const json = await table('shop.yaml');
    const valid = new Ajv2020({ strict: false }).compile(faultsJsonSchema());
    expect([valid(json), valid.errors]).toEqual([true, null]);
    const { rows, summary } = json;
    expect(json).toMatchObject({ format: 1, title: 'Two gates' });
    expect(summary).toEqual({
      failures: rows.length,
      off: rows.filter((r) => r.off).length,
      on: rows.filter((r) => r.on).length,
      ...Object.fromEntries(
        (['danger', 'worse', 'loss', 'nuisance', 'none'] as const).map((c) => [
          c,
          rows.filter((r) => r.severity === c).length,
        ]),
      ),
      silent: rows.filter((r) => r.silent).length,
    });
    const { danger, worse, loss, nuisance, none } = summary;
    expect(danger + worse + loss + nuisance + none).toBe(summary.failures);
    const { out, err } = await run('shop.yaml', '--format', 'csv');
    expect(err).not.toMatch(/does not pass/);
    const csv = parse(out, { columns: true });
    expect(csv).toEqual(
      rows.map((r) => ({
        item: r.item,
        'failure mode': r.failureMode,
        'failure effect': r.effect,
        detection: r.detection,
        'severity class': r.severity,
        'compensating provision':
          r.provision ?? (r.severity === 'danger' ? 'none was found that passes' : ''),
      })),
    );
    const markdown = (await run('shop.yaml', '--format', 'markdown')).out;
    expect(markdown).toMatch(/^# Single failures: Two gates\n/);
    expect(markdown).toContain(
      '| item | failure mode | failure effect | detection | compensating provision |',
    );
  });

  it('knows what anybody would say of a few', async () => {
    const { rows } = await table('shop.yaml');
    const of = (item: string, mode: string) => rows.find((r) => r.item === item && r.mode === mode);
    expect(of('K1', 'never-breaks')).toMatchObject({ on: true, off: false, silent: false });
    expect(of('F1', 'blown')).toMatchObject({ on: false, off: true, severity: 'loss', silent: false });
    expect(of('lathe', 'never-makes')).toMatchObject({ on: false, off: true, silent: false });
    expect(of('lathe', 'never-breaks')).toMatchObject({ on: true, off: false });
    expect(of('the green-yellow core from P1.PE to X1.PE', 'core-open')).toMatchObject({
      severity: 'danger',
      silent: true,
    });
  });

  it('says so where the plan does not pass', async () => {
    const text = await run('wrong.yaml');
    expect([text.status, text.out]).toEqual([
      0,
      expect.stringContaining('The failures are of the plan as it stands.'),
    ]);
    const csv = await run('wrong.yaml', '--format', 'csv');
    expect(csv.status).toBe(0);
    expect(csv.err).toContain('The failures are of the plan as it stands.');
    expect(csv.out).not.toContain('as it stands');
    expect((await table('wrong.yaml')).check.verdict).toBe('fail');
  });

  it('takes no plan that is missing or cannot be read', async () => {
    expect(await run('nowhere.yaml')).toMatchObject({ status: 2, out: '' });
    expect(await run(examplePath('bad/typing-errors'))).toMatchObject({ status: 2, out: '' });
    expect(await run('shop.yaml', '--format', 'pdf')).toMatchObject({ status: 2, out: '' });
  });
});
