/** What one coil does in one state is the same for every command, and it is what an independent oracle works out. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { movedIn } from '../../src/page/groups.ts';
import { Study } from '../../src/study/study.ts';
import { example, exampleNames } from '../helpers/example-plans.ts';
import { planOf } from '../helpers/plan-of.ts';
import { sampled, WHOLE } from '../helpers/share.ts';
import { randomPlan } from '../logic/random-plan.ts';
import { nominalStates } from '../oracles/nominal-states.ts';
import { randomLoop } from '../oracles/random-loop.ts';
import { compareStates, nothingYet } from './agreement.ts';

const SEED = Number(process.env.FC_SEED ?? 5);

/** All in the long run; one in fifty in the short one, which people wait for. */
const taste = (all: number): number => (WHOLE ? all : Math.ceil(all / 50));

/** The plan in thin wire, each length another, now and then on a supply that gives little. */
function inThinWire(text: string, tape: readonly number[]): string {
  let at = 0;
  const pick = (n: number) => tape[at++ % tape.length]! % n;
  const gauge = ['24 AWG', '22 AWG', '20 AWG'][pick(3)]!;
  const weak = pick(3) === 0;
  return text
    .replaceAll('14 AWG', gauge)
    .replace(/length: [\d.]+ m/g, () => `length: ${1 + pick(80)} m`)
    .replace(/limit: [\d.]+ A/, (m) => (weak ? 'limit: 150 mA' : m));
}

function thinPlans(count: number): string[] {
  const tapes = fc.sample(fc.array(fc.nat(999), { minLength: 40, maxLength: 120 }), {
    numRuns: count,
    seed: SEED,
  });
  return tapes.map((tape) => inThinWire(randomPlan(tape), tape));
}

const loops = (count: number) => fc.sample(randomLoop(), { numRuns: count, seed: SEED });

describe('table, read, page and proof tell the same of every state', () => {
  it.each(
    sampled(
      [...exampleNames(), ...exampleNames('wrong')].filter((_, i) => i % 2 === 0),
      6,
    ),
  )('%s', (name) => {
    expect(compareStates(example(name), nothingYet(), name).wrong).toEqual([]);
  });

  it('of a selector at hand, kept from an earlier difference', () => {
    const text = readFileSync(new URL('../corpus/selector-hand-in-thin-wire.yaml', import.meta.url), 'utf8');
    expect(compareStates(planOf(text), nothingYet(), 'selector').wrong).toEqual([]);
  });

  it.runIf(WHOLE)(
    'of generated plans, in thin wire and on weak supplies',
    () => {
      const sum = nothingYet();
      const texts = [...loops(taste(40)), ...thinPlans(taste(40))];
      for (const text of texts) compareStates(planOf(text), sum, text);
      expect(sum.wrong).toEqual([]);
      expect(sum.states).toBeGreaterThan(taste(800));
      // Without these the property would say little; a few plans may have none.
      if (WHOLE) expect(sum.otherThanJoined).toBeGreaterThan(40);
      if (process.env.PULLIN_COUNT) console.log({ ...sum, plans: texts.length });
    },
    600_000,
  );
});

describe('the oracle that solves every state as a full matrix', () => {
  it.runIf(WHOLE)(
    'has the same coils in',
    () => {
      let states = 0;
      let short = 0;
      for (const text of fc.sample(randomLoop({ gates: 5 }), { numRuns: taste(250), seed: SEED + 1 })) {
        const study = Study.of(planOf(text));
        const rows = study.truthTable({ all: true }).rows.filter((r) => r.moves.length < 2);
        const told = new Map(rows.map((r) => [movedIn(study.circuit, r).join(), r.relays]));
        for (const state of nominalStates(text)) {
          const moved = study.circuit.inputs.filter((i) => state.inputs.includes(i.part)).map((i) => i.index);
          const relays = told.get(moved.join())!;
          if (state.in === undefined) continue;
          states++;
          for (const name of Object.keys(state.volts)) {
            const at = state.in.includes(name) ? 'in' : 'out';
            expect([text, state, relays[name]]).toEqual([text, state, at]);
            if (at === 'out' && state.volts[name]! > 1) short++;
          }
        }
      }
      expect(states).toBeGreaterThan(taste(2000));
      if (WHOLE) expect(short).toBeGreaterThan(60);
      if (process.env.PULLIN_COUNT) console.log({ states, short });
    },
    600_000,
  );
});
