/** The currents of each low-voltage source in the state in which it gives most. */
import type { Source } from '../../circuit/circuit.ts';
import type { Flows } from '../../electric/flows.ts';
import { statesFeeding } from '../../study/coil-rows.ts';
import type { Electrics } from '../../study/electrics.ts';
import { perStudy } from '../../study/per-study.ts';
import type { Standing } from '../../study/situations.ts';

export interface Busiest {
  readonly source: Source;
  readonly flows: Flows;
}

export const busiestFlows = perStudy((study): readonly Busiest[] => {
  const own = study.electrics;
  if (!own) return [];
  const tries = triesOf(own);
  return own.circuit.sources
    .filter((s) => !s.mains)
    .map((source) => ({ source, flows: mostFrom(own, tries, source) }));
});

/** States to try, each once, and among them that with all gates open. */
interface Tries {
  readonly all: Standing | undefined;
  readonly each: readonly (Standing | undefined)[];
}

/** The same for every source. */
function triesOf(own: Electrics): Tries {
  const { circuit } = own.v;
  const all = circuit.inputs.filter((i) => i.kind === 'gate').map((i) => i.index);
  const single = circuit.relays.flatMap((r) => statesFeeding(own, r).slice(0, FEW));
  const tries = [[], all, ...single, ...single.map((moved) => union(all, moved))];
  const each = new Map(tries.map((moved) => [moved.join(), moved] as const));
  const standing = [...each.values()].map((moved) => own.situations.at(moved));
  return { all: standing[[...each.keys()].indexOf(all.join())], each: standing };
}

/**
 * The state in which the source gives most, pulled in. More closed contacts give more current (Rayleigh), so all gates
 * open, with and without what else a coil needs, and rest bound it; single states are tried for a few gates only.
 */
function mostFrom(own: Electrics, { all, each }: Tries, source: Source): Flows {
  let best: { flows: Flows; amps: number } | undefined;
  for (const standing of each) {
    if (!standing || (all && standing !== all && closesLess(own, source, standing, all))) continue;
    const flows = own.solveSource(source, standing, 'strong');
    const i = flows.sourceAmps(source);
    const amps = Math.hypot(i.re, i.im);
    if (!best || amps > best.amps) best = { flows, amps };
  }
  return best?.flows ?? own.solveSource(source, own.situations.atRest, 'strong');
}

/** Whether no contact round the source is closed that is open in the other state, where it then gives no less. */
function closesLess(own: Electrics, source: Source, less: Standing, more: Standing): boolean {
  const { contacts, sources } = own.islandRound(source);
  return (
    sources.every((s) => less.alive[s.index] === more.alive[s.index]) &&
    contacts.every((c) => !less.situation.closed(c) || more.situation.closed(c))
  );
}

/** Single states a relay that are tried beside all gates open. */
const FEW = 4;

const union = (a: readonly number[], b: readonly number[]): number[] =>
  [...new Set([...a, ...b])].sort((x, y) => x - y);

/** A through one wire or contact. */
export function ampsThrough({ flows }: Busiest, edge: Parameters<Flows['amps']>[0]): number {
  const i = flows.amps(edge);
  return i ? Math.hypot(i.re, i.im) : 0;
}
