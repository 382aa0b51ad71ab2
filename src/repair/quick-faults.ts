/** What is wrong with a rewired circuit at a quick look. */
import type { Plan } from '../plan/plan.ts';
import { kindOf } from './kinds.ts';
import type { NumberedCircuit } from './numbered-circuit.ts';
import type { QuickLook, Wiring } from './quick-look.ts';
import type { RequiredState } from './required-states.ts';

type Joined = (a: number, b: number) => boolean;

/** How many things are wrong by the reading that fits best; gives up counting past `most`. */
export function countWrong(
  quick: QuickLook,
  wiring: Wiring,
  readings: readonly (readonly RequiredState[])[],
  most: number,
): number {
  let least = Number.POSITIVE_INFINITY;
  for (const states of readings)
    least = Math.min(least, wrongStates(quick, wiring, states, Math.min(most, least)));
  return least > most ? least : least + brokenRules(quick, wiring);
}

function wrongStates(
  quick: QuickLook,
  wiring: Wiring,
  states: readonly RequiredState[],
  most: number,
): number {
  let count = 0;
  for (const s of states) {
    const o = quick.outcome(wiring, s.steps);
    if (o.chatters || o.shorted) count++;
    for (const [target, run] of s.want) if (o.running.has(target) !== run) count++;
    if (count > most) return count;
  }
  return count;
}

/** Rules of question 1 that a quick look can hold: the sides apart, earth whole, line and neutral in their places. */
function brokenRules(quick: QuickLook, wiring: Wiring): number {
  const ever = quick.joined(wiring, true);
  const wires = quick.joined(wiring, false);
  let count = 0;
  const { circuit } = quick;
  const low = circuit.poles(false);
  const mains = circuit.poles(true);
  for (const a of mains) if (low.some((b) => ever(a, b))) count++;
  const pins = plugs(circuit).flatMap((name) => circuit.terminal(`${name}.PE`) ?? []);
  for (const p of circuit.parts.values()) {
    const earth = circuit.terminal(`${p.name}.PE`);
    const needs = pins.length > 0 && earth !== undefined && kindOf(p).needsEarth(p);
    if (needs && !pins.some((x) => wires(x, earth))) count++;
  }
  for (const pin of pins) if ([...mains, ...low].some((x) => wires(pin, x))) count++;
  return count + crossed(circuit, ever, wires);
}

function plugs({ parts }: { readonly parts: Plan['parts'] }): string[] {
  return [...parts.values()].filter((p) => p.kind === 'plug').map((p) => p.name);
}

/** Line reaching a neutral pin, or live without any contact in between. */
function crossed(circuit: NumberedCircuit, ever: Joined, wires: Joined): number {
  let count = 0;
  for (const plug of plugs(circuit)) {
    const [line, neutral] = [circuit.terminal(`${plug}.L`), circuit.terminal(`${plug}.N`)];
    for (const { nets } of circuit.consumers) {
      const [l, n] = [nets.get('L'), nets.get('N')];
      if (line === undefined || neutral === undefined || l === undefined || n === undefined) continue;
      if (ever(line, n) || ever(neutral, l)) count++;
      if (wires(line, l) && !wires(neutral, n)) count++;
    }
  }
  return count;
}
