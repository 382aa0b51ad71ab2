import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { explanations } from '../../src/findings/explanations.ts';
import { FINDING_IDS } from '../../src/findings/finding-ids.ts';
import { judge } from '../../src/findings/judge.ts';
import type { Report } from '../../src/findings/report-model.ts';
import { QUESTIONS, SEVERITIES } from '../../src/findings/report-words.ts';
import { kept } from '../../src/plan/map-entries.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read.ts';
import { Study } from '../../src/study/study.ts';
import { planOf } from '../helpers/plan-of.ts';

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

type Explained = (typeof explanations)[number];
const wrongText = (e: Explained) => base(e.base).replace(e.right, () => e.wrong);
const wrongReports = new Map<string, Report>();
/** That of the wrong wiring of a finding, judged once for all that is asked of it. */
const wrongReport = (e: Explained) =>
  kept(wrongReports, e.id, () => reportOn(wrongText(e), `${e.base}.yaml`));

describe('the plans the examples are put into', () => {
  const names = readdirSync(here('bases')).map((file) => file.replace(/\.yaml$/, ''));
  it.each(names)('%s passes and is used', (name) => {
    const report = rightReport(name);
    expect(report.findings.filter((f) => !['caution', 'notice'].includes(f.severity))).toEqual([]);
    expect(report.verdict).toBe('pass');
    // What joins prove holds at nominal volts too, where coils get theirs.
    expect(report.logic).toMatchObject({ holds: true, holdsAtNominalVolts: true });
    expect(explanations.some((e) => e.base === name)).toBe(true);
  });
});

/** Where a message tells what is worked out from its figures, or rounded otherwise than they are. */
const WORKED_OUT: ReadonlySet<string> = new Set(['supply-input', 'not-as-joined', 'drop-large']);

/** Figures with a unit in a message that stand neither in the plan nor among the figures of the finding. */
function withoutFigure({ message, figures }: Report['findings'][number], text: string): string[] {
  const told = message.matchAll(/(?<![\w.-])(\d+(?:\.\d+)?) ?(?:V|mA|A|W|VA|%|ohm|in3|m|°C|hp|s|mm2)\b/g);
  const known = figures.flatMap(({ value }) =>
    typeof value === 'number' ? [value, value * 1000, value / 1000].map(Math.abs) : [],
  );
  return [...told].flatMap(([all, digits]) => {
    const value = Number(digits);
    return text.includes(digits!) || known.some((x) => Math.abs(x - value) <= 0.02 * value) ? [] : [all];
  });
}

const GRAVE: readonly string[] = ['danger', 'warning', 'fault'];

/** Each question is answered by its own gravest finding, then by its doubts; the verdict is the worst of the answers. */
function answersFollow({ findings, questions, verdict }: Report): void {
  for (const { number, answer, figure } of questions) {
    const own = findings.filter((f) => f.question === number);
    const [bad, doubt] = [
      own.find((f) => GRAVE.includes(f.severity)),
      own.find((f) => f.severity === 'doubt'),
    ];
    if (bad) expect([number, answer, figure]).toEqual([number, 'no', bad.message]);
    else if (doubt) expect([number, answer, figure]).toEqual([number, 'cannot tell', doubt.message]);
    // Nothing of questions 4 to 7 is denied without a finding of its own.
    else if (number > 3) expect([number, answer]).not.toEqual([number, 'no']);
    expect(figure).not.toBe('');
  }
  // What was not decided leaves open what runs and what feeds the coils.
  if (findings.some((f) => f.id === 'undecided'))
    for (const { number, answer } of questions.slice(1, 5))
      expect([number, answer]).toEqual([number, 'cannot tell']);
  const answers = questions.map((q) => q.answer);
  const worst = answers.includes('no') ? 'fail' : answers.includes('cannot tell') ? 'cannot-tell' : 'pass';
  expect(verdict).toBe(worst);
}

