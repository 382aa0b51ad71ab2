/** What each conductor is for, by what the circuit joins it to; names and colours have no part in it. */
import type { Source } from '../../circuit/circuit.ts';
import { flood, neighbours } from '../../circuit/graph.ts';
import { contactPairs, isLow, isMains } from '../../circuit/sides.ts';
import { FALSE } from '../../logic/bdd.ts';
import type { Core, TerminalRef } from '../../plan/plan.ts';
import { splitTerminalKey, terminalKey } from '../../plan/terminal-key.ts';
import { perStudy } from '../per-study.ts';
import type { Study } from '../study.ts';

/**
 * `live`: on mains, and whether line or neutral cannot be told, since it is joined to neither but through loads, or to
 * several at once.
 */
export type ConductorRole =
  | {
      readonly use: 'line' | 'neutral';
      /** joined through contacts only, in some of their positions */
      readonly switched: boolean;
      /** the plugs it is joined to */
      readonly sources: readonly Source[];
    }
  | { readonly use: 'earth' | 'live' | 'low-voltage' };

const LIVE: ConductorRole = { use: 'live' };

/** By net; nets that lead nowhere have none. */
const conductorRoles = perStudy((study): ReadonlyMap<number, ConductorRole> => {
  const { circuit, sides } = study;
  const byWire = pinsByNet(study);
  const byContact = reachedThroughContacts(study);
  const withEarthEnd = new Set(
    [...circuit.netOf].flatMap(([key, net]) => (splitTerminalKey(key).terminal === 'PE' ? [net] : [])),
  );
  const unpinned = (net: number, isEarth: boolean): ConductorRole | undefined => {
    if (isEarth) return { use: 'earth' };
    if (isMains(sides, net)) return byContact(net) ?? LIVE;
    return isLow(sides, net) ? { use: 'low-voltage' } : undefined;
  };
  const roles = new Map<number, ConductorRole>();
  for (let net = 0; net < circuit.netCount; net++) {
    const pins = byWire.get(net) ?? [];
    const isEarth = sides.earth.has(net) || (withEarthEnd.has(net) && !isMains(sides, net));
    const role = pins.length > 0 ? (isEarth ? LIVE : roleOf(pins, false)) : unpinned(net, isEarth);
    if (role) roles.set(net, role);
  }
  return roles;
});

interface Pin {
  readonly source: Source;
  readonly live: boolean;
}

/** Line and neutral on one conductor are a short, which another check tells. */
function roleOf(pins: readonly Pin[], switched: boolean): ConductorRole {
  const live = pins.some((p) => p.live);
  if (live && pins.some((p) => !p.live)) return LIVE;
  return {
    use: live ? 'line' : 'neutral',
    switched,
    sources: [...new Set(pins.map((p) => p.source))],
  };
}

function pinsByNet({ circuit }: Study): Map<number, Pin[]> {
  const pins = new Map<number, Pin[]>();
  for (const source of circuit.sources)
    if (source.mains)
      for (const { net, live } of source.rails) pins.set(net, [...(pins.get(net) ?? []), { source, live }]);
  return pins;
}

/**
 * A conductor that contacts join to a line in a state in which it is not joined to a neutral is a line. The exact method
 * knows conductors on which something else than contacts ends; for the others contacts are taken in any position, and
 * what both line and neutral reach is `live`.
 */
function reachedThroughContacts(study: Study): (net: number) => ConductorRole | undefined {
  const { circuit, verified: v } = study;
  const plugs = circuit.sources.filter((s) => s.mains);
  const around = neighbours(contactPairs(circuit));
  const flooded = plugs.flatMap((source) =>
    source.rails.map(({ net, live }) => ({ source, live, nets: flood([net], around) })),
  );
  const proved = (net: number): readonly Pin[] => {
    if (!v) return [];
    const { bdd, railReach, valid } = v.model;
    const pins = plugs.flatMap((source) =>
      source.rails.map(({ live }, i) => {
        const when = bdd.and(valid, railReach[source.index]![i]!.get(net) ?? FALSE);
        return { source, live, when };
      }),
    );
    const neutrals = pins.filter((p) => !p.live && p.when !== FALSE);
    const neutral = bdd.any(neutrals.map((p) => p.when));
    const lines = pins.filter((p) => p.live && bdd.diff(p.when, neutral) !== FALSE);
    return lines.length > 0 ? lines : neutrals;
  };
  return (net) => {
    const exact = proved(net);
    const pins = exact.length > 0 ? exact : flooded.filter((f) => f.nets.has(net));
    return pins.length === 0 ? undefined : roleOf(pins, true);
  };
}

/**
 * What one core is for. On a conductor that is earth and a pole of the loop as well, what leads from the pole to a coil or a
 * switch is of the loop, and what hangs on no protective terminal but through the pole is told to be nothing.
 */
export const coreRoles = perStudy((study): ((core: Core) => ConductorRole | undefined) => {
  const { circuit, sides, plan } = study;
  const byNet = conductorRoles(study);
  const poles = new Set(
    circuit.sources
      .filter((s) => !s.mains)
      .flatMap((s) => s.rails.map((r) => terminalKey(s.part, r.terminal))),
  );
  const cores = plan.runs.flatMap((run) => run.cores);
  const ends = (core: Core) => [keyOf(core.a), keyOf(core.b)] as const;
  const without = (left: Core, start: string): ReadonlySet<string> =>
    flood([start], neighbours(cores.filter((c) => c !== left && netOf(c) === netOf(left)).map(ends)));
  const netOf = (core: Core) => circuit.netOf.get(keyOf(core.a));
  return (core) => {
    const net = netOf(core);
    const role = net === undefined ? undefined : byNet.get(net);
    if (net === undefined || role?.use !== 'earth' || !sides.low.has(net)) return role;
    if (!(circuit.terminals[net] ?? []).some((t) => poles.has(t))) return role;
    const [near, far] = ends(core).map((end) => without(core, end)) as [
      ReadonlySet<string>,
      ReadonlySet<string>,
    ];
    const isProtective = (key: string) => splitTerminalKey(key).terminal === 'PE';
    const apart = [near, far].find((side) => ![...side].some(isProtective));
    if (apart === undefined || near.has(keyOf(core.b))) return role;
    if (![...apart].some((key) => poles.has(key))) return { use: 'low-voltage' };
    return ends(core).some((key) => isProtective(key) || plan.parts.get(key)?.kind === 'joint')
      ? role
      : undefined;
  };
});

const keyOf = (end: TerminalRef): string => terminalKey(end.part, end.terminal);
