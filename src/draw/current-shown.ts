/** What of a circuit's state a drawing shows: which contacts are made, and which conductors are live. */
import type { Circuit } from '../circuit/circuit.ts';
import { push } from '../plan/map-entries.ts';
import { terminalKey } from '../plan/terminal-key.ts';
import type { DrawnCore, DrawnSymbol } from './drawing.ts';

/** One contact between two terminals. */
export interface Way {
  readonly common: string;
  readonly other: string;
  /** break contacts are made at rest; a selector's are positions */
  readonly sign: 'make' | 'break' | 'position';
}

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
  for (const part of circuit.plan.parts.values()) {
    const add = (common: string, other: string | undefined, sign: Way['sign']) => {
      if (other === undefined) return;
      push(ways, part.name, {
        common: terminalKey(part.name, common),
        other: terminalKey(part.name, other),
        sign,
      });
    };
    switch (part.kind) {
      case 'gate':
      case 'switch':
      case 'button':
      case 'cutout':
        add('COM', 'NO', 'make');
        add('COM', 'NC', 'break');
        if (part.kind === 'cutout') {
          add('95', '96', 'break');
          add('97', '98', 'make');
        }
        break;
      case 'selector':
        for (const p of part.positions) if (p !== 'off') add('COM', p, 'position');
        break;
      case 'relay':
      case 'timer':
      case 'board':
        for (const pole of part.poles) {
          add(pole.common, pole.make, 'make');
          add(pole.common, pole.break, 'break');
        }
        break;
      default:
        break;
    }
  }
  const figures = new Set(['gate', 'switch', 'button', 'cutout', 'selector', 'pole', 'static-pole']);
  return {
    waysOf: (symbol) => {
      if (!figures.has(symbol.figure)) return [];
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
