/**
 * A clock-driven oracle: a small plan is walked second by second, by what is joined and nothing else. Written from the
 * description of the parts, before and without the product's own way of following them; shares no code with it.
 *
 * - A relay is in while A1 and A2 lie on the two poles of one supply.
 * - `bistable: toggle` changes over each time its coil becomes fed. `set-reset` goes in on A1 A2, out on B1 B2, and keeps
 *   what it has while neither is fed, or both.
 * - A timer with a dry trigger (T1 or T2 used, or `supply: permanent`) works while A1 A2 are fed, and is triggered while
 *   T1 and T2 are joined; without its supply it is out at once. Any other timer is triggered by its supply.
 *   off-delay: in at once with the trigger, out when it has been gone for `time`. on-delay: in when the trigger has stood
 *   for `time`, out at once without it.
 *
 * Volts, diodes and lamps are left out: plans given to it have none.
 */
import { type Part, readWiring, text, type Wiring } from './brute-read.ts';

const PAIRS: Record<string, [string, string]> = { dc: ['+', '-'], ac: ['~1', '~2'] };
const LIVE = [
  ['L', 'N'],
  ['L1', 'L2'],
] as const;
const MOVES = ['gate', 'switch', 'button', 'cutout'];
const HOLDS = ['relay', 'timer'];

/** Positions of inputs (true: worked) and what is in, by name. */
type On = ReadonlyMap<string, boolean>;

const seconds = (x: unknown): number => Number(/^([\d.]+) s$/.exec(text(x))?.[1] ?? Number.NaN);

class Joins {
  private readonly up = new Map<string, string>();
  root(key: string): string {
    let at = key;
    for (let next = this.up.get(at); next !== undefined && next !== at; next = this.up.get(at)) at = next;
    return at;
  }
  join(a: string, b: string): void {
    this.up.set(this.root(a), this.root(b));
  }
  same(a: string, b: string): boolean {
    return this.root(a) === this.root(b);
  }
}

export class Clock {
  private readonly wiring: Wiring;
  private readonly parts: Part[];
  private inputs = new Map<string, boolean>();
  private inside = new Map<string, boolean>();
  /** whether a toggling relay's coil was fed a moment ago */
  private fedBefore = new Map<string, boolean>();
  /** s for which a timer has waited to change over */
  private waited = new Map<string, number>();

  constructor(source: string) {
    this.wiring = readWiring(source);
    this.parts = [...this.wiring.parts.values()];
    for (const p of this.parts) {
      if (MOVES.includes(p.kind)) this.inputs.set(p.name, false);
      if (HOLDS.includes(p.kind)) this.inside.set(p.name, false);
    }
    this.settle();
  }

  get inputNames(): string[] {
    return [...this.inputs.keys()];
  }

  copy(): Clock {
    const made = Object.assign(Object.create(Clock.prototype) as object, this) as Clock;
    made.inputs = new Map(this.inputs);
    made.inside = new Map(this.inside);
    made.fedBefore = new Map(this.fedBefore);
    made.waited = new Map(this.waited);
    return made;
  }

  /** Moves inputs, named with whether each is worked, at one moment. */
  move(positions: Readonly<Record<string, boolean>>): void {
    for (const [name, worked] of Object.entries(positions)) this.inputs.set(name, worked);
    this.settle();
  }

  /** One second goes by. */
  tick(): void {
    for (const t of this.parts)
      if (t.kind === 'timer' && this.waits(t)) this.waited.set(t.name, (this.waited.get(t.name) ?? 0) + 1);
    this.settle();
  }

  /** What is in, and which loads and outlets run. */
  get on(): On {
    const joins = this.joins();
    const runs = this.parts
      .filter((p) => ['motor', 'load', 'outlet'].includes(p.kind))
      .map((p) => [p.name, this.runs(p, joins)] as const);
    return new Map([...this.inside, ...runs]);
  }

  private runs(p: Part, joins: Joins): boolean {
    const into = text(p.fields['plugged-into']) || p.name;
    return this.parts.some(
      (plug) =>
        plug.kind === 'plug' &&
        LIVE.some(
          ([a, b]) =>
            this.wiring.used.has(`${plug.name}.${a}`) &&
            joins.same(`${plug.name}.${a}`, `${into}.${a}`) &&
            joins.same(`${plug.name}.${b}`, `${into}.${b}`),
        ),
    );
  }

  private joins(): Joins {
    const joins = new Joins();
    for (const [a, b] of this.wiring.joins) joins.join(a, b);
    for (const p of this.parts) {
      if (p.kind === 'fuse') joins.join(`${p.name}.1`, `${p.name}.2`);
      const worked = this.inputs.get(p.name) ?? this.inside.get(p.name);
      if (worked === undefined) continue;
      const pressed = p.kind === 'gate' && p.fields['pressed-when'] === 'shut' ? !worked : worked;
      for (const c of p.contacts) {
        const other = pressed ? c.no : c.nc;
        if (other) joins.join(`${p.name}.${c.com}`, `${p.name}.${other}`);
      }
    }
    return joins;
  }

