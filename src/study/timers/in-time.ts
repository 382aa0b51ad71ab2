/** What runs when, second by second, in plans with timers: the first way of calling each load, and back again. */

import { timersOf } from '../../circuit/positions.ts';
import { FALSE } from '../../logic/bdd.ts';
import { baseState, entryState } from '../../logic/entry-states.ts';
import { Timed } from '../../logic/timed.ts';
import { Undecided } from '../../logic/undecided.ts';
import { type Moved, running, stateOf, type Verified } from '../../logic/verify.ts';
import { record } from '../../plan/map-entries.ts';
import type { Basis } from '../basis.ts';
import type { InTime, Moment } from '../table-model.ts';
import { movesOf } from '../table-states.ts';

/** More loads with ways of their own than this are not all told. */
const MOST_WAYS = 4;

/** Undefined where no timer takes any time, or where it could not be followed. */
export function inTime(s: Basis, v: Verified): InTime | undefined {
  const timers = timersOf(v.circuit.relays);
  if (timers.length === 0) return undefined;
  const loads = v.circuit.consumers.filter((c) => c.kind !== 'outlet').map((c) => c.part);
  const wanted = v.intents.wanted.map((w) => w.target);
  const columns = [...new Set([...wanted, ...loads, ...timers.map((t) => t.part)])];
  try {
    const rows = waysOf(v).flatMap((steps) => momentsOf(s, v, steps, columns));
    return rows.length === 0 ? undefined : { columns, rows };
  } catch (error) {
    if (!(error instanceof Undecided)) throw error;
    return undefined;
  }
}

/** Moves to follow: what unblocks, the first entry of an intent, and that undone. */
function waysOf(v: Verified): Moved[][] {
  const found = new Map<string, Moved[]>();
  for (const w of v.intents.wanted) {
    const base = baseState(v, w);
    const [first] = w.entries;
    const called = first && entryState(v, w, first.works, base);
    if (called && called.join() !== base.join()) found.set(called.join(), [base, called, base]);
  }
  return [...found.values()].slice(0, MOST_WAYS);
}

/** Every moment at which something that is told of changes; each move comes once all timers have run out. */
function momentsOf(s: Basis, v: Verified, steps: readonly Moved[], columns: readonly string[]): Moment[] {
  const { bdd } = v.model;
  const timed = new Timed(v);
  const most = timersOf(v.circuit.relays).reduce((sum, t) => sum + t.delay!.seconds, 0);
  const rest = stateOf(v.circuit, bdd, []);
  let mode = timed.starts().find((p) => bdd.and(p.states, rest) !== FALSE)?.mode;
  const words = movesOf(s, steps);
  const silent = steps.length - words.length;
  const rows: Moment[] = [];
  steps.forEach((moved, k) => {
    if (mode === undefined) return;
    const spans = timed.after(mode, stateOf(v.circuit, bdd, moved), most);
    mode = spans.at(-1)?.mode;
    // What unblocks is no row of its own.
    if (k === 0) return;
    let last: string | undefined;
    for (const span of spans) {
      const cells = record(
        columns.map((name) => [name, wordOf(timed, v, name, span.mode, span.states)] as const),
      );
      const text = Object.values(cells).join();
      if (text === last) continue;
      rows.push({ move: last === undefined ? (words[k - silent] ?? '') : '', after: span.since, cells });
      last = text;
    }
  });
  return rows;
}

function wordOf(timed: Timed, v: Verified, name: string, mode: number, states: number): string {
  const isOn = v.model.bdd.and(states, timed.at(running(v.model, name), mode)) !== FALSE;
  const relay = v.circuit.relays.some((r) => r.part === name);
  return relay ? (isOn ? 'in' : 'out') : isOn ? 'runs' : 'off';
}
