/**
 * Brute-force oracle: every input state of a small plan, one after another, by union-find and a dense
 * nodal solve. Shares no code with the product and knows no cleverer way than to try.
 *
 * Readings where the plan format leaves room:
 * - `runs` is what follows when all relays start released; a load that a race or a chatter leaves undecided
 *   counts as wrong (`runs` is then the opposite of `should`);
 * - a start button and its `stopped-by` pressed together, or a gate open while `stopped-by` is active: either
 *   answer is right, `should` then repeats `runs`;
 * - mains meets low voltage also when only a relay pushed in by hand would join them;
 * - a dead supply is a fault when the load then runs in a state where it should not.
 */
import { Machine, type Settled } from './brute-machine.ts';
import { asked, latch, readWants, type Want } from './brute-want.ts';

export { mutants } from './brute-mutants.ts';

export interface StateRow {
  inputs: Record<string, string>;
  should: boolean;
  runs: boolean;
}

export interface TargetResult {
  name: string;
  states: StateRow[];
  wrong: number;
}

export interface Oracle {
  targets: TargetResult[];
  symptoms: Set<string>;
  harmful: boolean;
  combinations: number;
  /** every relay (in) and every outlet and load (running) in every state */
  table: { inputs: Record<string, string>; on: Record<string, boolean> }[];
}

const MOST = 70_000;

interface Row {
  at: number[];
  settled: Settled;
  memory: boolean;
}

function worded(m: Machine, at: ArrayLike<number>): Record<string, string> {
  const out: Record<string, string> = {};
  m.circuit.inputs.forEach((x, i) => {
    out[x.name] = x.words[at[i]!]!;
  });
  return out;
}

function everyState(m: Machine): Row[] {
  const sizes = m.circuit.inputs.map((x) => x.words.length);
  const total = sizes.reduce((a, b) => a * b, 1);
  if (total > MOST) throw new Error(`oracle: ${total} combinations are too many to enumerate`);
  const rows: Row[] = [];
  const at = sizes.map(() => 0);
  for (let k = 0; k < total; k++) {
    let rest = k;
    sizes.forEach((n, i) => {
      at[i] = rest % n;
      rest = Math.floor(rest / n);
    });
    const settled = m.settle(at, 0);
    const other = m.settle(at, m.allIn);
    const same = settled.fate === 'rests' && other.fate === 'rests' && settled.ends[0] === other.ends[0];
    m.record(at, settled);
    m.recordForced(at);
    rows.push({ at: [...at], settled, memory: !same });
  }
  return rows;
}

/** All answers of the states it may end in; undefined when they differ. */
function agreed(m: Machine, name: string, at: number[], s: Settled, dead = 0): boolean | undefined {
  const first = m.on(name, at, s.ends[0]!, dead);
  return s.ends.every((bits) => m.on(name, at, bits, dead) === first) ? first : undefined;
}

function indexOf(m: Machine, at: number[], keep: (input: number) => boolean): number {
  let k = 0;
  let step = 1;
  m.circuit.inputs.forEach((x, i) => {
    if (keep(i)) k += step * at[i]!;
    step *= x.words.length;
  });
  return k;
}

function judgeTarget(m: Machine, w: Want, rows: Row[]): TargetResult {
  const states: StateRow[] = rows.map((row) => {
    const ask = asked(w, row.at, false);
    const got = agreed(m, w.name, row.at, row.settled);
    const runs = got ?? !ask.should;
    return { inputs: worded(m, row.at), should: ask.cares ? ask.should : runs, runs };
  });
  let wrong = 0;
  states.forEach((s, k) => {
    if (s.should === s.runs) return;
    wrong++;
    const at = rows[k]!.at;
    const ask = asked(w, at, false);
    const strangers = at.some((p, i) => p !== 0 && !w.named.has(i));
    const without = states[indexOf(m, at, (i) => w.named.has(i))]!;
    const byStranger = strangers && without.should === without.runs;
    if (s.should) m.symptoms.add(byStranger ? 'stops-without-cause' : 'does-not-start');
    else if (ask.blocked && ask.called) m.symptoms.add('block-ignored');
    else if (byStranger || ask.partly) m.symptoms.add('starts-without-cause');
    else m.symptoms.add('does-not-stop');
  });
  return { name: w.name, states, wrong };
}

/** Supplies dead, each alone and all together. */
function deadSupplies(m: Machine, wants: Want[], rows: Row[]): void {
  const n = m.circuit.sources.length;
  const sets = new Set(Array.from({ length: n }, (_, i) => 1 << i));
  if (n > 0) sets.add(2 ** n - 1);
  for (const dead of sets) {
    for (const row of rows) {
      const s = m.settle(row.at, 0, dead);
      for (const w of wants) {
        const ask = asked(w, row.at, false);
        const runs = agreed(m, w.name, row.at, s, dead);
        if (w.mustRunDead) {
          if (!ask.blocked && runs === false) m.symptoms.add('stops-on-dead-supply');
        } else if (runs !== false && ask.cares && !ask.should) m.symptoms.add('runs-on-dead-supply');
      }
    }
  }
}

/** A terminal of a stopped load on a line conductor, for a load that does run in some state. */
function hotWhileOff(m: Machine, rows: Row[]): void {
  m.circuit.consumers.forEach((_, k) => {
    let ran = false;
    let hot = false;
    for (const row of rows) {
      for (const bits of row.settled.ends) {
        const s = m.solve(row.at, bits);
        if (s.running[k]) ran = true;
        else if (s.hot[k]) hot = true;
      }
    }
    if (ran && hot) m.symptoms.add('line-not-switched');
  });
}

