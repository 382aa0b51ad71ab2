/** The report for people: the verdict, the seven questions, what was found under each, and the cautions. */
import { Chalk, type ChalkInstance } from 'chalk';
import { isStanding } from '../findings/cautions/choose.ts';
import type { Caution, Finding, Question, Report } from '../findings/report-model.ts';
import { alsoLine, logicSentence, verdictLine } from '../findings/report-sentences.ts';
import { type Answer, SEVERITIES, type Severity } from '../findings/report-words.ts';
import { ascii, printable } from '../text/escape.ts';
import { columns, wrap } from '../text/wrap.ts';
import { coilLines } from './coils.ts';

export interface TextOptions {
  /** columns to fill */
  readonly width: number;
  readonly colour: boolean;
  /** false: ASCII alone */
  readonly unicode?: boolean;
}

type Paint = (text: string) => string;

/** Colours are a second carrier only: every one of them stands on a word that says the same. */
function palette(chalk: ChalkInstance) {
  const bySeverity: Record<Severity, Paint> = {
    danger: chalk.bold.red,
    warning: chalk.red,
    fault: chalk.magenta,
    caution: chalk.yellow,
    doubt: chalk.cyan,
    notice: chalk.blue,
  };
  const byAnswer: Record<Answer, Paint> = {
    yes: chalk.green,
    no: chalk.bold.red,
    'cannot tell': chalk.cyan,
    'not applicable': chalk.dim,
  };
  return { bySeverity, byAnswer, strong: chalk.bold as Paint, faint: chalk.dim as Paint };
}
type Palette = ReturnType<typeof palette>;

/** Paints `word` where it starts `line` after blanks; wrapping has been done before, so widths stay true. */
function paintStart(line: string | undefined, word: string, paint: Paint): string {
  if (line === undefined) return '';
  const at = line.length - line.trimStart().length;
  return line.startsWith(word, at) ? line.slice(0, at) + paint(word) + line.slice(at + word.length) : line;
}

const capital = (word: string) => word.charAt(0).toUpperCase() + word.slice(1);

class Page {
  readonly #lines: string[] = [];
  readonly clean: (text: string) => string;
  constructor(
    readonly width: number,
    readonly paint: Palette,
    unicode: boolean,
  ) {
    this.clean = unicode ? printable : (text) => ascii(printable(text));
  }

  blank(): void {
    if (this.#lines.at(-1) !== '') this.#lines.push('');
  }

  /** A wrapped paragraph whose first word, `first` without its blanks, may be painted. */
  put(text: string, first = '', paint?: Paint, rest?: string): void {
    const lines = wrap(this.clean(text), this.width, first, rest);
    if (paint !== undefined) lines[0] = paintStart(lines[0], first.trim(), paint);
    this.#lines.push(...lines);
  }

  /** A whole line in one colour. */
  heading(text: string, paint: Paint): void {
    for (const line of wrap(this.clean(text), this.width)) this.#lines.push(paint(line));
  }

  /** A line that is not wrapped, so that a file name and its line can be picked up whole. */
  raw(first: string, paint: Paint, text: string): void {
    this.#lines.push(`${' '.repeat(INDENT)}${paint(first)} ${this.clean(text)}`);
  }

  /** A line of a table: kept whole while it fits, else wrapped at its blanks. */
  table(text: string): void {
    const indent = ' '.repeat(INDENT);
    if (columns(text) + INDENT <= this.width) this.#lines.push(indent + text);
    else
      this.#lines.push(
        ...wrap(text.trim(), this.width, indent + text.slice(0, text.length - text.trimStart().length)),
      );
  }

  toString(): string {
    return `${this.#lines.join('\n').trimEnd()}\n`;
  }
}

const INDENT = 5;
const LABEL = 8;

function putFinding(page: Page, finding: Finding, file: string): void {
  page.blank();
  page.raw(
    finding.severity.toUpperCase(),
    page.paint.bySeverity[finding.severity],
    `[${finding.id}] ${file}:${finding.line}`,
  );
  const indent = ' '.repeat(INDENT);
  page.put(finding.message, indent);
  const label = (word: string, text: string) => {
    if (text !== '') page.put(text, `${indent}  ${word.padEnd(LABEL)}`, page.paint.faint);
  };
  label('why', finding.why);
  label('do', finding.fix);
  label('basis', finding.basis);
  for (const [i, text] of (finding.repair?.words ?? []).entries()) label(i === 0 ? 'mend' : '', text);
  for (const [i, a] of finding.also.entries()) label(i === 0 ? 'also' : '', alsoLine(finding, a));
}

