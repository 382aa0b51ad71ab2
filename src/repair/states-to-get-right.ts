/** The states a repair must get right, and a quick test of a rewired circuit against them. */

import { FALSE } from '../logic/bdd.ts';
import { inputVariable } from '../logic/conduction.ts';
import { baseState, entryState } from '../logic/entry-states.ts';
import type { Wanted } from '../logic/intent.ts';
import type { Moved, Verified } from '../logic/verify.ts';
import type { Ends, Quick } from './quick.ts';

/** Entries of an intent that are tried one by one; more than these look alike. */
const MOST_ENTRIES = 250;

export interface Asked {
  /** inputs moved, one set a step */
  readonly steps: readonly ReadonlySet<number>[];
  /** what each target must do there */
  readonly want: ReadonlyMap<string, boolean>;
}

/** What the intents say of one state reached straight from rest; a target they leave open is left out. */
function asked(v: Verified, moved: Moved): Asked {
  const { bdd } = v.model;
  const set = new Set(moved.map((i) => inputVariable(v.circuit, i)));
  const holds = (f: number) => bdd.evaluate(f, (x) => set.has(x));
  const want = new Map<string, boolean>();
  for (const w of v.intents.wanted) {
    const works = w.entries.some((e) => holds(e.works));
    if (holds(w.blocked)) want.set(w.target, false);
    else if (works && !w.loose) want.set(w.target, true);
    else if (!works && !w.latches.some((l) => holds(l.pressed))) want.set(w.target, false);
  }
  return { steps: [new Set(moved)], want };
}

/** States in which something is wrong now come first, then rest, each entry alone, all gates, each blocking input. */
export function statesToGetRight(v: Verified): Asked[] {
  const states: Moved[] = v.deviations.filter((d) => d.direct).map((d) => d.steps.at(-1)!);
  const add = (moved: Moved | undefined) => {
    if (moved) states.push(moved);
  };
  add([]);
  const gates = v.circuit.inputs.filter((i) => i.kind === 'gate').map((i) => i.index);
  for (const w of v.intents.wanted) addFor(v, w, gates, add);
  add(gates);
  const unique = new Map(states.map((s) => [[...s].sort((x, y) => x - y).join(), s]));
  return [
    ...[...unique.values()].map((s) => asked(v, s)),
    ...v.intents.wanted.flatMap((w) => heldStates(v, w)),
  ];
}

/** A wanted seal-in: held after its button, ended by each of what stops or blocks it, and not back after that. */
function heldStates(v: Verified, w: Wanted): Asked[] {
  if (w.loose) return [];
  const base = baseState(v, w);
  const inputsOf = (ref: { part: string; position?: string }) =>
    v.circuit.inputs.filter((i) => i.part === ref.part && i.position === ref.position).map((i) => i.index);
  const on = (run: boolean) => new Map([[w.target, run]]);
  const set = (more: readonly number[]) => new Set([...base, ...more]);
  return w.latches.flatMap(({ ref }) => {
    const pressed = set(inputsOf(ref));
    const held = [pressed, set([])];
    const stops = [...(w.intent?.stoppedBy ?? []), ...(w.intent?.blockedBy ?? [])].map((x) =>
      set(inputsOf(x)),
    );
    return [
      { steps: held, want: on(true) },
      ...stops.flatMap((s) => [
        { steps: [...held, s], want: on(false) },
        { steps: [...held, s, set([])], want: on(false) },
      ]),
    ];
  });
}

function addFor(v: Verified, w: Wanted, gates: Moved, add: (moved: Moved | undefined) => void): void {
  const { bdd } = v.model;
  const base = baseState(v, w);
  add(base);
  const step = Math.max(1, Math.ceil(w.entries.length / MOST_ENTRIES));
  w.entries.forEach((e, i) => {
    if (i % step === 0 || i === w.entries.length - 1) add(entryState(v, w, e.works, base));
  });
  const open = [...new Set([...gates, ...base])].sort((x, y) => x - y);
  add(open);
  for (const { ref, blocks } of w.blockers) {
    const own = v.circuit.inputs.filter((i) => i.part === ref.part).map((i) => i.index);
    const without = open.filter((i) => !own.includes(i));
    for (const more of [[], ...own.map((i) => [i])]) {
      const moved = [...without, ...more].sort((x, y) => x - y);
      const set = new Set(moved.map((i) => inputVariable(v.circuit, i)));
      if (blocks !== FALSE && bdd.evaluate(blocks, (x) => set.has(x))) add(moved);
    }
  }
}

/** How many things are wrong; gives up counting past `most`. */
export function wrongs(
  quick: Quick,
  cores: readonly (readonly Ends[])[],
  states: readonly Asked[],
  most: number,
): number {
  const base = quick.base(cores);
  let count = 0;
  for (const s of states) {
    const o = quick.outcome(base, s.steps);
    if (o.chatters || o.shorted) count++;
    for (const [target, run] of s.want) if (o.running.has(target) !== run) count++;
    if (count > most) return count;
  }
  return count + broken(quick, base);
}

/** Rules of question 1 that a quick look can hold: the sides apart, earth whole, line and neutral in their places. */
export function broken(quick: Quick, base: Int32Array): number {
  const ever = quick.joined(base, true);
  const wires = quick.joined(base, false);
  let count = 0;
  const low = quick.poles(false);
  const mains = quick.poles(true);
  for (const a of mains) if (low.some((b) => ever(a, b))) count++;
  const pins = [...quick.parts.values()]
    .filter((p) => p.kind === 'plug')
    .flatMap((p) => quick.terminal(`${p.name}.PE`) ?? []);
  for (const p of quick.parts.values()) {
    const metal =
      p.kind === 'outlet' ||
      (p.kind === 'box' && p.metal) ||
      ((p.kind === 'motor' || p.kind === 'load') && !p.class2Insulated);
    const earth = quick.terminal(`${p.name}.PE`);
    if (pins.length > 0 && metal && earth !== undefined && !pins.some((x) => wires(x, earth))) count++;
  }
  for (const pin of pins) if ([...mains, ...low].some((x) => wires(pin, x))) count++;
  return count + crossed(quick, ever, wires);
}

/** Line reaching a neutral pin, or live without any contact in between. */
function crossed(
  quick: Quick,
  ever: (a: number, b: number) => boolean,
  wires: (a: number, b: number) => boolean,
): number {
  let count = 0;
  for (const p of quick.parts.values()) {
    if (p.kind !== 'plug') continue;
    const [line, neutral] = [quick.terminal(`${p.name}.L`), quick.terminal(`${p.name}.N`)];
    for (const c of quick.consumers()) {
      const [l, n] = [c.conductors.get('L'), c.conductors.get('N')];
      if (line === undefined || neutral === undefined || l === undefined || n === undefined) continue;
      if (ever(line, n) || ever(neutral, l)) count++;
      if (wires(line, l) && !wires(neutral, n)) count++;
    }
  }
  return count;
}
