/** What a finding marks in the drawing is in the plan, and is what the finding speaks of. */
import { describe, expect, it } from 'vitest';
import { gravestFirst } from '../../src/findings/report-model.ts';
import { linksOf } from '../../src/page/links.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { check } from '../../src/repair/check.ts';
import { Study } from '../../src/study/study.ts';
import { example, mostExamples } from '../helpers/example-plans.ts';
import { planOf } from '../helpers/plan-of.ts';
import { sampled, WHOLE } from '../helpers/share.ts';

function linked(plan: Plan) {
  const findings = gravestFirst(check(Study.of(plan)).findings);
  return { findings, links: linksOf(plan, findings) };
}

/** A core by its ends as the plan writes them. */
function ends(plan: Plan, id: string): string {
  const [run, core] = id.split('/').map(Number);
  const { a, b } = plan.runs[run!]!.cores[core!]!;
  return `${a.written} ${b.written}`;
}

describe('links', () => {
  it('mark the cores that a repair moves, and the parts of the finding', () => {
    const plan = example('wrong/planer-on-break-tab');
    const { findings, links } = linked(plan);
    const at = findings.findIndex((f) => f.id === 'gate-on-wrong-tab');
    const [parts, cores] = links.findings[at]!;
    expect(parts).toContain('planer');
    expect(cores.length).toBeGreaterThan(0);
    for (const id of cores) expect(ends(plan, id)).toContain('planer.NC');
    expect(links.cores.find(([id]) => id === cores[0])![1]).toMatch(/^the white core from .* to /);
  });

  it.runIf(WHOLE)('mark the core between two terminals where a finding names both', () => {
    const plan = planOf(`parts:
  PS1: {kind: supply, output: 12 V DC}
  K1: {kind: relay, coil: {rated: 12 V DC}}
runs:
  - {link: [PS1.+, K1.A1]}
  - {link: [PS1.-, K1.A2]}
`);
    const of = (terminals: string[], line: number) =>
      linksOf(plan, [
        {
          ...check(Study.of(plan)).findings[0]!,
          ...{ parts: ['K1'], terminals, cause: null, repair: null, line, column: 1 },
        },
      ]).findings[0]![1];
    expect(of(['PS1.+', 'K1.A1'], 1)).toEqual(['0/0']);
    expect(of(['K1.A2'], 1)).toEqual(['1/0']);
    expect(of([], 1)).toEqual([]);
  });

  it.each(sampled(mostExamples(), 20))('name what the plan has: %s', (name) => {
    const plan = example(name);
    const { findings, links } = linked(plan);
    expect(links.findings).toHaveLength(findings.length);
    const named = new Set(links.cores.map(([id]) => id));
    for (const [i, [parts, cores]] of links.findings.entries()) {
      for (const part of parts) expect(plan.parts.has(part)).toBe(true);
      for (const part of findings[i]!.parts.filter((p) => plan.parts.has(p))) expect(parts).toContain(part);
      for (const id of cores) {
        expect(ends(plan, id)).toContain(' ');
        expect(named.has(id)).toBe(true);
      }
    }
  });
});
