/** Indicators as a forward drop and a resistance, with a resistor beside them or without. */

import type { DiodeEdge } from '../circuit/circuit.ts';
import type { BatteryPart, SupplyPart } from '../plan/part-types.ts';
import type { Plan } from '../plan/plan.ts';
import { partOfKey } from '../plan/terminal-key.ts';

/** V of the highest low-voltage source, for what leaks or lights on it. */
export function highestVolts(plan: Plan): number {
  const own = [...plan.parts.values()].filter(
    (p): p is SupplyPart | BatteryPart => p.kind === 'supply' || p.kind === 'battery',
  );
  return Math.max(1, ...own.map((p) => p.output.volts));
}

/**
 * An indicator. With a resistor beside it: its forward volts, rising by a tenth up to its current. Without one it is
 * taken as a panel indicator with a resistor of its own, made for the supply's volts.
 */
export function indicator(plan: Plan, d: DiodeEdge): { drop: number; ohms: number } {
  const amps = d.amps ?? 0.02;
  if (hasResistor(plan, d.part)) return { drop: d.drop, ohms: (0.1 * d.drop) / amps };
  return { drop: d.drop, ohms: Math.max(1, (highestVolts(plan) - d.drop) / amps) };
}

const neighbours = new WeakMap<Plan, ReadonlySet<string>>();

/** Indicators one of whose ends lies on a conductor with a resistor. */
export function hasResistor(plan: Plan, led: string): boolean {
  let found = neighbours.get(plan);
  if (!found) {
    found = ledsBesideResistors(plan);
    neighbours.set(plan, found);
  }
  return found.has(led);
}

/** The same, or there is a resistor with nothing on one of its ends, which may belong beside it. */
export function mayHaveResistor(plan: Plan, led: string): boolean {
  return (
    hasResistor(plan, led) ||
    [...plan.parts.values()].some(
      (p) => p.kind === 'resistor' && ['1', '2'].some((t) => !landsOn(plan, p.name, t)),
    )
  );
}

const landsOn = (plan: Plan, part: string, terminal: string): boolean =>
  plan.runs.some((run) =>
    run.cores.some((c) => [c.a, c.b].some((e) => e.part === part && e.terminal === terminal)),
  );

function ledsBesideResistors(plan: Plan): Set<string> {
  const around = new Map<string, string[]>();
  const key = (e: { part: string; terminal: string }) =>
    e.terminal === '' ? e.part : `${e.part}.${e.terminal}`;
  for (const run of plan.runs)
    for (const core of run.cores)
      for (const [x, y] of [
        [key(core.a), key(core.b)],
        [key(core.b), key(core.a)],
      ] as const)
        around.set(x, [...(around.get(x) ?? []), y]);
  const found = new Set<string>();
  for (const part of plan.parts.values()) {
    if (part.kind !== 'led') continue;
    const queue = [`${part.name}.A`, `${part.name}.K`];
    const seen = new Set(queue);
    for (let at = queue.pop(); at !== undefined; at = queue.pop())
      for (const to of around.get(at) ?? []) if (!seen.has(to)) seen.add(to) && queue.push(to);
    if ([...seen].some((t) => plan.parts.get(partOfKey(t))?.kind === 'resistor')) found.add(part.name);
  }
  return found;
}
