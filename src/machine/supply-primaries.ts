/** Windings that the plan does not draw: of a supply that is told to hang on a plug. */
import type { Circuit, Passive } from '../circuit/circuit.ts';

/** The mains side of each supply that is fed from a plug, across the first two poles of that plug. */
export function primariesOf({ sources }: Pick<Circuit, 'sources'>): Passive[] {
  return sources.flatMap(({ part, feed }): Passive[] => {
    const plug = feed.by === 'part' ? sources.find((s) => s.part === feed.part) : undefined;
    const [a, b] = plug?.rails ?? [];
    return a && b ? [{ a: a.net, b: b.net, part, what: 'primary' }] : [];
  });
}
