/** What of a circuit's state a drawing shows: which contacts are made, and which conductors are live. */
import type { Circuit } from '../circuit/circuit.ts';
import { push } from '../plan/map-entries.ts';
import { terminalKey } from '../plan/terminal-key.ts';
import type { DrawnCore, DrawnSymbol } from './drawing.ts';
import { traitsOf } from './figure-traits.ts';
import { drawnKind, type Way } from './kinds.ts';

export interface Shown {
  waysOf(symbol: DrawnSymbol): readonly Way[];
  made(way: Way): boolean;
  live(core: DrawnCore): boolean;
  isAc(part: string): boolean;
}

/** A state of the circuit, as a drawing needs it. */
export interface DrawnState {
  /** whether the contact between two terminals is made */
  made(common: string, other: string): boolean;
  /** whether a core carries volts against its source's return; undefined: not shown */
  live?(run: number, core: number): boolean;
}

/** Fits a state to the symbols of a drawing of the same circuit. */
export function shownState(circuit: Circuit, state: DrawnState): Shown {
  const ways = new Map<string, Way[]>();
  for (const part of circuit.plan.parts.values())
    for (const { common, other, sign } of drawnKind(part).ways(part))
      push(ways, part.name, {
        common: terminalKey(part.name, common),
        other: terminalKey(part.name, other),
        sign,
      });
  return {
    waysOf: (symbol) => {
      if (!traitsOf(symbol.figure).contacts) return [];
      const own = new Set(symbol.terminals.map((t) => t.key));
      return (ways.get(symbol.part) ?? []).filter((w) => own.has(w.common) && own.has(w.other));
    },
    made: (way) => state.made(way.common, way.other),
    live: (core) => state.live?.(core.run, core.core) ?? false,
    isAc: (name) => {
      const part = circuit.plan.parts.get(name);
      return part !== undefined && 'output' in part && part.output.kind === 'ac';
    },
  };
}
