/** States that there can be: a selector stands in one position. */
import type { Circuit } from '../circuit/circuit.ts';
import { type Bdd, FALSE, type Fn, TRUE } from './bdd.ts';
import { inputVariable } from './conduction.ts';

/** Pure. One position of each selector at the most; none of them is its resting one. */
export function validStates(circuit: Circuit, bdd: Bdd): Fn {
  const groups = new Map<string, Fn[]>();
  for (const i of circuit.inputs) {
    if (i.kind !== 'selector') continue;
    const list = groups.get(i.part) ?? [];
    list.push(bdd.variable(inputVariable(circuit, i.index)));
    groups.set(i.part, list);
  }
  return [...groups.values()].reduce((valid, list) => bdd.and(valid, atMostOne(bdd, list)), TRUE);
}

/** At most one of these variables, made from the lowest up, so that each takes a step and not a pass over all. */
function atMostOne(bdd: Bdd, variables: readonly Fn[]): Fn {
  const upwards = [...variables].sort((a, b) => bdd.topVariable(b) - bdd.topVariable(a));
  let none: Fn = TRUE;
  let most: Fn = TRUE;
  for (const v of upwards) {
    most = bdd.ite(v, none, most);
    none = bdd.ite(v, FALSE, none);
  }
  return most;
}
