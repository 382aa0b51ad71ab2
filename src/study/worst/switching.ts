/** What settling a variable does to the rails, and which variables can be settled by bounds alone. */
import type { Across } from '../../electric/port-matrix.ts';
import type { Probed } from '../../electric/rail-bounds.ts';
import type { Element, Settings } from './rail-model.ts';

/** The state of an element in which it draws, or joins, more. */
export const heavier = (e: Element) => (e.on.y.re >= e.off.y.re ? e.on : e.off);
const lighter = (e: Element) => (e.on.y.re >= e.off.y.re ? e.off : e.on);

/** What is left to settle of which one position can be no worse than the worst that is known. */
interface Certain {
  readonly settled: Settings;
  /** V that every state put aside gets */
  readonly least: number;
  /** whether neither position of one of them can */
  readonly none: boolean;
}

/** `worst` is the V below which a state is worth looking for. */
export function certainOf(
  left: readonly number[],
  switches: readonly Element[],
  { across, open }: Probed,
  worst: number,
): Certain {
  const [on, off] = [new Map<number, number>(), new Map<number, number>()];
  const raise = (to: Map<number, number>, x: number, volts: number) =>
    to.set(x, Math.max(to.get(x) ?? Number.NEGATIVE_INFINITY, volts));
  for (const [i, e] of switches.entries()) {
    const [joined, parted] = e.on === heavier(e) ? [on, off] : [off, on];
    raise(joined, e.variable!, across[i]!);
    // What leaks while it is open is neither.
    if (lighter(e).y.re === 0) raise(parted, e.variable!, open[i]!);
  }
  const settled = new Map<number, boolean>();
  let least = Number.POSITIVE_INFINITY;
  for (const x of left) {
    const [withIt, without] = [on.get(x) ?? Number.NEGATIVE_INFINITY, off.get(x) ?? Number.NEGATIVE_INFINITY];
    if (withIt < worst && without < worst) continue;
    if (withIt >= worst && without >= worst)
      return { settled: new Map(), least: Math.min(withIt, without), none: true };
    settled.set(x, withIt < worst);
    least = Math.min(least, Math.max(withIt, without));
  }
  return { settled, least, none: false };
}

/** The variable whose contacts do most to the volts. */
export function heaviest(
  left: readonly number[],
  switches: readonly Element[],
  shares: Float64Array,
): number {
  const sums = new Map(left.map((x) => [x, 0]));
  for (const [i, e] of switches.entries())
    sums.set(e.variable!, sums.get(e.variable!)! + Math.abs(shares[i]!));
  return left.reduce((x, y) => (sums.get(y)! > sums.get(x)! ? y : x));
}

/**
 * What is put across ports where loads that can be on already are. Loads stay at the most they can be where the coil's own
 * gates are what moves them.
 */
export function changesOf(elements: readonly Element[], value: boolean, own = false): Across[] {
  return elements.flatMap((e): Across[] => {
    const here = value ? e.on : e.off;
    if (!e.piece.draws) return [{ port: e.port, y: here.y, emf: 0 }];
    if (own || here === heavier(e)) return [];
    const { y, emf } = heavier(e);
    return [
      { port: e.port, y: { re: -y.re, im: -y.im }, emf },
      { port: e.port, y: here.y, emf: here.emf },
    ];
  });
}
