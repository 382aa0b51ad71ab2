/** Every example, right and wrong, as SARIF: valid, each finding in it, each fix what `mend --write` writes. */
import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { STAGES } from '../../../src/cli/stages.ts';
import { reportSchema } from '../../../src/findings/report-schema.ts';
import { pullin } from '../../cli/fake-io.ts';
import { exampleNames } from '../../helpers/example-plans.ts';
import { WHOLE } from '../../helpers/share.ts';
import { fixed, regionText, runOf } from './sarif-schema.ts';

const folder = fileURLToPath(new URL('../../../examples', import.meta.url));
const EACH = WHOLE ? 4 : 40;
const names = [...exampleNames(), ...exampleNames('wrong')].filter((_, i) => i % EACH === 0);
let cwd = '';
beforeAll(() => {
  cwd = mkdtempSync(join(tmpdir(), 'pullin-sarif-'));
  for (const name of names) cpSync(`${folder}/${name}.yaml`, join(cwd, `${name}.yaml`));
});
afterAll(() => rmSync(cwd, { recursive: true }));

const LEVELS: Readonly<Record<string, string>> = {
  danger: 'error',
  warning: 'error',
  fault: 'error',
  doubt: 'warning',
  caution: 'note',
  notice: 'note',
};

/** What was printed, kept for the fixes. */
const printed = new Map<string, string>();

describe.each(names)('%s', (name) => {
  const file = `${name}.yaml`;
  // Two checks, one of which takes seconds by itself.
  it('is told whole in SARIF', { timeout: 180_000 }, async () => {
    const text = readFileSync(join(cwd, file), 'utf8');
    const { status, out } = await pullin(['check', '--format', 'sarif', file], { cwd, stages: STAGES });
    printed.set(name, out);
    expect(out).toBe(`${JSON.stringify(JSON.parse(out), null, 2)}\n`);
    const run = runOf(out);
    const json = await pullin(['check', '--json', file], { cwd, stages: STAGES });
    const report = reportSchema.parse(JSON.parse(json.out));
    expect(run.invocations[0]).toMatchObject({ executionSuccessful: true, exitCode: status });
    expect(run.artifacts).toMatchObject([
      { location: { uri: file }, properties: { verdict: report.verdict } },
    ]);
    expect(run.properties.cautions.map(({ id }) => id)).toEqual(report.cautions.map(({ id }) => id));
    expect(run.results.map((r) => [r.ruleId, r.level])).toEqual(
      report.findings.map((f) => [f.id, LEVELS[f.severity]]),
    );
    // Errors are what makes it fail, warnings what it cannot tell.
    const has = (level: string) => run.results.some((r) => r.level === level);
    expect(has('error') ? 1 : has('warning') ? 3 : 0).toBe(status);
    const prints = run.results.map((r) => Object.values(r.partialFingerprints)[0]);
    expect(new Set(prints).size).toBe(prints.length);
    run.results.forEach((result, index) => {
      const { line, column, message, fix } = report.findings[index]!;
      const { region } = result.locations[0]!.physicalLocation;
      expect(region).toMatchObject({ startLine: line, startColumn: column });
      // A brace that is no placeholder stands doubled (3.11.5).
      const told = result.message.text.replace(/\{\{|\}\}/g, (pair) => pair[0]!);
      expect(told.startsWith(message)).toBe(true);
      expect(told).toContain(fix);
      for (const { physicalLocation } of [result.locations[0]!, ...result.relatedLocations]) {
        const shown = regionText(text, physicalLocation.region!);
        expect(shown).not.toBe('');
        expect(shown).toBe(shown.trim());
      }
    });
  });

  it('has the repair as a fix where there is one', async () => {
    const text = readFileSync(join(cwd, file), 'utf8');
    const run = runOf(printed.get(name)!);
    const fixable = run.results.filter(({ fixes }) => fixes !== undefined);
    if (fixable.length === 0) return;
    const { status } = await pullin(['mend', '--write', file], { cwd, stages: STAGES });
    const written = readFileSync(join(cwd, file), 'utf8');
    expect(status).toBe(0);
    for (const result of fixable) expect(fixed(text, result)).toBe(written);
    fixesSeen += fixable.length;
  });
});

let fixesSeen = 0;
describe('the examples', () => {
  it('have fixes among them', () => {
    expect(fixesSeen).toBeGreaterThan(WHOLE ? 8 : 0);
  });
});
