/** Which section of the sheet a symbol belongs to. */
import { type Section, traitsOf } from '../figure-traits.ts';
import type { SymbolSpec } from './symbol-specs.ts';

/** Nets by the side they belong to, as the checks sort them. */
export interface NetSides {
  readonly mains: ReadonlySet<number>;
  readonly low: ReadonlySet<number>;
  readonly earth: ReadonlySet<number>;
}

export function sectionOf(spec: SymbolSpec, nets: readonly number[], sides: NetSides): Section {
  let vote = 0;
  for (const net of nets) {
    if (sides.earth.has(net)) continue;
    const mains = sides.mains.has(net);
    if (mains === sides.low.has(net)) continue;
    vote += mains ? 1 : -1;
  }
  // A splice of earth alone belongs to the conductors of the mains.
  if (spec.figure === 'joint' && nets.length > 0 && nets.every((net) => sides.earth.has(net))) return 'mains';
  const { home, fixed } = traitsOf(spec.figure);
  if (fixed || vote === 0) return home(spec.part);
  return vote > 0 ? 'mains' : 'low';
}
