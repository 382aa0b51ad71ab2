import { positionWord } from '../circuit/input-words.ts';
import { FALSE } from '../logic/bdd.ts';
import { combinationsOf, type Moved, movedIn } from '../logic/verify.ts';
import type { Study } from '../study/study.ts';
import type { Counterexample, LogicProof, LogicStep } from './report-model.ts';

/** The proof as data: how many states, whether the intent holds in all of them, and the smallest that breaks it. */
export function proofOf(s: Study): LogicProof {
  const v = s.verified;
  const inputs = new Set(s.circuit.inputs.map((i) => i.part)).size;
  if (!v) return { inputs, combinations: combinations(s), holds: null, counterexample: null };
  const first = v.deviations[0];
  let counterexample: Counterexample | null = null;
  if (first)
    counterexample = {
      steps: first.steps.map((moved) => step(s, moved)),
      target: first.target,
      expected: first.expected,
      found: !first.expected,
    };
  const settled = v.chatter === FALSE && v.races.length === 0;
  if (!counterexample && !settled && v.intents.wanted[0]) {
    const states = v.chatter === FALSE ? v.races[0]!.states : v.chatter;
    const target = v.races[0]?.target ?? v.intents.wanted[0].target;
    counterexample = {
      steps: [step(s, movedIn(s.circuit, v.model.bdd, states) ?? [])],
      target,
      expected: true,
      found: false,
    };
  }
  const judged = v.intents.wanted.length > 0;
  return {
    inputs,
    combinations: combinations(s),
    holds: judged ? v.deviations.length === 0 && settled : null,
    counterexample,
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
  return { moved: Object.fromEntries(entries) };
}
