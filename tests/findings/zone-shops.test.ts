/** The wrong shops of zones: each has one mistake, told once, with the zones it hits. That they are wrong is by how they were made. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/findings/judge.ts';
import { check } from '../../src/repair/check.ts';
import { renderText } from '../../src/report/check.ts';
import { Study } from '../../src/study/study.ts';
import { columns } from '../../src/text/wrap.ts';
import { planOf } from '../helpers/plan-of.ts';
import { WHOLE } from '../helpers/share.ts';

interface Expected {
  readonly finding: string;
  readonly verdict: string;
  /** every zone it hits, by its relay, and the coil that is short */
  readonly names: readonly string[];
}

const folder = fileURLToPath(new URL('../../examples/large/wrong/', import.meta.url));
const text = (name: string) => readFileSync(folder + name, 'utf8');
const expected = Object.entries(JSON.parse(text('expected.json')) as Record<string, Expected>);

const isGrave = ({ severity }: { readonly severity: string }): boolean =>
  !['caution', 'notice'].includes(severity);

it('are four mistakes in each of two shops', () => {
  expect(readdirSync(folder).filter((f) => f.endsWith('.yaml'))).toEqual(expected.map(([name]) => name));
  expect(expected).toHaveLength(8);
});

describe('a mistake in a shop of zones', () => {
  it.runIf(WHOLE).each(expected)('%s is told once, with the zones it hits', (name, want) => {
    const report = judge(Study.of(planOf(text(name), name)));
    expect(report.verdict).toBe(want.verdict);
    const grave = report.findings.filter(isGrave);
    expect(grave.map((f) => f.id)).toEqual([want.finding]);
    const [main] = grave;
    const told = `${main!.message} ${main!.why}`;
    for (const n of want.names) expect(told).toMatch(new RegExp(`(^|[^\\w-])${n}([^\\w-]|$)`));
    // Not a row a gate: one row for each coil that is fed.
    expect(main!.also.length).toBeLessThanOrEqual(4);
  });

  it.runIf(WHOLE).each(expected.filter((_, i) => i % 3 === 1))('%s has its report beside it', (name) => {
    const path = `examples/large/wrong/${name}`;
    const shown = renderText(check(Study.of(planOf(text(name), path))), { width: 80, colour: false });
    expect(shown.trimEnd()).toBe(text(name.replace(/\.yaml$/, '.report.txt')).trimEnd());
    expect(Math.max(...shown.split('\n').map(columns))).toBeLessThanOrEqual(80);
  });
});
