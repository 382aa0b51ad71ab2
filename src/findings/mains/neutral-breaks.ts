/** Contacts that open the neutral of a load with no line conductor beside it. */
import type { ContactEdge } from '../../circuit/circuit.ts';
import { neighbours, reachable } from '../../study/mains/motor-path.ts';
import type { Study } from '../../study/study.ts';
import { type GuardedSource, guardedSources } from './mains-guards.ts';

export interface LoneBreak {
  readonly part: string;
  readonly terminals: readonly string[];
  readonly from: GuardedSource;
  /** loads and outlets that lose their neutral */
  readonly loads: readonly string[];
}

/** A coil's neutral may pass the contact of an overload relay; that of a load or an outlet may not. */
export function loneBreaks(study: Study): LoneBreak[] {
  return guardedSources(study).flatMap((from) => {
    const contacts = study.wired.contacts.filter((c) => c.when.by !== 'always');
    const inLine = new Set(contacts.filter((c) => from.live.has(c.a)).map((c) => c.part));
    const byPart = new Map<string, ContactEdge[]>();
    for (const c of contacts)
      if (from.neutral.has(c.a) && !from.live.has(c.a) && !inLine.has(c.part))
        byPart.set(c.part, [...(byPart.get(c.part) ?? []), c]);
    return [...byPart].flatMap(([part, own]) => {
      const loads = losingNeutral(study, from, own);
      const terminals = [...new Set(own.flatMap((c) => c.terminals))];
      return loads.length > 0 ? [{ part, terminals, from, loads }] : [];
    });
  });
}

function losingNeutral({ wired }: Study, from: GuardedSource, without: readonly ContactEdge[]): string[] {
  const starts = from.source.rails.filter((r) => !r.live).map((r) => r.net);
  const left = reachable(
    starts,
    neighbours({ ...wired, contacts: wired.contacts.filter((c) => !without.includes(c)) }),
    undefined,
  );
  return wired.consumers
    .filter((c) => [...c.nets.values()].some((n) => from.neutral.has(n) && !left.has(n)))
    .map((c) => c.part);
}
