import { positionWord } from '../circuit/input-words.ts';
import { FALSE } from '../logic/bdd.ts';
import { combinationsOf, type Moved, movedIn, type Verified } from '../logic/verify.ts';
import { record } from '../plan/map-entries.ts';
import type { Study } from '../study/study.ts';
import type { Counterexample, LogicProof, LogicStep } from './report-model.ts';

const RESTS = { joins: 'joins', volts: 'volts', some: 'some volts', unknown: 'no volts' } as const;

/**
 * The proof as data, at nominal volts: how many states, whether the intent holds in all of them, the smallest that breaks
 * it, and what that rests on.
 */
export function proofOf(s: Study): LogicProof {
  const inputs = new Set(s.circuit.inputs.map((i) => i.part)).size;
  const { nominal } = s;
  if (!nominal)
    return {
      inputs,
      combinations: combinations(s),
      holds: null,
      counterexample: null,
      holdsAtNominalVolts: null,
      restsOn: null,
    };
  const { verified } = s;
  const byJoins = verified ? holds(verified) : null;
  // Too few volts may hide a wrong wire; the wire is wrong all the same.
  const first = verified && byJoins === false ? verified : nominal.verified;
  return {
    inputs,
    combinations: combinations(s),
    holds: byJoins,
    counterexample: counterexampleOf(s, first),
    holdsAtNominalVolts: byJoins === false ? false : holds(nominal.verified),
    restsOn: nominal.rests === 'joins' && !coilsKnown(s) ? 'no volts' : RESTS[nominal.rests],
  };
}

/** Whether every load does what is meant, by what is joined; null where the plan intends nothing. */
export function holds(v: Verified): boolean | null {
  return v.intents.wanted.length > 0 ? v.deviations.length === 0 && settles(v) : null;
}

const settles = (v: Verified): boolean => v.chatter === FALSE && v.races.length === 0;

/** Whether the plan gives every coil's current, so that its volts mean something. */
function coilsKnown(s: Study): boolean {
  return s.coilStates.every(({ fed }) => fed.model.ohms !== undefined || fed.part.kind === 'board');
}

function counterexampleOf(s: Study, v: Verified): Counterexample | null {
  const first = v.deviations[0];
  if (first)
    return {
      steps: first.steps.map((moved) => step(s, moved)),
      target: first.target,
      expected: first.expected,
      found: !first.expected,
    };
  if (settles(v) || !v.intents.wanted[0]) return null;
  const states = v.chatter === FALSE ? v.races[0]!.states : v.chatter;
  return {
    steps: [step(s, movedIn(s.circuit, v.model.bdd, states) ?? [])],
    target: v.races[0]?.target ?? v.intents.wanted[0].target,
    expected: true,
    found: false,
  };
}

function combinations(s: Study): number | string {
  const n = combinationsOf(s.circuit);
  if (n <= BigInt(Number.MAX_SAFE_INTEGER)) return Number(n);
  const bits = s.circuit.inputs.length;
  return n === 1n << BigInt(bits) ? `2^${bits}` : n.toString();
}

/** Positions of the inputs that are away from rest in one step. */
function step(s: Study, moved: Moved): LogicStep {
  const entries = moved.map((i) => {
    const input = s.circuit.inputs[i]!;
    return [input.part, input.position ?? positionWord(input.kind)] as const;
  });
  return { moved: record(entries) };
}
