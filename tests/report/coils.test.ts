import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { CoilFigures, Report } from '../../src/findings/report-model.ts';
import { readPlan } from '../../src/plan/read.ts';
import { check } from '../../src/repair/check.ts';
import { checkDocument } from '../../src/report/check.ts';
import { asText } from '../../src/report/forms/text.ts';
import { Study } from '../../src/study/study.ts';

function reportOf(name: string): Report {
  const path = `examples/${name}.yaml`;
  const read = readPlan(readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8'), path);
  if (!read.ok) throw new Error(`${path} cannot be read`);
  return check(Study.of(read.plan));
}

const sectionOf = (report: Report, all: boolean): string[] => {
  const text = asText(checkDocument(report, { all }), { width: 80, colour: false });
  const [, section = ''] = text.split(/^4\. Will the coil.*$/m);
  return section.split('\n\n')[0]!.trim().split('\n');
};

/** Lines that begin with a gate of the rows, marked or not. */
const rowsIn = (lines: readonly string[], rows: readonly CoilFigures[]): number =>
  lines.filter((l) => rows.some((r) => new RegExp(`^ *(> )? *(\\S+ +)?${r.gate} `).test(l))).length;

const spare = (row: CoilFigures) => row.margin ?? Number.POSITIVE_INFINITY;

describe('volts at the coils', () => {
  const one = reportOf('saltmarsh-lane');
  const several = reportOf('millrace-joinery');

  it('are told of one coil for the gate that leaves it the least', () => {
    const lines = sectionOf(one, false);
    const worst = [...one.coils].sort((a, b) => spare(a) - spare(b))[0]!;
    expect(rowsIn(lines, one.coils)).toBe(1);
    expect(rowsIn(lines, [worst])).toBe(1);
    expect(lines.join(' ')).toContain('and 2 more gates, with as much to spare or more (--all lists them)');
  });

  it('are told of several coils in one table, a line each, the worst marked', () => {
    const lines = sectionOf(several, false);
    const relays = [...new Set(several.coils.map((c) => c.relay))];
    expect(relays.length).toBeGreaterThan(1);
    for (const relay of relays)
      expect(lines.filter((l) => new RegExp(`^ *(> )? *${relay} `).test(l))).toHaveLength(1);
    const worst = [...several.coils].sort((a, b) => spare(a) - spare(b))[0]!;
    expect(lines.find((l) => /^ *> /.test(l))).toContain(worst.relay);
  });

  it('are listed for every gate where all is asked for', () => {
    const lines = sectionOf(one, true);
    for (const row of one.coils) expect(rowsIn(lines, [row])).toBe(1);
    expect(lines.join(' ')).not.toContain('--all');
  });

  it('of more than twelve coils are those with the least to spare', () => {
    const coils = Array.from({ length: 20 }, (_, i) => ({
      ...several.coils[0]!,
      relay: `K${i}`,
      gate: `gate${i}`,
      margin: 0.5 - i / 100,
    }));
    const lines = sectionOf({ ...several, coils }, false);
    expect(rowsIn(lines, coils)).toBe(5);
    for (const row of coils.slice(15)) expect(rowsIn(lines, [row])).toBe(1);
    expect(lines.join(' ')).toContain('and 15 more coils, with as much to spare or more');
  });
});
