/** Figures for what no answer may rest on, so that a report has some to tell. */
import { because } from '../../ratings/defaults.ts';
import { withUsual } from '../../ratings/unsaid/ends.ts';
import { unsaidIn } from '../../ratings/unsaid/unsaid.ts';
import type { Study } from '../../study/study.ts';
import { valueText } from './unsaid-words.ts';

/**
 * The study by which volts and currents are told, and what it takes, a line each: a coil of which nothing is said draws
 * what such coils usually do. Verdicts go by both ends.
 */
export function asUsual(study: Study): { readonly study: Study; readonly lines: readonly string[] } {
  const usual = withUsual(study.plan, unsaidIn(study.plan));
  if (usual === undefined) return { study, lines: [] };
  const lines = usual.taken.map(
    (u) =>
      `${u.parts.join(', ')}: ${u.field.replace('.', ' ')} told as ${valueText(u, u.usual!)} (${because(u.row)})`,
  );
  return { study: study.withFigures(usual.plan), lines };
}
