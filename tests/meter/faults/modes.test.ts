/** Every failure has its words, its share in a table, and a kind of part that a plan can weigh it for. */
import { describe, expect, it } from 'vitest';
import { laterFaults } from '../../../src/meter/faults/later.ts';
import { cureOf } from '../../../src/meter/faults/modes.ts';
import { weigh } from '../../../src/meter/faults/weights.ts';
import { faultsOf } from '../../../src/meter/meter-sheet.ts';
import { FAILURE_MODES } from '../../../src/plan/kinds/failure-modes.ts';
import { readPlan } from '../../../src/plan/read.ts';
import { tables } from '../../../src/ratings/tables.ts';
import { Study } from '../../../src/study/study.ts';
import { example, exampleNames } from '../../helpers/example-plans.ts';
import { planOf } from '../../helpers/plan-of.ts';
import { sampled, WHOLE } from '../../helpers/share.ts';
import { PLANS } from '../../plan/use/changed-plans.ts';
import { kindsIn } from '../../plan/use/published-schema.ts';

/** Plans have their resistors on links. */
const RESISTOR = `format: 1
practice: iec
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A}
  R1: {kind: resistor, resistance: 100 ohm}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm}, contact: {ratings: [6 A 250 V AC]}}
runs:
  - {cable: {gauge: 0.75 mm2, cores: 2}, length: 2 m, cores: {red: [PS1.+, R1.1], black: [PS1.-, K1.A2]}}
  - {cable: {gauge: 0.75 mm2, cores: 2}, length: 2 m, cores: {red: [R1.2, K1.A1]}}
`;

const all = (study: Study) => [...faultsOf(study), ...laterFaults(study)];

describe('the tables of failures', () => {
  const { rows } = tables.failureShares();

  it('give shares of each part whose lows sum to at most and whose highs to at least a hundred', () => {
    const whole = new Set(['diode', 'coil', 'gate switch', 'relay', 'adapter']);
    for (const component of new Set(rows.map((r) => r.component))) {
      const own = rows.filter((r) => r.component === component);
      expect(own.every((r) => r.low <= r.high && r.low >= 0 && r.high <= 100)).toBe(true);
      expect(own.reduce((sum, r) => sum + r.low, 0)).toBeLessThanOrEqual(100);
      if (whole.has(component)) expect(own.reduce((sum, r) => sum + r.high, 0)).toBeGreaterThanOrEqual(85);
    }
  });

  it('weigh every component that has a share', () => {
    const weighed = new Set(tables.failureWeights().rows.map((r) => r.component));
    for (const r of rows) expect(weighed.has(r.component), r.component).toBe(true);
  });

  // The figures as the sources have them (failure-mode shares of the MIL-HDBK-338B kind, from memory).
  it.each([
    ['diode', 'diode-shorted', 51],
    ['coil', 'coil-open', 42],
    ['coil', 'coil-part-shorted', 42],
    ['relay', 'stays-out', 55],
    ['relay', 'stays-in', 26],
    ['adapter', 'supply-dead', 52],
    ['terminal', 'tab-loose', 61],
  ])('hold the share of %s %s that is known, %i percent', (component, mode, share) => {
    const row = rows.find((r) => r.component === component && r.mode === mode)!;
    expect(row.low).toBeLessThanOrEqual(share);
    expect(row.high).toBeGreaterThanOrEqual(share);
  });
});

describe('failures', () => {
  it('are each of a known way, with words for what to do', () => {
    for (const name of sampled(exampleNames(), 8))
      for (const fault of all(Study.of(example(name)))) {
        expect(FAILURE_MODES).toContain(fault.mode);
        expect(cureOf(fault.mode, fault.item)).toMatch(/^[A-Z].*\.$/);
        expect(cureOf(fault.mode, fault.item)).not.toContain('%');
      }
  });

  it.runIf(WHOLE)('may be weighed in the plan, for the part they are of', () => {
    const names = sampled(exampleNames(), 8);
    for (const name of names) {
      const study = Study.of(example(name));
      const kinds = new Map([...study.plan.parts.values()].map((p) => [p.name, p.kind]));
      for (const { mode, parts } of all(study)) {
        const part = parts.find((p) => kinds.has(p))!;
        const kind = kinds.get(part)!;
        const accepted = [kind].some((k) => {
          const text = `practice: iec\nparts: {X: {kind: ${k}, likely: {${mode}: 2}}}\nruns: []`;
          try {
            planOf(text);
            return true;
          } catch (error) {
            return !String(error).includes('likely') && !String(error).includes(mode);
          }
        });
        expect(accepted, `${kind} ${mode}`).toBe(true);
      }
    }
  });

  it.runIf(WHOLE)('come in every way that a kind of part can be weighed for', { timeout: 60_000 }, () => {
    const come = new Set<string>();
    for (const text of [...PLANS.map(([, own]) => own), RESISTOR]) {
      const read = readPlan(new TextEncoder().encode(text), 'plan.yaml');
      if (!read.ok) continue;
      for (const { mode, parts } of all(Study.of(read.plan)))
        for (const name of parts) come.add(`${read.plan.parts.get(name)?.kind} ${mode}`);
    }
    const accepted = kindsIn('parts').flatMap(({ kind, of }) =>
      (of.properties!.likely?.propertyNames?.enum ?? []).map((mode) => `${kind} ${mode}`),
    );
    expect(accepted.length).toBeGreaterThan(100);
    expect(accepted.filter((field) => !come.has(field))).toEqual([]);
  });

  it('that a plan calls likely come first', () => {
    const plan = example('saltmarsh-lane');
    const parts = new Map(plan.parts);
    parts.set('router', { ...plan.parts.get('router')!, likely: { 'never-makes': 50 } });
    const [before, after] = [Study.of(plan), Study.of({ ...plan, parts })];
    const first = (study: Study) => {
      const weight = weigh(study, true);
      return all(study).sort((x, y) => weight(y) - weight(x))[0]!.text;
    };
    expect(first(before)).not.toContain('router');
    expect(first(after)).toBe('router: contact COM-NO never makes');
  });
});
