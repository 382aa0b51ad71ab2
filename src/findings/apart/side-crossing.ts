/** Where a conductor of the mains and one of the loop are one, and the core that makes them so. */
import { endKey } from '../../circuit/nets.ts';
import { isMainsPart, type Sides } from '../../circuit/sides.ts';
import { netAt } from '../../circuit/terminals.ts';
import type { Core, TerminalRef } from '../../plan/plan.ts';
import type { Study } from '../../study/study.ts';

/** Nets of the loop that mains reaches, whatever position the contacts have to be in. */
export function netsMet({ low, mains }: Sides): number[] {
  return [...low].filter((net) => mains.has(net));
}

const MOST_TRIES = 200;

/** The one core without which mains and loop stay apart, if there is one. */
export function crossingCore(study: Study): Core | undefined {
  const { plan, circuit, sides } = study;
  const met = new Set(netsMet(sides));
  const candidates = plan.runs.flatMap((run) =>
    run.cores
      .map((core, index) => ({ core, index }))
      .filter(({ core }) => met.has(netAt(circuit, core.a.part, core.a.terminal) ?? -1)),
  );
  if (candidates.length > MOST_TRIES) return undefined;
  const good = candidates.filter(({ core, index }) => {
    const without = study.rewired(new Map([[endKey(core.run, index, 'b'), '#lifted']]));
    return netsMet(without.sides).length === 0;
  });
  // Several cores may each be the bridge; the one that ends on parts of both sides is the odd one.
  const odd = good.find(({ core }) => isMainsEnd(study, core.a) !== isMainsEnd(study, core.b));
  return (odd ?? good[0])?.core;
}

/** The terminal belongs to mains by what the part is. */
function isMainsEnd(study: Study, end: TerminalRef): boolean {
  const part = study.plan.parts.get(end.part);
  if (!part) return false;
  if (isMainsPart(part)) return true;
  if (part.kind === 'supply') return end.terminal.startsWith('L') || end.terminal === 'N';
  if (part.kind === 'relay' || part.kind === 'board' || part.kind === 'timer')
    return part.poles.some((p) => [p.common, p.make, p.break].includes(end.terminal));
  return false;
}
