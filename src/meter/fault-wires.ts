/** Single mistakes in the wiring: cores open, on a wrong terminal, changed over, touching. */
import type { WiredCircuit } from '../circuit/build.ts';
import type { ContactEdge } from '../circuit/circuit.ts';
import type { Core, Plan, Run } from '../plan/plan.ts';
import { splitTerminalKey } from '../plan/terminal-key.ts';
import { bothCores, coreFromTo, theCore } from '../text/core-names.ts';
import { type Fault, RANK, withCore } from './fault.ts';
import { crossed, swapped } from './fault-swaps.ts';
import { terminalsOf } from './probe-terminals.ts';
import { bareMark, keyOf, partsOf } from './probe-words.ts';

/** Terminals that a plan may have for cores on the wrong part to be tried as well. */
const SMALL = 60;

type End = 'a' | 'b';
const ENDS = ['a', 'b'] as const;

/** Every wiring mistake; `mark` writes a terminal as the plan does. */
export function wiringFaults(plan: Plan, mark: (key: string) => string): Fault[] {
  const faults: Fault[] = [];
  const there = terminalsOf(plan);
  const near = neighboursOf(plan, there);
  for (const run of plan.runs) {
    run.cores.forEach((core, index) => {
      faults.push(openCore(run, core, index));
      for (const end of ENDS) {
        const own = there(core[end].part).map((terminal) => keyOf({ part: core[end].part, terminal }));
        faults.push(...landed(run, index, end, mark, [...own, ...near(core[end].part)]));
      }
    });
    for (let i = 0; i < run.cores.length; i++)
      for (let j = i + 1; j < run.cores.length; j++) {
        for (const end of ENDS) faults.push(...swapped(run, i, j, end));
        if (!run.link) faults.push(touching(run, i, j));
      }
  }
  return [...faults, ...crossed(plan)];
}

function openCore(run: Run, core: Core, index: number): Fault {
  const wired = !run.link && run.cable !== undefined;
  const { colour, a, b } = core;
  const ended = { colour, link: run.link, a: a.written, b: b.written };
  return {
    item: coreFromTo(ended),
    mode: 'core-open',
    text: `${coreFromTo(ended)} is broken or not joined`,
    parts: partsOf(core.a, core.b),
    at: [keyOf(core.a), keyOf(core.b)],
    rank: RANK.open,
    change: { parted: [{ ends: [keyOf(core.a), keyOf(core.b)] }], joined: [] },
    ...(wired
      ? {
          circuit: (c: WiredCircuit) => ({
            ...c,
            wires: c.wires.filter((w) => w.run !== run.index || w.core !== index),
          }),
        }
      : {
          plan: (p: Plan) => withCore(p, run.index, index, undefined),
          moved: [{ run: run.index, core: index, ends: undefined }],
        }),
  };
}

/** A core whose end is on another terminal of its part, or of a part in the same box. */
function landed(
  run: Run,
  index: number,
  end: End,
  mark: (key: string) => string,
  elsewhere: readonly string[],
): Fault[] {
  const core = run.cores[index]!;
  const at = core[end];
  const other = core[end === 'a' ? 'b' : 'a'];
  const named = theCore({ colour: core.colour, link: run.link });
  const to = (key: string): Fault => {
    const { part, terminal } = splitTerminalKey(key);
    const same = part === at.part;
    const where = same ? bareMark(mark(key)) : mark(key);
    return {
      item: coreFromTo({ colour: core.colour, link: run.link, a: core.a.written, b: core.b.written }),
      mode: 'wrong-terminal',
      text: `${at.part}: ${named} from ${other.written} is on ${where} instead of ${same ? bareMark(at.written) : at.written}`,
      parts: [...new Set([at.part, part, other.part])],
      at: [keyOf(at), keyOf(other), key],
      rank: same ? RANK.wrongTab : RANK.neighbour,
      change: { parted: [{ ends: [keyOf(core.a), keyOf(core.b)] }], joined: [[keyOf(other), key]] },
      plan: (p) =>
        withCore(p, run.index, index, { ...core, [end]: { ...at, part, terminal, written: mark(key) } }),
      moved: [
        {
          run: run.index,
          core: index,
          ends: end === 'a' ? [key, keyOf(other)] : [keyOf(other), key],
        },
      ],
    };
  };
  return elsewhere.filter((key) => key !== keyOf(at)).map(to);
}

function touching(run: Run, i: number, j: number): Fault {
  const [x, y] = [run.cores[i]!, run.cores[j]!];
  return {
    item: `${bothCores(x.colour, y.colour)} from ${x.a.written} to ${x.b.written}`,
    mode: 'cores-touch',
    text: `${bothCores(x.colour, y.colour)} from ${x.a.written} and ${y.a.written} to ${x.b.written} and ${y.b.written} touch`,
    parts: partsOf(x.a, x.b, y.a, y.b),
    at: [x.a, x.b, y.a, y.b].map(keyOf),
    rank: RANK.shorted,
    change: { parted: [], joined: [[keyOf(x.a), keyOf(y.a)]] },
    circuit: (c) => joined(c, keyOf(x.a), keyOf(y.a)),
  };
}

/** The circuit with two terminals touching. */
export function joined(c: WiredCircuit, a: string, b: string): WiredCircuit {
  const [x, y] = [c.netOf.get(a), c.netOf.get(b)];
  if (x === undefined || y === undefined || x === y) return c;
  return { ...c, contacts: [...c.contacts, touch(x, y)] };
}

/** Two nets that touch, for good. */
export function touch(a: number, b: number): ContactEdge {
  return { a, b, when: { by: 'always' }, part: '', terminals: ['', ''], pole: 0 };
}

/** Terminals of the other parts in the same box; none where the plan is large. */
function neighboursOf(
  plan: Plan,
  there: (part: string) => readonly string[],
): (part: string) => readonly string[] {
  const count = [...plan.terminals.values()].reduce((sum, t) => sum + t.names.length, 0);
  const near = new Map<string, string[]>();
  if (count <= SMALL)
    for (const box of plan.parts.values()) {
      if (box.kind !== 'box') continue;
      const inside = [box.name, ...box.holds];
      for (const part of inside)
        near.set(
          part,
          inside
            .filter((p) => p !== part)
            .flatMap((p) => there(p).map((t) => keyOf({ part: p, terminal: t }))),
        );
    }
  return (part) => near.get(part) ?? [];
}
