import type { Input } from '../circuit/circuit.ts';
import { positionWord, restWord } from '../circuit/input-words.ts';
import { follow } from '../logic/follow.ts';
import { Undecided } from '../logic/undecided.ts';
import { push, record } from '../plan/map-entries.ts';
import type { Basis } from './basis.ts';
import type { Nominal } from './nominal.ts';
import type { TableRow, TruthTable } from './table-model.ts';
import { everyStep, movesOf, type TableState, tableSteps } from './table-states.ts';
import { inTime } from './timers/in-time.ts';

/** A table of every combination would be too long to read. */
export class TooManyInputs extends Error {
  override readonly name = 'TooManyInputs';
}

/** More inputs than this make a table of every combination too long to read. */
const MOST_FOR_ALL = 12;

/**
 * The truth table a person would write, or every combination, at nominal volts: a coil that does not get its pull-in is
 * out. What a remembered start button leads to stands behind the states reached straight from rest.
 * Throws TooManyInputs when `all` is asked for more than 12 inputs, Undecided when the circuit cannot be decided.
 */
export function truthTable(
  s: Basis & { readonly nominal: Nominal | undefined },
  options: { readonly all: boolean },
): TruthTable {
  const { nominal } = s;
  if (!nominal) throw new Undecided(s.undecided);
  if (options.all && s.circuit.inputs.length > MOST_FOR_ALL)
    throw new TooManyInputs(
      `--all is for at most ${MOST_FOR_ALL} inputs; this plan has ${s.circuit.inputs.length}`,
    );
  if (options.all && nominal.rests === 'some')
    throw new Undecided('to solve every state for its volts would take too long');
  const v = nominal.verified;
  const states = options.all ? everyStep(s, v) : tableSteps(s, v);
  const inputs = new Map<string, Input[]>();
  for (const i of s.circuit.inputs) push(inputs, i.part, i);
  const loads = loadColumns(s, nominal);
  const time = inTime(s, v);
  return {
    ...(time && { inTime: time }),
    rests: nominal.rests,
    columns: [...inputs.keys(), ...new Set(s.circuit.relays.map((r) => r.part)), ...loads],
    rows: states.map((state) => row(s, nominal, state, { inputs, loads })),
  };
}

function loadColumns(s: Basis, { verified: v }: Nominal): string[] {
  const relays = new Set(s.circuit.relays.map((r) => r.part));
  const wanted = v.intents.wanted.map((w) => w.target).filter((t) => !relays.has(t));
  const loads = s.circuit.consumers.filter((c) => c.kind !== 'outlet').map((c) => c.part);
  return [...new Set([...wanted, ...loads])];
}

/** What the columns of a table stand for. */
interface Columns {
  readonly inputs: ReadonlyMap<string, readonly Input[]>;
  readonly loads: readonly string[];
}

function row(s: Basis, { verified: v }: Nominal, state: TableState, columns: Columns): TableRow {
  const { label, steps } = state;
  const set = new Set(steps.at(-1));
  const inputs = record<string>();
  for (const [part, own] of columns.inputs) {
    const at = own.find((i) => set.has(i.index));
    inputs[part] = at ? (at.position ?? positionWord(at.kind)) : restWord(s.plan, part, own[0]!.kind);
  }
  const reached = follow(v, steps);
  const word = (target: string, on: string, off: string) => {
    const x = reached.runs(target);
    return x === undefined ? 'chatters' : x ? on : off;
  };
  const relays = new Set(s.circuit.relays.map((r) => r.part));
  const expected = [...reached.wanted()].flatMap(([target, on]) =>
    on === null ? [] : [[target, relays.has(target) ? (on ? 'in' : 'out') : on ? 'runs' : 'off'] as const],
  );
  return {
    label,
    moves: movesOf(s, steps),
    inputs,
    relays: record([...relays].map((r) => [r, word(r, 'in', 'out')])),
    loads: record(columns.loads.map((l) => [l, word(l, 'runs', 'off')])),
    expected: record(expected),
  };
}
