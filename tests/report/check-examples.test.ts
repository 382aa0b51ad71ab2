/** The reports of the examples as somebody in a hurry reads them: what to do at the head, and little to scroll. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { behindVerdict, type Report } from '../../src/findings/report-model.ts';
import { readPlan } from '../../src/plan/read.ts';
import { check } from '../../src/repair/check.ts';
import { renderText } from '../../src/report/check.ts';
import { Study } from '../../src/study/study.ts';
import { columns } from '../../src/text/wrap.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));

function reportOf(path: string): Report {
  const read = readPlan(readFileSync(root + path), path);
  if (!read.ok) throw new Error(read.errors.map((e) => e.message).join('\n'));
  return check(Study.of(read.plan));
}

const linesOf = (report: Report, width = 80) =>
  renderText(report, { width, colour: false }).trimEnd().split('\n');
const flat = (lines: readonly string[]) => lines.join(' ').replace(/\s+/g, ' ');

it('the demo takes at most 55 lines of 80 columns, with every caution that applies', () => {
  const report = reportOf('examples/saltmarsh-lane.yaml');
  const lines = linesOf(report);
  expect(lines.length).toBeLessThanOrEqual(55);
  expect(report.cautions.length).toBeGreaterThan(15);
  for (const c of report.cautions) expect(flat(lines)).toContain(`${c.text} [${c.id}]`);
  expect(lines.filter((l) => /^[1-7]\. .*\? +yes: /.test(l))).toHaveLength(7);
});

const wrong = readdirSync(`${root}examples/wrong`).filter((f) => f.endsWith('.yaml'));

describe('a plan that does not pass', () => {
  it.each(wrong)('%s: what to do stands before the answers, the first of it within 12 lines', (name) => {
    const report = reportOf(`examples/wrong/${name}`);
    const lines = linesOf(report);
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
    // What is found stands in the details as well, by name and line.
    const details = flat(lines.slice(answers));
    for (const f of report.findings) expect(details).toContain(`[${f.id}], line ${f.line}`);
  });
});
