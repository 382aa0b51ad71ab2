/** The walk that puts the cores of one section in their order. */
import type { Circuit } from '../circuit/circuit.ts';
import { push } from '../plan/map-entries.ts';
import type { BoxPart } from '../plan/part-types.ts';
import type { Core, TerminalRef } from '../plan/plan.ts';
import { partOfKey, terminalKey } from '../plan/terminal-key.ts';
import type { Placed, Section } from './wiring-section.ts';

/** The protective conductor of a cable is joined before the others; common practice. */
const isEarthEnd = (core: Core): boolean => core.a.terminal === 'PE' || core.b.terminal === 'PE';
const keyOf = (end: TerminalRef): string => terminalKey(end.part, end.terminal);

/**
 * From the first pole of each supply along its conductor and through contacts, as deep as a spur leads; then from the
 * other poles alike; then whatever hangs on a part that is wired. Coils and loads are not walked through, so that the
 * far end of a chain waits until the chain has come to it.
 */
export class WiringWalk {
  readonly #circuit: Circuit;
  readonly #section: Section;
  readonly #left: Map<number, Core[]>;
  readonly #at = new Map<string, Set<number>>();
  readonly #boxes = new Map<string, BoxPart>();
  /** through contacts and along placed cores, terminal to terminal */
  readonly #ways = new Map<string, string[]>();
  /** parts reached, with their turn */
  readonly #reached = new Map<string, number>();
  /** terminals that a conductor has come to */
  readonly #come = new Set<string>();
  readonly #stack: string[] = [];
  readonly #placed: Placed[] = [];

  constructor(
    circuit: Circuit,
    section: Section,
    bundles: Map<number, Core[]>,
    isSource: (name: string) => boolean,
  ) {
    this.#circuit = circuit;
    this.#section = section;
    this.#left = bundles;
    const { plan } = circuit;
    for (const part of plan.parts.values())
      if (part.kind === 'box') for (const name of [part.name, ...part.holds]) this.#boxes.set(name, part);
    for (const [run, cores] of bundles)
      for (const core of cores)
        for (const { part } of [core.a, core.b]) {
          const runs = this.#at.get(part);
          if (runs) runs.add(run);
          else this.#at.set(part, new Set([run]));
        }
    for (const c of circuit.contacts) {
      const [a, b] = [terminalKey(c.part, c.terminals[0]), terminalKey(c.part, c.terminals[1])];
      this.#join(a, b);
    }
    for (const name of [...plan.parts.keys()].filter(isSource)) this.#reached.set(name, this.#reached.size);
  }

  all(): Placed[] {
    const { sources } = this.#circuit;
    const poles = sources
      .filter((s) => this.#reached.has(s.part))
      .map((s) => s.rails.map((r) => terminalKey(s.part, r.terminal)));
    // Each supply is followed to its ends before the next one begins.
    for (const [first] of poles) this.#follow([first!]);
    for (const [, ...rest] of poles) this.#follow(rest);
    for (;;) {
      this.#stack.push(...[...this.#reached.keys()].reverse());
      this.#walk(() => true);
      const run = this.#left.keys().next().value;
      if (run === undefined) return this.#placed;
      this.#place(run);
    }
  }

  #follow(poles: readonly string[]): void {
    for (const pole of [...poles].reverse()) this.#comeTo(pole);
    this.#walk((end) => this.#come.has(keyOf(end)));
  }

  #walk(starts: (end: TerminalRef) => boolean): void {
    for (;;) {
      const name = this.#stack.at(-1);
      if (name === undefined) return;
      const run = this.#next(name, starts);
      if (run === undefined) this.#stack.pop();
      else this.#place(run);
    }
  }

  #join(a: string, b: string): void {
    push(this.#ways, a, b);
    push(this.#ways, b, a);
  }

  /** A conductor comes to a terminal, and by what is wired already to others; their parts are next. */
  #comeTo(terminal: string): void {
    if (this.#come.has(terminal)) return;
    this.#come.add(terminal);
    const part = partOfKey(terminal);
    if (this.#reached.has(part)) this.#stack.push(part);
    for (const next of this.#ways.get(terminal) ?? []) this.#comeTo(next);
  }

  /** What is left at a part: first what stays in its box, links before cables, then in the order of the plan. */
  #next(name: string, starts: (end: TerminalRef) => boolean): number | undefined {
    let best: { run: number; rank: number } | undefined;
    for (const run of this.#at.get(name) ?? []) {
      const cores = this.#left.get(run);
      if (!cores?.some((c) => [c.a, c.b].some((end) => end.part === name && starts(end)))) continue;
      const rank = this.#rank(run, cores);
      if (best === undefined || rank < best.rank || (rank === best.rank && run < best.run))
        best = { run, rank };
    }
    return best?.run;
  }

  #rank(run: number, cores: readonly Core[]): number {
    if (this.#circuit.plan.runs[run]!.link) return 0;
    const boxes = new Set(cores.flatMap((c) => [this.#boxes.get(c.a.part), this.#boxes.get(c.b.part)]));
    return boxes.size === 1 && !boxes.has(undefined) ? 1 : 2;
  }

  /** All cores of a run, those first that start where something is wired already. */
  #place(index: number): void {
    const run = this.#circuit.plan.runs[index]!;
    const come = (c: Core) => this.#come.has(keyOf(c.a)) || this.#come.has(keyOf(c.b));
    const order = (c: Core) => (isEarthEnd(c) ? 0 : come(c) ? 1 : 2);
    const cores = [...this.#left.get(index)!].sort((x, y) => order(x) - order(y));
    this.#left.delete(index);
    const fresh: string[] = [];
    const reach = (name: string) => {
      if (this.#reached.has(name)) return;
      this.#reached.set(name, this.#reached.size);
      fresh.push(name);
    };
    const placed: Placed[] = [];
    while (cores.length > 0) {
      const found = cores.findIndex((c) => this.#reached.has(c.a.part) || this.#reached.has(c.b.part));
      const [core] = cores.splice(Math.max(0, found), 1);
      const [from, to] = this.#directed(core!);
      placed.push({ section: this.#section, run, core: core!, from, to, loose: found < 0 });
      reach(from.part);
      reach(to.part);
    }
    this.#placed.push(...placed);
    // What is joined inside its box is joined before a cable leads on.
    for (const name of fresh) this.#finishInside(name);
    // The last to be pushed is followed first, and that is to be the first core.
    for (const p of [...placed].reverse()) {
      this.#join(keyOf(p.from), keyOf(p.to));
      for (const [x, y] of [
        [p.from, p.to],
        [p.to, p.from],
      ] as const)
        if (this.#come.has(keyOf(x))) this.#comeTo(keyOf(y));
    }
  }

  /** From the end that a conductor has come to, else from the part that was wired first. */
  #directed({ a, b }: Core): readonly [TerminalRef, TerminalRef] {
    const come = [a, b].map((end) => this.#come.has(keyOf(end)));
    if (come[0] !== come[1]) return come[0] ? [a, b] : [b, a];
    const turn = (end: TerminalRef) => this.#reached.get(end.part) ?? Number.POSITIVE_INFINITY;
    return turn(a) > turn(b) ? [b, a] : [a, b];
  }

  #finishInside(name: string): void {
    for (const run of [...(this.#at.get(name) ?? [])].sort((x, y) => x - y)) {
      const cores = this.#left.get(run);
      if (cores !== undefined && this.#rank(run, cores) < 2) this.#place(run);
    }
  }
}
