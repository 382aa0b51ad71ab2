/** Which section a symbol belongs to, how far it is from the live rail, and which way round it stands. */
import type { Circuit } from '../circuit/circuit.ts';
import { push } from '../plan/map-entries.ts';
import type { Part } from '../plan/plan.ts';
import { terminalKey } from '../plan/terminal-key.ts';
import type { SymbolSpec, TerminalSpec } from './specs.ts';

export type Section = 'low' | 'mains';

/** Nets by the side they belong to, as the checks sort them. */
export interface NetSides {
  readonly mains: ReadonlySet<number>;
  readonly low: ReadonlySet<number>;
  readonly earth: ReadonlySet<number>;
}

export interface Ranked {
  readonly spec: SymbolSpec;
  readonly section: Section;
  /** number of the connected piece of its section */
  readonly group: number;
  readonly role: 'source' | 'between' | 'fed';
  /** parts passed on the way from the live rail, from 1 */
  readonly level: number;
  readonly mirrored: boolean;
  /** nets its wired terminals lie on */
  readonly nets: readonly number[];
  /** those of them nearest to the live rail */
  readonly feeds: readonly number[];
}

const FAR = Number.MAX_SAFE_INTEGER;
/** What stands at the end of a rung whatever it is wired to. */
const ALWAYS_FED = new Set(['coil', 'timer', 'board', 'outlet', 'motor', 'load', 'primary']);
/** What stands there when one of its terminals lies on the return conductor. */
const FED_BY_RETURN = new Set(['diode', 'led', 'resistor', 'lamp']);
/** Above this a coil is taken for one on mains; the limit of extra-low voltage in IEC 61140 is 50 V AC. */
const LOW_VOLTS = 50;

/** Ranks all symbols; the result is in the order in which the conductors are followed from the sources. */
export function rankSymbols(specs: readonly SymbolSpec[], circuit: Circuit, sides: NetSides): Ranked[] {
  const netOf = (t: TerminalSpec) => circuit.netOf.get(t.key);
  const nets = specs.map((s) => s.terminals.map(netOf).filter((n) => n !== undefined));
  // Without mains in the plan an unused contact of a relay has no other side to stand on.
  const hasMains = specs.some(
    (s) => homeOf(s.part, s.figure).fixed && homeOf(s.part, s.figure).section === 'mains',
  );
  const section = specs.map((s, i) => (hasMains ? sectionOf(s, nets[i]!, sides) : 'low'));
  const neutral = new Set<number>(sides.earth);
  const feeds: Record<Section, number[]> = { low: [], mains: [] };
  for (const source of circuit.sources)
    for (const rail of source.rails) {
      // Mains is drawn from plug to load, neutral and all; the loop from the live rail to its return.
      if (rail.live || source.mains) feeds[source.mains ? 'mains' : 'low'].push(rail.net);
      if (!rail.live) neutral.add(rail.net);
    }
  const order = visitOrder(specs, circuit);
  const result: Ranked[] = [];
  for (const which of ['low', 'mains'] as const) {
    const members = order.filter((i) => section[i] === which);
    const returns = which === 'mains' ? sides.earth : neutral;
    const distance = distances(members, specs, nets, feeds[which], returns);
    const group = groupsOf(members, nets, sides.earth);
    for (const i of members) {
      const spec = specs[i]!;
      const own = nets[i]!;
      const near = Math.min(FAR, ...own.map((n) => (returns.has(n) ? FAR : (distance.get(n) ?? FAR))));
      result.push({
        spec,
        section: which,
        group: group.get(i)!,
        role: roleOf(spec, own, neutral, which),
        level: near === FAR ? 1 : near + (spec.figure === 'joint' && near > 0 ? 0 : 1),
        mirrored:
          spec.figure === 'joint'
            ? near === FAR
              ? which === 'low'
              : near > 0
            : !(which === 'mains' && ALWAYS_FED.has(spec.figure)) && mirrors(spec, netOf, distance, returns),
        nets: own,
        feeds: own.filter((n) => (distance.get(n) ?? FAR) === near),
      });
    }
  }
  return result;
}

function sectionOf(spec: SymbolSpec, nets: readonly number[], sides: NetSides): Section {
  let vote = 0;
  for (const net of nets) {
    if (sides.earth.has(net)) continue;
    const mains = sides.mains.has(net);
    if (mains === sides.low.has(net)) continue;
    vote += mains ? 1 : -1;
  }
  const home = homeOf(spec.part, spec.figure);
  if (home.fixed || vote === 0) return home.section;
  return vote > 0 ? 'mains' : 'low';
}

function homeOf(part: Part, figure: SymbolSpec['figure']): { section: Section; fixed: boolean } {
  switch (figure) {
    case 'source':
      return { section: 'low', fixed: true };
    case 'plug':
    case 'outlet':
    case 'motor':
    case 'load':
    case 'primary':
    case 'box':
      return { section: 'mains', fixed: true };
    case 'pole':
    case 'static-pole':
      return { section: 'mains', fixed: false };
    case 'coil':
    case 'timer': {
      const rated = 'coil' in part ? part.coil?.rated : undefined;
      return { section: rated?.kind === 'ac' && rated.volts > LOW_VOLTS ? 'mains' : 'low', fixed: false };
    }
    default:
      return { section: 'low', fixed: false };
  }
}

