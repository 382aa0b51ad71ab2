/** Contacts that open the neutral of a load or of a coil with no line conductor beside it. */
import type { ContactEdge } from '../../circuit/circuit.ts';
import { neighbours, reachable } from '../../study/mains/motor-path.ts';
import type { Study } from '../../study/study.ts';
import { isOverload } from '../contacts/overload-relays.ts';
import { type GuardedSource, guardedSources } from './mains-guards.ts';

export interface LoneBreak {
  readonly part: string;
  readonly terminals: readonly string[];
  readonly from: GuardedSource;
  /** loads and outlets that lose their neutral */
  readonly loads: readonly string[];
  /** relays whose coil loses it */
  readonly coils: readonly string[];
}

export function loneBreaks(study: Study): LoneBreak[] {
  return guardedSources(study).flatMap((from) => {
    const contacts = study.wired.contacts.filter((c) => c.when.by !== 'always');
    const inLine = new Set(contacts.filter((c) => from.live.has(c.a)).map((c) => c.part));
    const byPart = new Map<string, ContactEdge[]>();
    for (const c of contacts)
      if (from.neutral.has(c.a) && !from.live.has(c.a) && !inLine.has(c.part))
        byPart.set(c.part, [...(byPart.get(c.part) ?? []), c]);
    return [...byPart].flatMap(([part, own]) => {
      const lost = losing(study, from, own);
      const loads = study.wired.consumers.filter((c) => [...c.nets.values()].some(lost)).map((c) => c.part);
      const coils = opensCoils(study, part)
        ? study.wired.passives.filter((p) => p.what === 'coil' && (lost(p.a) || lost(p.b))).map((p) => p.part)
        : [];
      const terminals = [...new Set(own.flatMap((c) => c.terminals))];
      return loads.length + coils.length > 0 ? [{ part, terminals, from, loads, coils }] : [];
    });
  });
}

/** Contacts of an overload relay lie between coil and neutral by old custom, which NFPA 79 allows (from memory). */
function opensCoils(study: Study, name: string): boolean {
  const part = study.plan.parts.get(name);
  return !(part?.kind === 'cutout' && isOverload(study, part));
}

/** Whether a net hangs on the neutral by these contacts alone. */
function losing(
  { wired }: Study,
  from: GuardedSource,
  without: readonly ContactEdge[],
): (net: number) => boolean {
  const starts = from.source.rails.filter((r) => !r.live).map((r) => r.net);
  const left = reachable(
    starts,
    neighbours({ ...wired, contacts: wired.contacts.filter((c) => !without.includes(c)) }),
    undefined,
  );
  return (net) => from.neutral.has(net) && !left.has(net);
}
