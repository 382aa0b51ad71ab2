/** How far each symbol is from the live rail of its section, what it is there, and which way round it stands. */
import type { Circuit } from '../../circuit/circuit.ts';
import { type Section, traitsOf } from '../figure-traits.ts';
import { type NetSides, sectionOf } from './home-section.ts';
import { distances, groupsOf } from './rail-distance.ts';
import type { SymbolSpec, TerminalSpec } from './symbol-specs.ts';
import { visitOrder } from './visit-order.ts';

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

/** Distance of a net that no conductor leads to. */
const FAR = Number.MAX_SAFE_INTEGER;

/** Ranks all symbols; the result is in the order in which the conductors are followed from the sources. */
export function rankSymbols(specs: readonly SymbolSpec[], circuit: Circuit, sides: NetSides): Ranked[] {
  const netOf = (t: TerminalSpec) => circuit.netOf.get(t.key);
  const nets = specs.map((s) => s.terminals.map(netOf).filter((n) => n !== undefined));
  // Without mains in the plan an unused contact of a relay has no other side to stand on.
  const hasMains = specs.some((s) => traitsOf(s.figure).fixed && traitsOf(s.figure).home(s.part) === 'mains');
  const section = specs.map((s, i) => (hasMains ? sectionOf(s, nets[i]!, sides) : 'low'));
  const { neutral, feeds } = railsOf(circuit, sides);
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
      const joint = spec.figure === 'joint';
      const fedOnMains = which === 'mains' && traitsOf(spec.figure).fed === 'always';
      result.push({
        spec,
        section: which,
        group: group.get(i)!,
        role: roleOf(spec, own, neutral, which),
        level: near === FAR ? 1 : near + (joint && near > 0 ? 0 : 1),
        mirrored: joint
          ? near === FAR
            ? which === 'low'
            : near > 0
          : !fedOnMains && mirrors(spec, netOf, distance, returns),
        nets: own,
        feeds: own.filter((n) => (distance.get(n) ?? FAR) === near),
      });
    }
  }
  return result;
}

/** Nets from which each section is fed, and those that lead back. */
export function railsOf(circuit: Circuit, sides: NetSides) {
  const neutral = new Set<number>(sides.earth);
  const feeds: Record<Section, number[]> = { low: [], mains: [] };
  for (const source of circuit.sources)
    for (const rail of source.rails) {
      // Mains is drawn from plug to load, neutral and all; the loop from the live rail to its return.
      if (rail.live || source.mains) feeds[source.mains ? 'mains' : 'low'].push(rail.net);
      if (!rail.live) neutral.add(rail.net);
    }
  return { neutral, feeds };
}

function roleOf(
  spec: SymbolSpec,
  nets: readonly number[],
  returns: ReadonlySet<number>,
  section: Section,
): Ranked['role'] {
  const { source, fed } = traitsOf(spec.figure);
  if (source) return 'source';
  // A splice of the return conductor stands at the right rail of the loop.
  if (spec.figure === 'joint')
    return section === 'low' && nets.some((n) => returns.has(n)) ? 'fed' : 'between';
  const onReturn = fed === 'by return' && nets.some((n) => returns.has(n));
  return fed === 'always' || onReturn ? 'fed' : 'between';
}

/** A symbol is turned round when that brings its left terminals nearer to the live rail. */
function mirrors(
  spec: SymbolSpec,
  netOf: (t: TerminalSpec) => number | undefined,
  distance: ReadonlyMap<number, number>,
  returns: ReadonlySet<number>,
): boolean {
  if (traitsOf(spec.figure).source) return false;
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
