/**
 * What a failure does at the machine, against the enumerating oracle, which shares no code with it: each failure that
 * another plan can say is written as that plan and walked there. And against the check of that plan.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { positionWord, restWord } from '../../../src/circuit/input-words.ts';
import { judge } from '../../../src/findings/judge.ts';
import { behaviourOf, lookOf } from '../../../src/meter/faults/behaviour.ts';
import { Effects, targetsOf } from '../../../src/meter/faults/effect.ts';
import { failuresOf } from '../../../src/meter/faults/fault-table.ts';
import { FaultTrials, Powered } from '../../../src/meter/faults/fault-trials.ts';
import { suspectedFaults } from '../../../src/meter/hunt/suspected-faults.ts';
import { stances } from '../../../src/meter/stance.ts';
import { Study } from '../../../src/study/study.ts';
import { beyondEnumeration, exampleNames, examplePath } from '../../helpers/example-plans.ts';
import { retold } from '../../helpers/faulty-text.ts';
import { planOf } from '../../helpers/plan-of.ts';
import { WHOLE } from '../../helpers/share.ts';
import { replay } from '../../oracles/brute.ts';

const names = exampleNames().filter((name) => {
  const text = readFileSync(examplePath(name), 'utf8');
  return !beyondEnumeration(text) && !/kind: selector|midpoint|kind: board/.test(text);
});
const tried = WHOLE ? names : ['saltmarsh-lane', 'plover-loft'];

describe.each(tried)('failures of %s', (name) => {
  const text = readFileSync(examplePath(name), 'utf8');
  const plan = planOf(text, `${name}.yaml`);

  it.runIf(WHOLE)('do what the oracle does with the plan that says the same', { timeout: 300_000 }, () => {
    const study = Study.of(plan);
    const trials = new FaultTrials(study);
    const loads = targetsOf(study).filter((l) => study.wired.consumers.some((c) => c.part === l && !c.dc));
    let compared = 0;
    for (const fault of failuresOf(study).filter((_, i) => i % 3 === 0)) {
      const other = retold(text, plan, fault);
      // That a line which meets earth opens its breaker, the oracle does not know.
      const earth = fault.at.some((key) => study.sides.bareEarth.has(study.circuit.netOf.get(key) ?? -1));
      if (other === undefined || (earth && fault.mode === 'cores-touch')) continue;
      for (const stance of stances(plan, study.wired)) {
        const step = (moved: readonly number[]) =>
          Object.fromEntries(
            study.wired.inputs.map((i) => [
              i.part,
              moved.includes(i.index) ? positionWord(i.kind) : restWord(plan, i.part, i.kind),
            ]),
          );
        const walk = [step([]), ...(stance.first.length > 0 ? [step(stance.first)] : []), step(stance.moved)];
        const seen = trials.seen([fault], stance)!;
        if (!seen.settled) continue;
        const end = replay(other, walk).at(-1)!;
        for (const load of loads) {
          compared++;
          expect([fault.text, stance.key, load, seen.runs.has(load)]).toEqual([
            fault.text,
            stance.key,
            load,
            end[load],
          ]);
        }
      }
    }
    expect(compared).toBeGreaterThan(20);
  });

  it('look the same in the circuit cut down to what matters and in the whole', { timeout: 300_000 }, () => {
    const study = Study.of(plan);
    const trials = new FaultTrials(study);
    // Mistakes in the wiring with them, which a hunt suspects as well.
    for (const fault of suspectedFaults(study).filter((f, i) => !f.untold && i % 6 === 0))
      for (const stance of stances(plan, study.wired)) {
        const whole = new Powered(trials.circuits.with([fault]));
        const seen = behaviourOf(
          whole.made.plan,
          whole.at(stance),
          new Set(fault.still ? [fault.still] : []),
        );
        expect([fault.text, stance.key, lookOf(trials.seen([fault], stance)!)]).toEqual([
          fault.text,
          stance.key,
          lookOf(seen),
        ]);
      }
  });

  it.runIf(WHOLE)(
    'fail the check as that plan where a load starts or stays off otherwise',
    { timeout: 300_000 },
    () => {
      const study = Study.of(plan);
      const effects = new Effects(study, new FaultTrials(study));
      const failures = failuresOf(study).filter((_, i) => i % 17 === 0);
      for (const fault of failures) {
        const other = retold(text, plan, fault);
        if (other === undefined) continue;
        const { seen } = effects.of(fault);
        if (!seen.some((s) => s.load !== null)) continue;
        expect([fault.text, judge(Study.of(planOf(other))).verdict]).toEqual([fault.text, 'fail']);
      }
    },
  );
});
