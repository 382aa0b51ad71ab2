/** Defects of the supply of a loop, its poles changed over, and mains that does not come in. */

import type { WiredCircuit } from '../circuit/build.ts';
import type { Source } from '../circuit/circuit.ts';
import { islandOf } from '../electric/island.ts';
import { isFixedFeed } from '../plan/fixed-feed.ts';
import type { BatteryPart, SupplyPart } from '../plan/part-types.ts';
import type { Plan } from '../plan/plan.ts';
import { supplyModel } from '../ratings/supply.ts';
import { figuresFor } from '../study/corner-figures.ts';
import { type Fault, RANK } from './fault.ts';
import { bareMark } from './probe-words.ts';

/** Share by which rated and no-load volts of a weak supply differ where the plan has them alike. */
const SPLIT = 1e-3;

/** Every defect of a supply or battery of the right circuit. */
export function supplyFaults(plan: Plan, circuit: WiredCircuit, source: Source): Fault[] {
  const own = (s: Source) => s.part === source.part;
  const base = {
    item: source.part,
    parts: [source.part],
    at: source.rails.map((r) => `${source.part}.${r.terminal}`),
    rank: RANK.supply,
  };
  const dead: Fault = {
    ...base,
    mode: 'supply-dead',
    text: `${source.part} gives nothing`,
    circuit: (c) => ({ ...c, sources: c.sources.filter((s) => !own(s)) }),
  };
  const weak = weakFault(plan, circuit, source, base);
  if (source.kind === 'ac') return [dead, ...weak];
  const reversed: Fault = {
    ...base,
    mode: 'poles-changed',
    text: `${source.part}: its poles are changed over`,
    circuit: (c) => ({
      ...c,
      sources: c.sources.map((s) =>
        own(s) ? { ...s, rails: s.rails.map((r, i) => ({ ...r, net: s.rails[1 - i]!.net })) } : s,
      ),
    }),
  };
  return [dead, reversed, ...weak];
}

/**
 * Lines that bring no volts, as when a breaker is off or a fuse beyond the plug has blown. With two poles there is
 * nothing to tell one line from the other. A transformer whose output is mains brings none when it is dead itself.
 */
export function feedFaults(plan: Plan, source: Source, mark: (key: string) => string): Fault[] {
  const part = plan.parts.get(source.part);
  const beyond = part?.kind === 'plug' && isFixedFeed(part) ? 'its feed' : 'the socket it goes into';
  const gives = part?.kind === 'supply' ? `${source.part} gives nothing` : undefined;
  const lines = source.rails.length > 2 ? source.rails : source.rails.slice(0, 1);
  return lines.map(({ terminal }) => {
    const key = `${source.part}.${terminal}`;
    return {
      text:
        gives ??
        (lines.length > 1
          ? `${source.part}: no volts come in on ${bareMark(mark(key))} (a fuse or breaker of ${beyond})`
          : `${source.part}: no volts come in (${beyond} is dead)`),
      item: source.part,
      mode: 'feed-dead',
      parts: [source.part],
      at: [key],
      rank: RANK.supply,
      live: true,
      circuit: (c) => ({
        ...c,
        netCount: c.netCount + 1,
        sources: c.sources.map((s) =>
          s.part !== source.part
            ? s
            : { ...s, rails: s.rails.map((r) => (r.terminal === terminal ? { ...r, net: c.netCount } : r)) },
        ),
      }),
    };
  });
}

/** The fuse in a plug, which lies between its first pole and the core there. */
export function plugFuseFault(plan: Plan, source: Source): Fault[] {
  const part = plan.parts.get(source.part);
  if (part?.kind !== 'plug' || part.fuse === undefined) return [];
  const key = `${source.part}.${source.rails[0]!.terminal}`;
  return [
    {
      item: source.part,
      mode: 'blown',
      text: `${source.part}: its own fuse has blown or is missing`,
      parts: [source.part],
      at: [key],
      rank: RANK.fuse,
      circuit: (c) => {
        const net = c.netOf.get(key);
        return { ...c, wires: c.wires.filter((w) => w.a !== net && w.b !== net) };
      },
    },
  ];
}

/** A supply that has its volts while nothing is on it, and about half of them with the coil on it. */
function weakFault(
  plan: Plan,
  circuit: WiredCircuit,
  source: Source,
  base: Pick<Fault, 'item' | 'parts' | 'at' | 'rank'>,
): Fault[] {
  const part = plan.parts.get(source.part);
  if (part?.kind !== 'supply' && part?.kind !== 'battery') return [];
  const text = `${source.part} lets its volts fall under load (too weak, or worn)`;
  const ohms = loadOhms(plan, circuit, source);
  if (ohms === undefined)
    return [
      { ...base, mode: 'supply-weak', text, untried: 'the plan does not tell what any load on it draws' },
    ];
  const weak = part.kind === 'battery' ? { ...part, internalResistance: ohms } : weakSupply(plan, part, ohms);
  return [
    {
      ...base,
      mode: 'supply-weak',
      text,
      plan: (p) => ({ ...p, parts: new Map(p.parts).set(part.name, weak) }),
      beforeMains: true,
      live: true,
      hidden: 'no reading on the live loop is taken while it gives the current of a coil',
    },
  ];
}

/** The same volts with nothing on it, behind this many ohm. */
function weakSupply(plan: Plan, part: SupplyPart, ohms: number): SupplyPart | BatteryPart {
  const noLoad = supplyModel(part, plan.practice).openCircuit.nominal;
  const volts = part.output.volts < noLoad ? part.output.volts : noLoad * (1 - SPLIT);
  const { tolerance: _, ...rest } = part;
  return {
    ...rest,
    output: { ...part.output, volts },
    regulation: part.output.kind === 'dc' ? 'unregulated' : 'transformer',
    noLoad,
    limit: { printed: 'A', value: (noLoad - volts) / ohms, amps: (noLoad - volts) / ohms },
  };
}

/** ohm of the coil that draws most of what hangs on a supply, else of whatever does. */
function loadOhms(plan: Plan, circuit: WiredCircuit, source: Source): number | undefined {
  const figures = figuresFor(plan, 'nominal');
  const { passives } = islandOf(
    circuit,
    source.rails.map((r) => r.net),
  );
  const sizes = (list: typeof passives) =>
    list.flatMap((p) => {
      const z = figures.passive(p, false);
      return z === undefined ? [] : [Math.hypot(z.re, z.im)];
    });
  const coils = sizes(passives.filter((p) => p.what === 'coil'));
  const least = Math.min(...(coils.length > 0 ? coils : sizes(passives)));
  return Number.isFinite(least) && least > 0 ? least : undefined;
}