function roleOf(
  spec: SymbolSpec,
  nets: readonly number[],
  returns: ReadonlySet<number>,
  section: Section,
): Ranked['role'] {
  if (spec.figure === 'source' || spec.figure === 'plug') return 'source';
  // A splice of the return conductor stands at the right rail of the loop.
  if (spec.figure === 'joint')
    return section === 'low' && nets.some((n) => returns.has(n)) ? 'fed' : 'between';
  const fed =
    ALWAYS_FED.has(spec.figure) || (FED_BY_RETURN.has(spec.figure) && nets.some((n) => returns.has(n)));
  return fed ? 'fed' : 'between';
}

/** Parts between each net and a live pole; the return conductor and earth are entered and not left. */
function distances(
  members: readonly number[],
  specs: readonly SymbolSpec[],
  nets: readonly (readonly number[])[],
  starts: readonly number[],
  returns: ReadonlySet<number>,
): Map<number, number> {
  const on = new Map<number, number[]>();
  for (const i of members) {
    if (specs[i]!.figure === 'source' || specs[i]!.figure === 'plug') continue;
    for (const net of nets[i]!) {
      const list = on.get(net);
      if (list) list.push(i);
      else on.set(net, [i]);
    }
  }
  const distance = new Map(starts.map((n) => [n, 0]));
  const queue = [...distance.keys()];
  for (let at = 0; at < queue.length; at++) {
    const net = queue[at]!;
    if (returns.has(net)) continue;
    for (const i of on.get(net) ?? [])
      for (const to of nets[i]!)
        if (!distance.has(to)) {
          distance.set(to, distance.get(net)! + 1);
          queue.push(to);
        }
    on.delete(net);
  }
  return distance;
}

/** Pieces that share a net, earth not counted. */
function groupsOf(
  members: readonly number[],
  nets: readonly (readonly number[])[],
  earth: ReadonlySet<number>,
): Map<number, number> {
  const first = new Map<number, number>();
  const parent = new Map<number, number>(members.map((i) => [i, i]));
  const find = (i: number): number => {
    let root = i;
    while (parent.get(root) !== root) root = parent.get(root)!;
    for (let at = i; at !== root; ) {
      const next = parent.get(at)!;
      parent.set(at, root);
      at = next;
    }
    return root;
  };
  for (const i of members)
    for (const net of nets[i]!) {
      if (earth.has(net)) continue;
      const other = first.get(net);
      if (other === undefined) first.set(net, i);
      else parent.set(find(i), find(other));
    }
  // What hangs on earth alone joins the first piece; what hangs on nothing shares a group of its own.
  const onEarth = (i: number) => nets[i]!.every((n) => earth.has(n));
  const main = members.find((i) => !onEarth(i));
  return new Map(
    members.map((i) => {
      if (nets[i]!.length === 0) return [i, -1];
      return [i, onEarth(i) && main !== undefined ? find(main) : find(i)];
    }),
  );
}

/** A symbol is turned round when that brings its left terminals nearer to the live rail. */
function mirrors(
  spec: SymbolSpec,
  netOf: (t: TerminalSpec) => number | undefined,
  distance: ReadonlyMap<number, number>,
  returns: ReadonlySet<number>,
): boolean {
  if (spec.figure === 'source' || spec.figure === 'plug') return false;
  const reach = (side: 'left' | 'right') => {
    const own = spec.terminals.filter((t) => t.side === side).map(netOf);
    const known = own.filter((n) => n !== undefined);
    return known.length === 0
      ? undefined
      : Math.min(...known.map((n) => (returns.has(n) ? FAR : (distance.get(n) ?? FAR - 1))));
  };
  const left = reach('left');
  const right = reach('right');
  return left !== undefined && right !== undefined && right < left;
}

/** Symbols in the order in which cores lead from one to the next, sources first. */
function visitOrder(specs: readonly SymbolSpec[], circuit: Circuit): number[] {
  const owner = new Map<string, number>();
  specs.forEach((s, i) => {
    for (const t of s.terminals) owner.set(t.key, i);
  });
  const next = new Map<string, string[]>();
  for (const run of circuit.plan.runs)
    for (const core of run.cores) {
      const a = terminalKey(core.a.part, core.a.terminal);
      const b = terminalKey(core.b.part, core.b.terminal);
      push(next, a, b);
      push(next, b, a);
    }
  const seen = new Set<number>();
  const followed = new Set<string>();
  const order: number[] = [];
  const entered: string[] = [];
  const follow = (start: string) => {
    const stack = [start];
    for (let key = stack.pop(); key !== undefined; key = stack.pop()) {
      if (followed.has(key)) continue;
      followed.add(key);
      const i = owner.get(key);
      if (i !== undefined && !seen.has(i)) {
        seen.add(i);
        order.push(i);
        for (const t of specs[i]!.terminals) entered.push(t.key);
      }
      for (const to of [...(next.get(key) ?? [])].reverse()) if (!followed.has(to)) stack.push(to);
    }
  };
  const sources = specs.filter((s) => s.figure === 'source' || s.figure === 'plug');
  for (const s of sources) for (const t of s.terminals) entered.push(t.key);
  for (let at = 0; at < entered.length; at++) follow(entered[at]!);
  specs.forEach((s, i) => {
    if (seen.has(i)) return;
    seen.add(i);
    order.push(i);
    for (const t of s.terminals) follow(t.key);
  });
  return order;
}
