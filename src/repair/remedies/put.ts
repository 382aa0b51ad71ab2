/** A plan with other figures in it. */

import type { Coil, Contact } from '../../plan/device-figures.ts';
import type { Part, RelayPart, SupplyPart } from '../../plan/part-types.ts';
import type { Cable, Plan } from '../../plan/plan.ts';

/** A plan with some of its parts changed. */
export function withParts(plan: Plan, names: readonly string[], change: (part: Part) => Part): Plan {
  const wanted = new Set(names);
  const parts = new Map([...plan.parts].map(([name, p]) => [name, wanted.has(name) ? change(p) : p]));
  return { ...plan, parts };
}

/** The supply with another limit, in A or in VA as it is sold. */
export function withLimit(part: SupplyPart, size: number): SupplyPart {
  const ac = part.output.kind === 'ac';
  const amps = ac ? size / part.output.volts : size;
  return { ...part, limit: { amps, printed: ac ? 'VA' : 'A', value: size } };
}

/** The relay with another coil; what was typed of the old one is not said of it. */
export function withCoil(part: RelayPart, coil: Coil): RelayPart {
  const where = new Map([...part.where].filter(([field]) => !field.startsWith('coil.')));
  return { ...part, where, coil };
}

/** The number of a run that would come behind all others. */
export const entryBehind = (runs: Plan['runs']): number => (runs.at(-1)?.entry ?? 0) + 1;

/** The plan with the runs of one cable in another. */
export function withCable(plan: Plan, runs: ReadonlySet<number>, cable: Cable): Plan {
  return { ...plan, runs: plan.runs.map((r) => (runs.has(r.index) ? { ...r, cable } : r)) };
}

/** The part with another contact on every pole that `poles` names; a switch has one contact. */
export function withContact(part: Part, contact: Contact, poles?: ReadonlySet<number>): Part {
  if ('poles' in part) {
    const changed = part.poles.map((p) =>
      poles === undefined || poles.has(p.index) ? { ...p, contact } : p,
    );
    return { ...part, poles: changed };
  }
  return 'contact' in part ? { ...part, contact } : part;
}