  private fed(joins: Joins, p: Part, a: string, b: string): boolean {
    const [x, y] = [`${p.name}.${a}`, `${p.name}.${b}`];
    return this.parts.some((s) => {
      if (s.kind !== 'supply' && s.kind !== 'battery') return false;
      const [plus, minus] = PAIRS[/AC/.test(text(s.fields.output)) ? 'ac' : 'dc']!.map(
        (t) => `${s.name}.${t}`,
      );
      if (joins.same(plus!, minus!)) return false;
      return (
        (joins.same(plus!, x) && joins.same(minus!, y)) || (joins.same(plus!, y) && joins.same(minus!, x))
      );
    });
  }

  private isDry(t: Part): boolean {
    const used = this.wiring.used;
    return used.has(`${t.name}.T1`) || used.has(`${t.name}.T2`) || t.fields.supply === 'permanent';
  }

  private triggered(t: Part, joins: Joins): boolean {
    const dry = this.isDry(t);
    return this.fed(joins, t, 'A1', 'A2') && (!dry || joins.same(`${t.name}.T1`, `${t.name}.T2`));
  }

  /** Whether a timer's time runs towards a change. */
  private waits(t: Part): boolean {
    const called = this.triggered(t, this.joins());
    return called !== this.inside.get(t.name);
  }

  private timerNext(t: Part, joins: Joins): boolean {
    const called = this.triggered(t, joins);
    const is = this.inside.get(t.name)!;
    const done = (this.waited.get(t.name) ?? 0) >= seconds(t.fields.time);
    if (called === is) return is;
    if (t.fields.function === 'on-delay') return called && done;
    if (called) return true;
    return this.isDry(t) && !this.fed(joins, t, 'A1', 'A2') ? false : !done;
  }

  private relayNext(r: Part, joins: Joins): boolean {
    const is = this.inside.get(r.name)!;
    const fed = this.fed(joins, r, 'A1', 'A2');
    if (r.fields.bistable === 'toggle') return fed && this.fedBefore.get(r.name) !== true ? !is : is;
    if (r.fields.bistable === 'set-reset') {
      const back = this.fed(joins, r, 'B1', 'B2');
      return fed === back ? is : fed;
    }
    return fed;
  }

  /** All move together until nothing moves; a circuit that never rests is an error here. */
  private settle(): void {
    for (let round = 0; round < 200; round++) {
      const joins = this.joins();
      const next = new Map<string, boolean>();
      const fedNow = new Map<string, boolean>();
      for (const p of this.parts) {
        if (p.kind === 'timer') next.set(p.name, this.timerNext(p, joins));
        if (p.kind !== 'relay') continue;
        next.set(p.name, this.relayNext(p, joins));
        fedNow.set(p.name, this.fed(joins, p, 'A1', 'A2'));
      }
      const still =
        [...next].every(([name, is]) => this.inside.get(name) === is) &&
        [...fedNow].every(([name, is]) => (this.fedBefore.get(name) ?? false) === is);
      this.inside = next;
      this.fedBefore = fedNow;
      for (const t of this.parts) if (t.kind === 'timer' && !this.waits(t)) this.waited.delete(t.name);
      if (still) return;
    }
    throw new Error('oracle: never at rest');
  }
}

/** s after which every timer of a plan has run out, chains included. */
function longest(source: string): number {
  return [...readWiring(source).parts.values()]
    .filter((p) => p.kind === 'timer')
    .reduce((sum, p) => sum + seconds(p.fields.time) + 1, 1);
}

/** What is on after each move from rest, once every timer has run out. */
export function waitedFor(source: string, moves: readonly Readonly<Record<string, boolean>>[]): On[] {
  const clock = new Clock(source);
  const wait = longest(source);
  return moves.map((move) => {
    clock.move(move);
    for (let s = 0; s < wait; s++) clock.tick();
    return clock.on;
  });
}

/**
 * The least s that `load` goes on when all inputs of `entries` go back at once, over every state in which it runs and
 * every position of the other inputs; undefined where it never runs. Looks no further than `most`.
 */
export function leastRunOn(
  source: string,
  load: string,
  entries: readonly string[],
  most: number,
): number | undefined {
  const names = new Clock(source).inputNames;
  const wait = longest(source);
  const positions = Array.from({ length: 2 ** names.length }, (_, k) =>
    Object.fromEntries(names.map((name, i) => [name, ((k >> i) & 1) === 1])),
  );
  let least: number | undefined;
  for (const from of positions) {
    const start = new Clock(source);
    start.move(from);
    for (let s = 0; s < wait; s++) start.tick();
    if (!start.on.get(load)) continue;
    for (const to of positions.filter((p) => entries.every((e) => !p[e]))) {
      const clock = start.copy();
      clock.move(to);
      let s = 0;
      while (s < most && clock.on.get(load)) {
        clock.tick();
        s++;
      }
      least = Math.min(least ?? s, s);
    }
  }
  return least;
}
