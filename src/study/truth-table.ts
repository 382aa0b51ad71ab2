import { positionWord, restWord, sayMoved } from '../circuit/input-words.ts';
import { FALSE } from '../logic/bdd.ts';
import { baseState, entryState } from '../logic/entry-states.ts';
import { Undecided } from '../logic/undecided.ts';
import { type Moved, runsAt, stateOf, type Verified } from '../logic/verify.ts';
import type { Basis } from './basis.ts';
import type { TableRow, TruthTable } from './table-model.ts';

/** A table of every combination would be too long to read. */
export class TooManyInputs extends Error {
  override readonly name = 'TooManyInputs';
}

/** More inputs than this make a table of every combination too long to read. */
const MOST_FOR_ALL = 12;

/**
 * The truth table a person would write: all shut, each entry of the intent alone, all open, each blocking input with
 * everything open; or every combination. Every row is the state reached straight from rest.
 * Throws TooManyInputs when `all` is asked for more than 12 inputs, Undecided when the circuit cannot be decided.
 */
export function truthTable(s: Basis, options: { readonly all: boolean }): TruthTable {
  const v = s.verified;
  if (!v) throw new Undecided(s.undecided);
  if (options.all && s.circuit.inputs.length > MOST_FOR_ALL)
    throw new TooManyInputs(
      `--all is for at most ${MOST_FOR_ALL} inputs; this plan has ${s.circuit.inputs.length}`,
    );
  const states = options.all ? everyState(v) : usualStates(s, v);
  const names = [...new Set(s.circuit.inputs.map((i) => i.part))];
  const loads = loadColumns(s, v);
  return {
    columns: [...names, ...s.circuit.relays.map((r) => r.part), ...loads],
    rows: states.map(({ label, moved }) => row(s, v, label, moved, loads)),
  };
}

function loadColumns(s: Basis, v: Verified): string[] {
  const relays = new Set(s.circuit.relays.map((r) => r.part));
  const wanted = v.intents.wanted.map((w) => w.target).filter((t) => !relays.has(t));
  const loads = s.circuit.consumers.filter((c) => c.kind !== 'outlet').map((c) => c.part);
  return [...new Set([...wanted, ...loads])];
}

function everyState(v: Verified): { label: string; moved: Moved }[] {
  let states: number[][] = [[]];
  for (const part of new Set(v.circuit.inputs.map((i) => i.part))) {
    const own = v.circuit.inputs.filter((i) => i.part === part).map((i) => i.index);
    states = [states, ...own.map((i) => states.map((x) => [...x, i]))].flat();
  }
  return states.map((moved) => ({ label: sayMoved(v.circuit, moved), moved }));
}

function usualStates(s: Basis, v: Verified): { label: string; moved: Moved }[] {
  const found: { label: string; moved: Moved }[] = [{ label: 'all shut', moved: [] }];
  const seen = new Set(['']);
  const add = (label: string, moved: Moved | undefined) => {
    if (!moved) return;
    const sorted = [...moved].sort((a, b) => a - b);
    if (seen.has(sorted.join())) return;
    seen.add(sorted.join());
    found.push({ label, moved: sorted });
  };
  for (const w of v.intents.wanted) {
    const base = baseState(v, w);
    add('all shut, nothing blocking', base);
    for (const e of w.entries)
      add(`${e.refs.map((r) => r.position ?? r.part).join(' with ')} alone`, entryState(v, w, e.works, base));
  }
  const gates = s.circuit.inputs.filter((i) => i.kind === 'gate').map((i) => i.index);
  const bases = [...new Set(v.intents.wanted.flatMap((w) => baseState(v, w)))];
  const open = [...new Set([...gates, ...bases])];
  add('all gates open', open);
  for (const w of v.intents.wanted)
    for (const { ref } of w.blockers) {
      const own = s.circuit.inputs.filter((i) => i.part === ref.part);
      const named = own.find((i) => i.position === ref.position) ?? own[0];
      if (!named) continue;
      const without = open.filter((i) => !own.some((o) => o.index === i));
      const isSwitch = named.kind === 'switch';
      const resting = named.kind === 'selector' && named.position !== ref.position;
      add(
        `all gates open, ${ref.part} ${isSwitch ? 'off' : resting ? `at ${ref.position}` : positionWord(named.kind, named.position)}`,
        isSwitch || resting ? without : [...without, named.index],
      );
    }
  return found;
}

function row(s: Basis, v: Verified, label: string, moved: Moved, loads: readonly string[]): TableRow {
  const set = new Set(moved);
  const inputs: Record<string, string> = {};
  for (const part of new Set(s.circuit.inputs.map((i) => i.part))) {
    const own = s.circuit.inputs.filter((i) => i.part === part);
    const at = own.find((i) => set.has(i.index));
    inputs[part] = at ? (at.position ?? positionWord(at.kind)) : restWord(s.plan, part, own[0]!.kind);
  }
  const word = (x: boolean | undefined, on: string, off: string) =>
    x === undefined ? 'chatters' : x ? on : off;
  const relays = Object.fromEntries(
    s.circuit.relays.map((r) => [r.part, word(runsAt(v, r.part, moved), 'in', 'out')]),
  );
  const loadWords = Object.fromEntries(loads.map((l) => [l, word(runsAt(v, l, moved), 'runs', 'off')]));
  const expected: Record<string, string> = {};
  for (const w of v.intents.wanted) {
    const { bdd } = v.model;
    const here = stateOf(s.circuit, bdd, moved);
    const wanted = bdd.and(here, bdd.diff(bdd.any(w.entries.map((e) => e.works)), w.blocked)) !== FALSE;
    const isRelay = s.circuit.relays.some((r) => r.part === w.target);
    expected[w.target] = wanted ? (isRelay ? 'in' : 'runs') : isRelay ? 'out' : 'off';
  }
  return { label, inputs, relays, loads: loadWords, expected };
}
