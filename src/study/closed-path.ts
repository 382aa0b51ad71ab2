/** The closed way that keeps a load on, terminal by terminal. */
import { type Moved, relaysAt, type Verified } from '../logic/verify.ts';
import { push } from '../plan/map-entries.ts';
import { partOfKey, terminalKey } from '../plan/terminal-key.ts';
import type { Study } from './study.ts';

/** What a way may go through besides wires, links, fuses and closed contacts: diodes the way they conduct, and lamps and coils too. */
const THROUGH = ['contacts', 'diodes', 'all'] as const;
type Through = (typeof THROUGH)[number];

/** Where one may go from each terminal, in one settled state. */
type Around = ReadonlyMap<string, readonly string[]>;

const NONE: ReadonlySet<string> = new Set();

/** The shortest way from any of the starting terminals to any of the ends, as terminals in order, not by way of `barred`. */
function shortest(
  around: Around,
  starts: Iterable<string>,
  ends: readonly string[],
  barred: ReadonlySet<string> = NONE,
): readonly string[] | undefined {
  const goal = new Set(ends);
  const from = new Map<string, string | undefined>([...starts].map((s) => [s, undefined]));
  for (const here of from.keys()) {
    if (goal.has(here)) {
      const path: string[] = [];
      for (let at: string | undefined = here; at !== undefined; at = from.get(at)) path.unshift(at);
      return path;
    }
    for (const to of around.get(here) ?? []) if (!from.has(to) && !barred.has(to)) from.set(to, here);
  }
  return undefined;
}

/** All that hangs on the starting terminals. */
function reach(around: Around, starts: readonly string[]): ReadonlySet<string> {
  const inside = new Set(starts);
  for (const here of inside) for (const to of around.get(here) ?? []) inside.add(to);
  return inside;
}

function neighbours(study: Study, v: Verified, moved: Moved, through: Through): Around {
  const { plan, circuit } = study;
  const around = new Map<string, string[]>();
  const join = (a: string, b: string) => {
    push(around, a, b);
    push(around, b, a);
  };
  const key = (end: { part: string; terminal: string }) => terminalKey(end.part, end.terminal);
  for (const run of plan.runs) for (const core of run.cores) join(key(core.a), key(core.b));
  for (const part of plan.parts.values())
    if ('pluggedInto' in part && part.pluggedInto !== undefined)
      for (const t of ['L', 'N', 'L1', 'L2', 'L3']) join(`${part.name}.${t}`, `${part.pluggedInto}.${t}`);
  const on = new Set(moved);
  const relays = relaysAt(v, moved);
  for (const c of circuit.contacts) {
    const closed =
      c.when.by === 'always' ||
      (c.when.by === 'input' ? on.has(c.when.input) === c.when.value : relays[c.when.relay] === c.when.value);
    if (closed) join(`${c.part}.${c.terminals[0]}`, `${c.part}.${c.terminals[1]}`);
  }
  if (through === 'contacts') return around;
  for (const d of circuit.diodes) {
    if (d.builtIn || (d.load && through === 'diodes')) continue;
    push(around, `${d.part}.A`, `${d.part}.K`);
  }
  if (through === 'diodes') return around;
  for (const { part, what } of circuit.passives) {
    const kind = plan.parts.get(part)?.kind;
    if (what === 'coil' && kind !== 'board') join(`${part}.A1`, `${part}.A2`);
    else if (kind === 'lamp' || kind === 'resistor') join(`${part}.1`, `${part}.2`);
  }
  return around;
}

/**
 * The way from a supply to a coil, or from the coil back where that is what gates open and shut: in line with wires, links,
 * fuses and closed contacts where there is such a way, else through diodes, lamps and other coils.
 */
function coilWay(
  study: Study,
  v: Verified,
  moved: Moved,
  ends: readonly string[],
): readonly string[] | undefined {
  const { circuit } = study;
  const inputs = new Set(circuit.inputs.map((i) => i.part));
  const byInput = (way: readonly string[]) => way.some((t) => inputs.has(partOfKey(t)));
  const lowVolts = circuit.sources.filter((s) => !s.mains);
  const keys = (rails: 'first' | 'others') =>
    lowVolts.flatMap((s) =>
      (rails === 'first' ? s.rails.slice(0, 1) : s.rails.slice(1)).map((r) =>
        terminalKey(s.part, r.terminal),
      ),
    );
  const joined = neighbours(study, v, moved, 'contacts');
  let way: readonly string[] | undefined;
  for (const through of THROUGH) {
    const around = through === 'contacts' ? joined : neighbours(study, v, moved, through);
    // Not over the other pole of a supply, and into the coil by the end that does not hang on it.
    const lead = (from: readonly string[], to: readonly string[]) => {
      const far = reach(joined, to);
      const open = ends.filter((e) => !far.has(e));
      return shortest(
        around,
        from,
        through === 'contacts' ? ends : open,
        through === 'contacts' ? NONE : far,
      );
    };
    const out = lead(keys('first'), keys('others'));
    if (out !== undefined && byInput(out)) return out;
    const back = through === 'all' ? undefined : lead(keys('others'), keys('first'));
    if (back !== undefined && byInput(back)) return [...back].reverse();
    way ??= out;
    if (out !== undefined && (back !== undefined || through === 'all')) return way;
  }
  return way;
}

/**
 * What keeps a load running in a state: the way to the coil of the relay that is in and carries it, or the mains way
 * to the load itself, as terminals in order. Undefined when neither is found.
 */
export function whatFeeds(
  study: Study,
  v: Verified,
  target: string,
  moved: Moved,
): readonly string[] | undefined {
  const consumer = study.circuit.consumers.find((c) => c.part === target);
  const ends = [...(consumer?.nets.keys() ?? coilEnds(study, target))].map((t) => terminalKey(target, t));
  return feedsTo(study, v, moved, target, ends, new Set());
}

/** The same of some ends; a coil on mains is followed on to the coil whose contact feeds it, each asked for once. */
function feedsTo(
  study: Study,
  v: Verified,
  moved: Moved,
  target: string,
  ends: readonly string[],
  asked: Set<string>,
): readonly string[] | undefined {
  const { circuit } = study;
  const mains = circuit.sources.filter((s) => s.mains);
  const poles = (live: boolean) =>
    mains.flatMap((s) => s.rails.filter((r) => r.live === live).map((r) => terminalKey(s.part, r.terminal)));
  const joined = neighbours(study, v, moved, 'contacts');
  const out = shortest(joined, poles(true), ends);
  // A contact may lie in the neutral.
  const back = shortest(joined, poles(false), ends);
  const pulled = relaysAt(v, moved);
  const isIn = (part: string) => circuit.relays.some((r) => r.part === part && pulled[r.index] === true);
  for (const relay of new Set([target, ...[...(out ?? []), ...(back ?? [])].map(partOfKey)])) {
    if (asked.has(relay) || !isIn(relay)) continue;
    asked.add(relay);
    const coil = coilEnds(study, relay).map((t) => terminalKey(relay, t));
    const way = coilWay(study, v, moved, coil) ?? feedsTo(study, v, moved, relay, coil, asked);
    if (way) return way;
  }
  return out;
}

/** Terminals of what makes a relay pull in. */
const coilEnds = ({ plan }: Study, relay: string): readonly string[] =>
  plan.parts.get(relay)?.kind === 'board' ? ['VCC', 'GND', 'IN'] : ['A1', 'A2'];
