/** What a page takes along of a plan stands for the whole of it. */
import { describe, expect, it } from 'vitest';
import { buildCircuit } from '../../src/circuit/build.ts';
import { IntendedStates } from '../../src/machine/intended-state.ts';
import type { MachineState } from '../../src/machine/machine.ts';
import { settledState } from '../../src/machine/power.ts';
import { stateView } from '../../src/machine/state-view.ts';
import { type PackedPlan, packPlan } from '../../src/page/pack.ts';
import { unpackPlan } from '../../src/page/unpack.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { Study } from '../../src/study/study.ts';
import { example, exampleNames } from '../helpers/example-plans.ts';
import { planOf } from '../helpers/plan-of.ts';
import { sampled } from '../helpers/share.ts';
import { someStates } from './states.ts';

const through = (plan: Plan): Plan => unpackPlan(JSON.parse(JSON.stringify(packPlan(plan))) as PackedPlan);

function told(plan: Plan, state: MachineState) {
  const targets = new Map(state.circuit.consumers.map((c) => [c.part, null]));
  const { made: _, live, ...view } = stateView(plan, state, targets);
  return { ...view, live: [...live], relays: state.relays, alive: state.alive, settled: state.settled };
}

describe('a plan packed and unpacked', () => {
  it.each(sampled([...exampleNames(), ...exampleNames('wrong')], 6))('settles as it did: %s', (name) => {
    const plan = example(name);
    const again = through(plan);
    for (const moved of someStates(plan))
      expect(told(again, settledState(Study.of(again), moved, 'on'))).toEqual(
        told(plan, settledState(Study.of(plan), moved, 'on')),
      );
  });

  it.each(exampleNames())('wants what it wanted: %s', (name) => {
    const plan = example(name);
    const [a, b] = [plan, through(plan)].map((p) => new IntendedStates(buildCircuit(p), false));
    for (const moved of someStates(plan)) expect(b!.at(0, moved)).toEqual(a!.at(0, moved));
  });

  it('takes nothing along that the file alone knows', () => {
    const text = JSON.stringify(packPlan(example('saltmarsh-lane')));
    expect(text).not.toMatch(/"where"|"at"|"line"|"price"|"terminals"|saltmarsh|Saltmarsh/);
  });

  it('keeps names that mean something to a program', () => {
    const plan = planOf(`parts:
  constructor: {kind: gate}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 144 ohm}, contact: {ratings: [5 A 240 V AC]}}
runs:
  - {link: [constructor.NO, K1.A1]}
`);
    expect([...through(plan).parts.keys()]).toEqual(['constructor', 'K1']);
  });
});