/** The coil table, each line wrapped only where the page is narrower than it. */
function putCoils(page: Page, coils: Report['coils']): void {
  const lines = coilLines(coils, page.clean);
  if (lines.length === 0) return;
  page.blank();
  for (const text of lines) page.table(text);
}

function putQuestion(page: Page, question: Question, findings: readonly Finding[], file: string): void {
  page.blank();
  page.put(question.question, `${question.number}. `);
  const answer = capital(question.answer);
  const paint = page.paint.byAnswer[question.answer];
  if (question.figure === '') page.put('', `   ${answer}.`, paint);
  else page.put(question.figure, `   ${answer}: `, paint, '   ');
  for (const finding of findings) putFinding(page, finding, file);
}

const LEVEL_COLUMN = 9;

function putCautions(page: Page, cautions: readonly Caution[]): void {
  const put = (caution: Caution) => {
    const first = caution.level.toUpperCase().padEnd(LEVEL_COLUMN);
    page.put(`${caution.text} [${caution.id}]`, first, page.paint.bySeverity[caution.level]);
  };
  const standing = cautions.filter((c) => isStanding(c.id));
  const own = cautions.filter((c) => !isStanding(c.id));
  if (standing.length > 0) {
    page.blank();
    page.heading('With every plan', page.paint.strong);
    standing.forEach(put);
  }
  if (own.length > 0) {
    page.blank();
    page.heading('With this plan', page.paint.strong);
    own.forEach(put);
  }
}

/** The finding to read first, where one keeps the plan from passing: worst severity, then the order of the questions. */
function gravest(report: Report): Finding | undefined {
  if (report.verdict === 'pass') return undefined;
  const ranked = [...report.findings].sort(
    (x, y) => SEVERITIES.indexOf(x.severity) - SEVERITIES.indexOf(y.severity) || x.question - y.question,
  );
  return ranked.find((f) => report.verdict === 'fail' || f.severity === 'doubt');
}

/** The whole report; ends in a line break. */
export function renderText(report: Report, options: TextOptions): string {
  const paint = palette(new Chalk({ level: options.colour ? 1 : 0 }));
  const page = new Page(Math.max(20, options.width), paint, options.unicode ?? true);
  page.heading(verdictLine(report), report.verdict === 'fail' ? paint.bySeverity.danger : paint.strong);
  const file = report.plan.file === '-' ? 'standard input' : report.plan.file;
  const tables = report.plan.practice === 'nec' ? 'North American tables' : 'IEC tables';
  page.put(`${report.plan.title === '-' ? 'Plan' : report.plan.title}, from ${file}, judged by ${tables}`);

  const first = gravest(report);
  if (first) {
    page.blank();
    page.put(first.message, 'First: ', paint.bySeverity[first.severity]);
    page.put(first.fix, 'Do:    ');
  }

  for (const question of report.questions) {
    const own = report.findings.filter((f) => f.question === question.number);
    putQuestion(page, question, own, file);
    if (question.number === 4) putCoils(page, report.coils);
  }
  // A finding whose question is missing from the list must still be seen.
  const asked = new Set(report.questions.map((q) => q.number));
  for (const finding of report.findings.filter((f) => !asked.has(f.question)))
    putFinding(page, finding, file);

  page.blank();
  page.put(logicSentence(report.logic));
  if (report.defaults.length > 0) {
    page.blank();
    page.heading('Taken for granted, because the plan does not say', paint.strong);
    for (const text of report.defaults) page.put(text, '- ');
  }
  putCautions(page, report.cautions);
  return page.toString();
}

/** One line a finding, for editors and scripts, and the verdict last. */
export function renderQuiet(report: Report): string {
  const lines = report.findings.map(
    (f) => `${report.plan.file}:${f.line}:${f.column}: ${f.severity}: ${f.message} [${f.id}]`,
  );
  lines.push(`${report.plan.file}: ${verdictLine(report)}`);
  return `${lines.map(printable).join('\n')}\n`;
}