interface Place {
  at: number[];
  bits: number;
  latches: boolean[];
}

/** Moves on from a place; every state it may come to rest in. */
function move(m: Machine, wants: Want[], from: Place, at: number[]): Place[] {
  const s = m.settle(at, from.bits);
  m.record(at, s);
  const latches = wants.map((w, i) => latch(w, at, from.latches[i]!));
  return s.ends.map((bits) => ({ at, bits, latches }));
}

/** Compares one place with the wants; `rows` tells what the same inputs do from all released. */
function compare(m: Machine, wants: Want[], targets: TargetResult[], p: Place): void {
  const k = indexOf(m, p.at, () => true);
  wants.forEach((w, i) => {
    const ask = asked(w, p.at, p.latches[i]!);
    const runs = m.on(w.name, p.at, p.bits);
    if (!ask.cares || runs === ask.should) return;
    const fresh = targets[i]!.states[k]!;
    if (runs) {
      if (!fresh.runs) m.symptoms.add('stays-on');
    } else if (!ask.called) m.symptoms.add('stops-without-cause');
    else if (fresh.runs) m.symptoms.add('depends-on-order');
  });
}

/** From rest: each move, each pair of moves, all moves; then back to rest at once. */
function thereAndBack(m: Machine, wants: Want[], targets: TargetResult[], rows: Row[]): void {
  const rest = rows[0]!.at;
  const start: Place[] = rows[0]!.settled.ends.map((bits) => ({
    at: rest,
    bits,
    latches: wants.map(() => false),
  }));
  const moves = m.circuit.inputs.flatMap((x, i) => x.words.slice(1).map((_, p) => [i, p + 1] as const));
  const goals: number[][] = [rest.map((_, i) => m.circuit.inputs[i]!.words.length - 1)];
  moves.forEach((a, i) => {
    for (const b of moves.slice(i)) {
      const at = [...rest];
      at[a[0]] = a[1];
      at[b[0]] = b[1];
      goals.push(at);
    }
  });
  for (const from of start) {
    for (const at of goals) {
      for (const there of move(m, wants, from, at)) {
        compare(m, wants, targets, there);
        for (const back of move(m, wants, there, rest)) compare(m, wants, targets, back);
      }
    }
  }
}

/** Every place that single moves reach from rest; only needed where relays remember. */
function wander(m: Machine, wants: Want[], targets: TargetResult[], rows: Row[]): void {
  const met = new Set<string>();
  const queue: Place[] = [];
  const meet = (p: Place): void => {
    const key = `${p.at.join('')}|${p.bits}|${p.latches.map(Number).join('')}`;
    if (met.has(key) || met.size > 60_000) return;
    met.add(key);
    queue.push(p);
    compare(m, wants, targets, p);
  };
  for (const bits of rows[0]!.settled.ends) meet({ at: rows[0]!.at, bits, latches: wants.map(() => false) });
  for (let q = 0; q < queue.length; q++) {
    const p = queue[q]!;
    m.circuit.inputs.forEach((x, i) => {
      for (let k = 0; k < x.words.length; k++) {
        if (k === p.at[i]) continue;
        const at = [...p.at];
        at[i] = k;
        for (const to of move(m, wants, p, at)) meet(to);
      }
    });
  }
}

/** Judges a valid plan over all its input states. Throws on more than 70 000 combinations. */
export function judge(source: string): Oracle {
  const m = new Machine(source);
  const wants = readWants(m);
  const rows = everyState(m);
  const targets = wants.map((w) => judgeTarget(m, w, rows));
  deadSupplies(m, wants, rows);
  hotWhileOff(m, rows);
  thereAndBack(m, wants, targets, rows);
  if (rows.some((r) => r.memory) || wants.some((w) => w.after.length > 0)) wander(m, wants, targets, rows);
  m.finish();
  const names = [...m.circuit.relays.map((r) => r.name), ...m.circuit.consumers.map((x) => x.name)];
  const table = rows.map((row) => ({
    inputs: worded(m, row.at),
    on: Object.fromEntries(names.map((n) => [n, agreed(m, n, row.at, row.settled) ?? false])),
  }));
  return { targets, symptoms: m.symptoms, harmful: m.symptoms.size > 0, combinations: rows.length, table };
}

let walked: { readonly source: string; readonly m: Machine } | undefined;

/**
 * Walks a plan through moves from rest, one step after another, and tells what is on after each.
 * A step names only the inputs that move.
 */
export function replay(source: string, steps: Record<string, string>[]): Record<string, boolean>[] {
  // Many walks of one plan follow each other: it is read once, and no state of the walk before is left in what was read.
  if (walked?.source !== source) walked = { source, m: new Machine(source) };
  const { m } = walked;
  const names = [...m.circuit.relays.map((r) => r.name), ...m.circuit.consumers.map((x) => x.name)];
  const at = m.circuit.inputs.map(() => 0);
  let bits = m.settle(at, 0).ends[0]!;
  return steps.map((step) => {
    for (const [name, word] of Object.entries(step)) {
      const i = m.circuit.inputs.findIndex((x) => x.name === name);
      at[i] = m.circuit.inputs[i]!.words.indexOf(word);
    }
    bits = m.settle(at, bits).ends[0]!;
    return Object.fromEntries(names.map((n) => [n, m.on(n, at, bits)]));
  });
}