/** The part or the parts that a line of a plan belongs to: its own, those that have its stock item, those at its run's ends. */
function partsAt(plan: Plan, text: string, line: number): string[] {
  const stock = new Map<number, string>();
  text.split('\n').forEach((l, i) => {
    const item = /^ {2}([\w-]+):/.exec(l)?.[1];
    if (item !== undefined) stock.set(i + 1, item);
  });
  const begun = [...stock].filter(([at]) => at <= line).at(-1)?.[1];
  const run = plan.runs.filter((r) => r.at.line <= line).at(-1);
  const ends = run?.cores.flatMap((c) => [c.a.part, c.b.part]) ?? [];
  const own = [...plan.parts.values()].filter((p) => p.at.line <= line).at(-1);
  const from = [...plan.parts.keys()].filter((name) =>
    new RegExp(`^ {2}${name}: .*from: ${begun}\\b`, 'm').test(text),
  );
  return [
    ...(own === undefined ? [] : [own.name]),
    ...from,
    ...ends,
    ...(begun === undefined ? [] : [begun]),
  ];
}

describe('the examples', () => {
  /** Examples whose finding stands only under another one. */
  const folded: string[] = [];
  it.each(explanations.map((e) => [e.id, e] as const))(
    '%s: the wrong wiring has it, the right one has not',
    (id, e) => {
      const right = base(e.base);
      expect(right.split(e.right).length - 1, 'times that `right` stands in the plan').toBe(1);
      const wrong = wrongText(e);
      expect(wrong).not.toBe(right);
      const report = wrongReport(e);
      expect(idsIn(report)).toContain(id);
      expect(idsIn(rightReport(e.base))).not.toContain(id);
      answersFollow(report);
      const own = report.findings.filter((f) => f.id === id);
      if (own.length === 0) {
        folded.push(id);
        return;
      }
      expect(own.map((f) => f.severity)).toContain(e.severity);
      const plan = planOf(wrong);
      for (const f of own) {
        expect(WORKED_OUT.has(id) ? [] : withoutFigure(f, wrong), f.message).toEqual([]);
        for (const { value, unit, name } of f.figures) {
          expect(Number.isFinite(value ?? 0), `${name} ${value} ${unit}`).toBe(true);
          expect(name).not.toBe('');
        }
        expect(f.parts.filter((part) => !plan.parts.has(part))).toEqual([]);
        if (f.parts.length > 0) {
          const about = new Set([...f.parts, ...f.terminals.map((x) => x.split('.')[0]!)]);
          expect(
            partsAt(plan, wrong, f.line).some((part) => about.has(part)),
            `line ${f.line}`,
          ).toBe(true);
        }
      }
      expect(own[0]!.question).toBe(e.question);
    },
  );

  it('mostly stand by themselves', () => {
    expect(folded).toEqual([]);
  });
});

/** The same plan with its parts and runs in reverse order, and each core told from its other end. */
function turnedRound(plan: Plan): Plan {
  const runs = [...plan.runs].reverse();
  return {
    ...plan,
    parts: new Map([...plan.parts].reverse()),
    terminals: new Map([...plan.terminals].reverse()),
    runs: runs.map((r, index) => ({
      ...r,
      index,
      cores: r.cores.map((c) => ({ ...c, run: index, a: c.b, b: c.a })),
    })),
  };
}

describe('what a plan says first and what it says last', () => {
  /** Of two relays that race the one named first moves first where one case is shown, and what is seen of it goes with that. */
  const ORDER: ReadonlySet<string> = new Set(['depends-on-order']);
  const told = ({ findings, verdict, questions, cautions }: Report) => {
    return {
      verdict,
      answers: questions.map((q) => q.answer),
      cautions: cautions.map((c) => c.id).sort(),
      findings: findings
        .map((f) => `${f.severity} ${f.id} ${f.figures.map((x) => `${x.name} ${x.value}`).join()}`)
        .sort(),
    };
  };
  it.each(explanations.filter((e) => !ORDER.has(e.id)).map((e) => [e.id, e] as const))(
    '%s: makes no difference',
    (_, e) => {
      const turned = judge(Study.of(turnedRound(planOf(wrongText(e)))));
      expect(told(turned)).toEqual(told(wrongReport(e)));
    },
  );
});
