/** What the plan's intent asks of each load, as a function of the inputs and of a wanted seal-in. */
import type { Input } from './brute-circuit.ts';
import type { Machine } from './brute-machine.ts';
import { type Fields, isMap, listOf, text } from './brute-read.ts';

interface Cond {
  input: number;
  at: number;
}

export interface Want {
  name: string;
  on: Cond[][];
  blocked: Cond[];
  after: Cond[];
  stopped: Cond[];
  mustRunDead: boolean;
  named: Set<number>;
}

const holds = (c: Cond, inputs: ArrayLike<number>): boolean => inputs[c.input] === c.at;

function cond(inputs: Input[], entry: unknown, blocks: boolean): Cond {
  const [name, position] = text(entry).split('.');
  const input = inputs.findIndex((x) => x.name === name);
  const found = inputs[input];
  if (!found) throw new Error(`oracle: intent names no input: ${text(entry)}`);
  if (position !== undefined) return { input, at: found.words.indexOf(position) };
  return { input, at: blocks && found.kind === 'switch' ? 0 : 1 };
}

/** The wants of a plan. A load that an existing intent leaves out is asked nothing. */
export function readWants(m: Machine): Want[] {
  const { inputs, consumers } = m.circuit;
  const gates = inputs.filter((x) => x.kind === 'gate').map((x) => [cond(inputs, x.name, false)]);
  const make = (name: string, f: Fields): Want => {
    const conds = (key: string, blocks: boolean): Cond[] =>
      listOf(f[key]).map((e) => cond(inputs, e, blocks));
    const on =
      f['runs-on'] === undefined
        ? gates
        : listOf(f['runs-on']).map((e) => listOf(e).map((x) => cond(inputs, x, false)));
    const w = {
      name,
      on,
      blocked: conds('blocked-by', true),
      after: conds('stays-on-after', false),
      stopped: conds('stopped-by', true),
      mustRunDead: text(f['if-supply-fails']) === 'running',
    };
    const named = [...w.on.flat(), ...w.blocked, ...w.after, ...w.stopped].map((c) => c.input);
    return { ...w, named: new Set(named) };
  };
  if (m.wiring.intent) {
    const intent = m.wiring.intent;
    // `fan2: fan1` is the intent of fan1 once more
    const written = (x: unknown): unknown => (typeof x === 'string' ? written(intent[x]) : x);
    return Object.entries(intent).flatMap(([name, x]) => {
      const f = written(x);
      return isMap(f) && 'lit-when' in f ? [] : [make(name, isMap(f) ? f : {})];
    });
  }
  const loads = consumers.filter((x) => x.kind !== 'outlet');
  return (loads.length > 0 ? loads : consumers).map((x) => make(x.name, {}));
}

export interface Asked {
  should: boolean;
  /** false where the plan format leaves it open: start and stop pressed together */
  cares: boolean;
  blocked: boolean;
  /** some runs-on entry, or the start button, is in its working position */
  called: boolean;
  /** at least one input of a runs-on entry is in its working position */
  partly: boolean;
}

export function asked(w: Want, inputs: ArrayLike<number>, latched: boolean): Asked {
  const is = (c: Cond): boolean => holds(c, inputs);
  const blocked = w.blocked.some(is);
  const called = w.on.some((e) => e.every(is)) || w.after.some(is);
  const stopped = w.stopped.some(is);
  const should = !blocked && (called || (latched && !stopped));
  return { should, cares: blocked || !(stopped && called), blocked, called, partly: w.on.flat().some(is) };
}

/** Whether the wanted seal-in holds after this input state. */
export function latch(w: Want, inputs: ArrayLike<number>, latched: boolean): boolean {
  const is = (c: Cond): boolean => holds(c, inputs);
  if (w.blocked.some(is) || w.stopped.some(is)) return false;
  return latched || w.after.some(is);
}
