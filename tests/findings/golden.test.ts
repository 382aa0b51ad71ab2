import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { behindVerdict, type Report } from '../../src/findings/report-model.ts';
import { reportJsonSchema } from '../../src/findings/report-schema.ts';
import { readPlan } from '../../src/plan/read.ts';
import { check } from '../../src/repair/check.ts';
import { renderText } from '../../src/report/check.ts';
import { Study } from '../../src/study/study.ts';
import { columns } from '../../src/text/wrap.ts';
import { sampled, WHOLE } from '../helpers/share.ts';

interface Expected {
  readonly finding: string;
  readonly verdict: string;
  readonly names: readonly string[];
}

const root = fileURLToPath(new URL('../../', import.meta.url));
const plans = (folder: string) => readdirSync(`${root}${folder}`).filter((f) => f.endsWith('.yaml'));
const expected = JSON.parse(readFileSync(`${root}examples/wrong/expected.json`, 'utf8')) as Record<
  string,
  Expected
>;

const right = [...plans('examples'), ...plans('examples/large').map((name) => `large/${name}`)];

const known = new Map<string, Report>();

function reportOf(path: string): Report {
  const found = known.get(path);
  if (found) return found;
  const read = readPlan(readFileSync(root + path), path);
  if (!read.ok) throw new Error(read.errors.map((e) => e.message).join('\n'));
  const report = check(Study.of(read.plan));
  known.set(path, report);
  return report;
}

function golden(path: string): string {
  return readFileSync(root + path.replace(/\.yaml$/, '.report.txt'), 'utf8');
}

/** What to do stands before the answers, the first of it within 12 lines, and all that was found stands below by name. */
function readsInAHurry(report: Report, lines: readonly string[]): void {
  const flat = (part: readonly string[]) => part.join(' ').replace(/\s+/g, ' ');
  expect(Math.max(...lines.map(columns))).toBeLessThanOrEqual(80);
  const answers = lines.findIndex((l) => l.startsWith('1. '));
  const head = flat(lines.slice(0, answers));
  const behind = behindVerdict(report);
  expect(behind.length > 0).toBe(report.verdict !== 'pass');
  for (const f of behind) {
    expect(head).toContain(`${f.severity.toUpperCase()} ${f.message} [${f.id}]`);
    expect(head).toContain(`Do ${f.fix}`);
  }
  if (behind.length > 0) expect(lines.slice(0, 12).some((l) => l.startsWith('Do '))).toBe(true);
  const details = flat(lines.slice(answers));
  for (const f of report.findings) expect(details).toContain(`[${f.id}], line ${f.line}`);
}

const validate = new Ajv2020().compile(reportJsonSchema());

describe('right plans', () => {
  // `generate.mjs --check` holds every one of these reports in each run.
  it.each(sampled(right, 24))('%s passes, and its report is the one beside it', (name) => {
    const report = reportOf(`examples/${name}`);
    expect(report.findings.filter((f) => !['caution', 'notice'].includes(f.severity))).toEqual([]);
    expect(report.verdict).toBe('pass');
    expect(report.logic.holds).toBe(true);
    expect(validate(report), JSON.stringify(validate.errors)).toBe(true);
    const text = renderText(report, { width: 80, colour: false });
    expect(text.trimEnd()).toBe(golden(`examples/${name}`).trimEnd());
    expect(Math.max(...text.split('\n').map(columns))).toBeLessThanOrEqual(80);
    const flat = text.replace(/\s+/g, ' ');
    for (const c of report.cautions) expect(flat).toContain(`${c.text} [${c.id}]`);
    if (name === 'saltmarsh-lane.yaml') expect(text.trimEnd().split('\n').length).toBeLessThanOrEqual(55);
  });
});

describe('wrong plans', () => {
  it('are at least twenty, each with what is expected of it', () => {
    expect(plans('examples/wrong').length).toBeGreaterThanOrEqual(20);
    expect(plans('examples/wrong').sort()).toEqual(Object.keys(expected).sort());
  });

  const tried = sampled(plans('examples/wrong'), 4);

  it.each(tried)('%s is caught, by name, and its report is the one beside it', (name) => {
    const report = reportOf(`examples/wrong/${name}`);
    const want = expected[name]!;
    expect(report.verdict).toBe(want.verdict);
    expect(validate(report), JSON.stringify(validate.errors)).toBe(true);
    const main = report.findings.find((f) => f.id === want.finding);
    expect(main, `${want.finding} among ${report.findings.map((f) => f.id).join()}`).toBeDefined();
    const told = report.findings
      .flatMap((f) => [...f.parts, ...f.terminals, f.message, f.why, f.fix])
      .join(' ');
    expect(want.names.some((n) => told.includes(n))).toBe(true);
    const text = renderText(report, { width: 80, colour: false });
    expect(text.trimEnd()).toBe(golden(`examples/wrong/${name}`).trimEnd());
    readsInAHurry(report, text.split('\n'));
  });

  it.runIf(WHOLE)('one mistake gives one main finding in nearly all', () => {
    const grave = tried.map(
      (name) =>
        reportOf(`examples/wrong/${name}`).findings.filter((f) =>
          ['danger', 'warning', 'fault'].includes(f.severity),
        ).length,
    );
    expect(grave.filter((n) => n <= 1).length / grave.length).toBeGreaterThan(0.85);
  });
});

it('the plan in the README passes as it stands', () => {
  const text = /```yaml\n([\s\S]*?)```/.exec(readFileSync(`${root}README.md`, 'utf8'))![1]!;
  const read = readPlan(text, 'README.yaml');
  if (!read.ok) throw new Error(read.errors.map((e) => e.message).join('\n'));
  const report = check(Study.of(read.plan));
  expect(report.verdict, JSON.stringify(report.findings)).toBe('pass');
});
