/** What is fed in which state, by connection alone: relays settle step by step, diodes conduct one way. */
import { type Contact, Joined, type Sheet, type Source } from './sheet.ts';

/** Inputs by their state; what is left out is at rest. */
export type Setting = ReadonlyMap<string, string>;

export interface Shown {
  readonly relays: ReadonlySet<string>;
  readonly loads: ReadonlySet<string>;
  readonly lamps: ReadonlySet<string>;
}

/** The contact of a part under test that is taken to be open whatever else is so. */
export type Open = (contact: Contact) => boolean;

function closedIn(
  s: Sheet,
  setting: Setting,
  pulled: ReadonlySet<string>,
  open: Open,
): (readonly [string, string])[] {
  const rest = new Map(s.inputs.map((i) => [i.part, i.states[0]!]));
  return s.contacts.flatMap((c) => {
    if (open(c)) return [];
    const now =
      c.by === 'fuse'
        ? 'rest'
        : c.by === 'relay'
          ? pulled.has(c.part)
            ? 'in'
            : 'out'
          : (setting.get(c.part) ?? rest.get(c.part));
    return now === c.closed ? [[c.a, c.b] as const] : [];
  });
}

/** Nets with what leads out of a pole: one way through diodes where the source is DC. */
class Net {
  readonly joined: Joined;
  readonly #reach = new Map<string, Set<string>>();

  constructor(
    private readonly s: Sheet,
    pairs: readonly (readonly [string, string])[],
    passable: readonly (readonly [string, string])[],
  ) {
    this.joined = new Joined([
      ...s.leads.map((l) => [l.a, l.b] as const),
      ...s.plugged,
      ...pairs,
      ...passable,
    ]);
  }

  /** Roots that a pole's current can come to (`out`) or from which it comes back. */
  reach(source: Source, pole: number): Set<string> {
    const name = source.poles[pole]!;
    const known = this.#reach.get(name);
    if (known !== undefined) return known;
    const found = new Set([this.joined.root(name)]);
    for (let grown = true; grown; ) {
      grown = false;
      for (const d of this.s.diodes) {
        const [from, to] = pole === 0 ? [d.a, d.k] : [d.k, d.a];
        const ways = source.direct
          ? [[from, to]]
          : [
              [from, to],
              [to, from],
            ];
        for (const [x, y] of ways)
          if (found.has(this.joined.root(x!)) && !found.has(this.joined.root(y!))) {
            found.add(this.joined.root(y!));
            grown = true;
          }
      }
    }
    this.#reach.set(name, found);
    return found;
  }

  /** Whether two terminals are on different poles of one source; `way`: the first must be the plus of a DC source. */
  fed(a: string, b: string, way = false): boolean {
    const [x, y] = [this.joined.root(a), this.joined.root(b)];
    if (x === y) return false;
    return this.s.sources.some((source) => {
      const dead = source.poles.some((p, i) => source.poles.some((q, j) => i < j && this.joined.same(p, q)));
      if (dead) return false;
      return source.poles.some((_, i) =>
        source.poles.some(
          (_, j) =>
            i !== j &&
            (!way || !source.direct || i === 0) &&
            this.reach(source, i).has(x) &&
            this.reach(source, j).has(y),
        ),
      );
    });
  }
}

/** Settles the relays from those that are in. Undefined where they never come to rest. */
export function settle(
  s: Sheet,
  setting: Setting,
  from: ReadonlySet<string>,
  open: Open = () => false,
): Shown | undefined {
  let pulled = from;
  for (let step = 0; step < 2 * s.coils.length + 2; step++) {
    const net = new Net(s, closedIn(s, setting, pulled, open), []);
    const next = fedCoils(s, net);
    if (next.size === pulled.size && [...next].every((r) => pulled.has(r)))
      return shown(s, setting, next, open, net);
    pulled = next;
  }
  return undefined;
}

function fedCoils(s: Sheet, net: Net): Set<string> {
  const called = s.coils.filter((c) => {
    if (!net.fed(c.ends[0], c.ends[1])) return false;
    if (c.input === undefined) return true;
    return net.joined.same(c.input, c.low === true ? c.ends[1] : c.ends[0]);
  });
  return new Set(called.map((c) => c.part));
}

function shown(s: Sheet, setting: Setting, relays: ReadonlySet<string>, open: Open, net: Net): Shown {
  const through = new Net(s, closedIn(s, setting, relays, open), s.resistors);
  const lamps = s.lamps.filter((l) => through.fed(l.ends[0], l.ends[1], l.led)).map((l) => l.part);
  const loads = s.loads.filter(({ lives }) =>
    lives.every((a, i) => lives.every((b, j) => i >= j || net.fed(a, b))),
  );
  return { relays, lamps: new Set(lamps), loads: new Set(loads.map((l) => l.part)) };
}

/** Every combination of the inputs, or where there are more than `most`: rest, one or two moved, all moved. */
export function settings(s: Sheet, most = 256): Setting[] {
  const count = s.inputs.reduce((n, i) => n * i.states.length, 1);
  const all = (inputs: Sheet['inputs']): Map<string, string>[] =>
    inputs.reduce<Map<string, string>[]>(
      (list, i) => list.flatMap((m) => i.states.map((state) => new Map(m).set(i.part, state))),
      [new Map()],
    );
  if (count <= most) return all(s.inputs);
  const few = s.inputs.flatMap((a, i) => s.inputs.slice(i + 1).flatMap((b) => all([a, b])));
  return [new Map(), ...few, new Map(s.inputs.map((i) => [i.part, i.states.at(-1)!]))];
}
