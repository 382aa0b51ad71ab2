/** Start buttons whose release must not stop the load. */
import { type Bdd, FALSE, type Fn, TRUE } from './bdd.ts';
import type { Wanted } from './intent.ts';

/**
 * Buttons that an intent wants remembered. Two bits each, since a plan does not say all: `must` is remembered for
 * certain (pressed while the load was meant to run, and nothing has stopped or blocked it since), `may` possibly
 * (pressed, and not stopped since). A load must run where `must` says so and may run where `may` does.
 */
export class Latches {
  private readonly items: { wanted: Wanted; bit: number; press: Fn; index: number }[] = [];
  /** buttons that start and stop by turns: one bit for what was last called for, one for whether they are pressed */
  private readonly turns: { wanted: Wanted; bit: number; press: Fn }[] = [];

  constructor(
    private readonly bdd: Bdd,
    wanted: readonly Wanted[],
  ) {
    for (const w of wanted)
      w.latches.forEach((l, index) => {
        this.items.push({ wanted: w, bit: this.items.length * 2, press: l.pressed, index });
      });
    for (const w of wanted)
      if (w.alternating) {
        const bit = (this.items.length + this.turns.length) * 2;
        this.turns.push({ wanted: w, bit, press: w.alternating.pressed });
      }
  }

  /** Input states where the load must run, and where it may. */
  bounds(wanted: Wanted, latch: number): { must: Fn; may: Fn } {
    const { bdd } = this;
    const free = bdd.not(wanted.blocked);
    const side = (offset: number) =>
      bdd.and(
        free,
        bdd.any(
          wanted.entries.map((e) => {
            const turned = this.turned(wanted, e, latch);
            if (turned !== undefined) return turned;
            const held = this.items.filter((i) => i.wanted === wanted && (latch >> (i.bit + offset)) & 1);
            if (held.length === 0) return e.works;
            return bdd.every(
              e.refs.map((r) => {
                const own = held.find((i) => wanted.latches[i.index]!.ref.part === r.part);
                return own ? TRUE : this.refWorks(wanted, e.refs, r.part, e.works);
              }),
            );
          }),
        ),
      );
    return { must: wanted.loose ? FALSE : side(0), may: side(1) };
  }

  /** What an entry asks for besides a button by turns, where that was pressed on; undefined for an entry without one. */
  private turned(wanted: Wanted, { refs, works }: Wanted['entries'][number], latch: number): Fn | undefined {
    const turn = this.turns.find((t) => t.wanted === wanted);
    const own = wanted.alternating?.parts;
    if (turn === undefined || own === undefined || !refs.some((r) => own.has(r.part))) return undefined;
    if (((latch >> turn.bit) & 1) === 0) return FALSE;
    const pressed = new Map([...this.bdd.support(turn.press)].map((v) => [v, TRUE]));
    return this.bdd.compose(works, pressed);
  }

  /** The part of an entry's function that belongs to one of its inputs: the others set to working. */
  private refWorks(wanted: Wanted, refs: Wanted['entries'][number]['refs'], part: string, works: Fn): Fn {
    const { bdd } = this;
    const held = new Map<number, Fn>();
    for (const l of wanted.latches) {
      if (l.ref.part === part || !refs.some((r) => r.part === l.ref.part)) continue;
      for (const v of bdd.support(l.pressed)) held.set(v, TRUE);
    }
    return bdd.compose(works, held);
  }

  /** Splits input states by what is remembered after settling there. */
  after(latch: number, states: Fn): Map<number, Fn> {
    const { bdd } = this;
    let parts = new Map<number, Fn>([[0, states]]);
    for (const item of this.items) {
      const { must } = this.bounds(item.wanted, latch);
      const was = (offset: number): Fn => (latch >> (item.bit + offset)) & 1;
      const stop = item.wanted.stops;
      const sets = [
        bdd.every([
          bdd.not(item.wanted.blocked),
          bdd.or(was(0), item.press),
          bdd.or(must, bdd.and(item.press, must)),
        ]),
        bdd.diff(bdd.or(was(1), item.press), stop),
      ];
      sets.forEach((set, offset) => {
        const made = new Map<number, Fn>();
        for (const [bits, part] of parts) {
          const on = bdd.and(part, set);
          const off = bdd.diff(part, set);
          if (on !== FALSE) made.set(bits | (1 << (item.bit + offset)), on);
          if (off !== FALSE) made.set(bits, off);
        }
        parts = made;
      });
    }
    for (const turn of this.turns) parts = this.afterTurn(turn, latch, parts);
    return parts;
  }

  /** Each press turns it over once, however long it lasts. */
  private afterTurn(
    { bit, press }: { readonly bit: number; readonly press: Fn },
    latch: number,
    parts: ReadonlyMap<number, Fn>,
  ): Map<number, Fn> {
    const { bdd } = this;
    const [on, held] = [(latch >> bit) & 1, (latch >> (bit + 1)) & 1];
    const made = new Map<number, Fn>();
    for (const [bits, part] of parts) {
      const down = bdd.and(part, press);
      const up = bdd.diff(part, press);
      if (down !== FALSE) made.set(bits | ((held ? on : 1 - on) << bit) | (1 << (bit + 1)), down);
      if (up !== FALSE) made.set(bits | (on << bit), up);
    }
    return made;
  }
}
