/** The order in which cores are wired: run by run from the supplies outwards, low voltage first, mains last. */

import type { Circuit } from '../circuit/circuit.ts';
import { isMains, type Sides } from '../circuit/sides.ts';
import { push } from '../plan/map-entries.ts';
import type { Core } from '../plan/plan.ts';
import { terminalKey } from '../plan/terminal-key.ts';
import { LISTED } from './kinds.ts';
import type { Placed, Section } from './wiring-section.ts';
import { WiringWalk } from './wiring-walk.ts';

const MAINS_MARKS = new Set(['L', 'N', 'PE', 'L1', 'L2', 'L3']);

/** The side of a core: that of its conductor; where no source reaches it, that of the parts it lands on. */
export function sectionOf(circuit: Circuit, sides: Sides, core: Core): Section {
  const ends = [core.a, core.b];
  const nets = ends.map((e) => circuit.netOf.get(terminalKey(e.part, e.terminal)));
  const low = nets.some((n) => n !== undefined && sides.low.has(n));
  if (nets.some((n) => isMains(sides, n))) return 'mains';
  // A pole of the loop that is joined to earth is wired with the loop.
  const earth = nets.some((n) => n !== undefined && sides.earth.has(n));
  if (earth && (!low || ends.some((e) => e.terminal === 'PE'))) return 'mains';
  if (low) return 'low voltage';
  const mains = ends.some((e) => {
    const part = circuit.plan.parts.get(e.part);
    const side = part === undefined ? 'low voltage' : LISTED[part.kind].side;
    return e.terminal === 'PE' || side === 'mains' || (side === 'both' && MAINS_MARKS.has(e.terminal));
  });
  return mains ? 'mains' : 'low voltage';
}

/** Every core of the plan once. Within a section each starts at a source or at a part wired before, or is loose. */
export function wiringOrder(circuit: Circuit, sides: Sides): Placed[] {
  const { plan } = circuit;
  const cores = plan.runs.flatMap((run) =>
    run.cores.map((core) => ({ run, core, section: sectionOf(circuit, sides, core) })),
  );
  return (['low voltage', 'mains'] as const).flatMap((section) => {
    const bundles = new Map<number, Core[]>();
    for (const c of cores) if (c.section === section) push(bundles, c.run.index, c.core);
    const isSource = (name: string) => {
      const part = plan.parts.get(name);
      return part !== undefined && LISTED[part.kind].startsWiring === section;
    };
    return new WiringWalk(circuit, section, bundles, isSource).all();
  });
}
