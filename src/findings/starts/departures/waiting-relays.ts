/** Relays that stay out with everything open, and which of them the others wait for. */
import type { UnionFind } from '../../../circuit/union-find.ts';
import type { Moved, Verified } from '../../../logic/verify.ts';
import { joinedIn } from './joined-in.ts';

/** Nets joined in one state as if these relays were in besides. */
export function joinedAsIf(v: Verified, moved: Moved, pulled: ReadonlySet<number>): UnionFind {
  const sets = joinedIn(v, moved);
  for (const c of v.circuit.contacts)
    if (c.when.by === 'relay' && c.when.value && pulled.has(c.when.relay)) sets.union(c.a, c.b);
  return sets;
}

/** Relays that are out, by number, those first that wait for no other. */
export function outInOrder(v: Verified, moved: Moved, pulled: readonly boolean[]): readonly number[] {
  const out = v.circuit.relays.filter((r) => !pulled[r.index]).map((r) => r.index);
  const waits = (relay: number) =>
    out.some(
      (other) => other !== relay && !reaches(v, moved, relay, []) && reaches(v, moved, relay, [other]),
    );
  return [...out.filter((r) => !waits(r)), ...out.filter(waits)];
}

/** Whether both ends of a coil reach a pole, as if these relays were in. */
function reaches(v: Verified, moved: Moved, relay: number, asIf: readonly number[]): boolean {
  const sets = joinedAsIf(v, moved, new Set(asIf));
  const rails = v.circuit.sources.flatMap((s) => s.rails.map((r) => r.net));
  const sense = v.circuit.relays[relay]!.senses.find((s) => s.by === 'volts');
  return sense !== undefined && [sense.a, sense.b].every((n) => rails.some((r) => sets.joined(r, n)));
}
