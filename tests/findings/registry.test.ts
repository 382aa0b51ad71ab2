import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { explanations } from '../../src/findings/explanations.ts';
import { FINDING_IDS } from '../../src/findings/finding-ids.ts';
import { judge } from '../../src/findings/judge.ts';
import type { Report } from '../../src/findings/report-model.ts';
import { QUESTIONS, SEVERITIES } from '../../src/findings/report-words.ts';
import { kept } from '../../src/plan/map-entries.ts';
import { readPlan } from '../../src/plan/read.ts';
import { Study } from '../../src/study/study.ts';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));
const base = (name: string) => readFileSync(here(`bases/${name}.yaml`), 'utf8');

function reportOn(text: string, file: string): Report {
  const read = readPlan(text, file);
  if (!read.ok)
    throw new Error(
      read.errors.map((e) => `${e.position.line}:${e.position.column} ${e.message}`).join('\n'),
    );
  return judge(Study.of(read.plan));
}

/** Every id that stands as a finding of its own or under another. */
function idsIn(report: Report): string[] {
  return report.findings.flatMap((f) => [f.id, ...f.also.map((a) => a.id)]);
}

describe('the register of findings', () => {
  it('documents every finding there is, once', () => {
    expect(explanations.map((e) => e.id).sort()).toEqual([...FINDING_IDS].sort());
  });

  it('has each id once, in lower case with hyphens', () => {
    const ids = explanations.map((e) => e.id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
  });

  it('is in the order of the questions', () => {
    const questions = explanations.map((e) => e.question);
    expect(questions).toEqual([...questions].sort((a, b) => a - b));
  });

  it.each(explanations.map((e) => [e.id, e] as const))('%s is told in full', (_, e) => {
    expect(SEVERITIES).toContain(e.severity);
    expect(QUESTIONS[e.question - 1]).toBeDefined();
    expect(e.title.length).toBeLessThanOrEqual(70);
    expect(e.basis).not.toBe('');
    const sentences = e.meaning.split(/[.!?](?:\s|$)/).filter((s) => s.trim() !== '').length;
    expect(sentences).toBeGreaterThanOrEqual(2);
    expect(sentences).toBeLessThanOrEqual(4);
    for (const text of [e.wrong, e.right]) expect(text.split('\n').length).toBeLessThanOrEqual(6);
    expect(`${e.title} ${e.meaning}`).not.toMatch(/\b(safe|compliant|approved)\b/i);
  });
});

const rightReports = new Map<string, Report>();
const rightReport = (name: string) => kept(rightReports, name, () => reportOn(base(name), `${name}.yaml`));

describe('the plans the examples are put into', () => {
  const names = readdirSync(here('bases')).map((file) => file.replace(/\.yaml$/, ''));
  it.each(names)('%s passes and is used', (name) => {
    const report = rightReport(name);
    expect(report.findings.filter((f) => !['caution', 'notice'].includes(f.severity))).toEqual([]);
    expect(report.verdict).toBe('pass');
    expect(explanations.some((e) => e.base === name)).toBe(true);
  });
});

describe('the examples', () => {
  /** Examples whose finding stands only under another one. */
  const folded: string[] = [];
  it.each(explanations.map((e) => [e.id, e] as const))(
    '%s: the wrong wiring has it, the right one has not',
    (id, e) => {
      const right = base(e.base);
      expect(right.split(e.right).length - 1, 'times that `right` stands in the plan').toBe(1);
      const wrong = right.replace(e.right, () => e.wrong);
      expect(wrong).not.toBe(right);
      const report = reportOn(wrong, `${e.base}.yaml`);
      expect(idsIn(report)).toContain(id);
      expect(idsIn(rightReport(e.base))).not.toContain(id);
      const own = report.findings.filter((f) => f.id === id);
      if (own.length === 0) {
        folded.push(id);
        return;
      }
      expect(own.map((f) => f.severity)).toContain(e.severity);
      expect(own[0]!.question).toBe(e.question);
    },
  );

  it('mostly stand by themselves', () => {
    expect(folded).toEqual([]);
  });
});
