/** Plans moved in their own text, with code that shares nothing with what `size` moves them by. */
import { readFileSync } from 'node:fs';
import { parse, stringify } from 'yaml';
import { judge } from '../../../src/findings/judge.ts';
import type { Report } from '../../../src/findings/report-model.ts';
import { Study } from '../../../src/study/study.ts';
import { examplePath } from '../../helpers/example-plans.ts';
import { planOf } from '../../helpers/plan-of.ts';

type Node = Record<string, unknown>;

/** A plan file as plain values. */
export interface File {
  stock?: Record<string, Node>;
  parts: Record<string, Node>;
  runs: Node[];
  intent?: Record<string, Node>;
}

/** Scalars stay what was typed: `1.10` keeps its nought. */
export const fileOf = (name: string): File =>
  parse(readFileSync(examplePath(name), 'utf8'), { schema: 'failsafe' }) as File;

export const textOf = (file: File): string =>
  stringify(file, { schema: 'failsafe', aliasDuplicateObjects: false });

/** The file with a change made in a copy of it. */
export function moved(file: File, change: (copy: File) => void): File {
  const copy = structuredClone(file);
  change(copy);
  return copy;
}

/** A part with its stock written out, so that a field can be put in place of another. */
export function written(file: File, name: string): Node {
  const own = file.parts[name]!;
  const { from, ...rest } = own;
  const part = { ...(typeof from === 'string' ? structuredClone(file.stock![from]) : {}), ...rest };
  file.parts[name] = part;
  return part;
}

export const reportOf = (file: File): Report => judge(Study.of(planOf(textOf(file))));

/** Whether a report has a finding of that id, folded or turned into a question included. */
export const tells = (report: Report, id: string): boolean =>
  report.findings.some((f) => f.id === id || f.id === 'value-unsaid' || f.also.some((a) => a.id === id));
