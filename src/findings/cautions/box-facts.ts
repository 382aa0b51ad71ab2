/** The relays on mains, and the boxes, cables and joints that part mains from the loop. */
import { isLow, isMains } from '../../circuit/sides.ts';
import { netAt } from '../../circuit/terminals.ts';
import type { BoxPart } from '../../plan/part-types.ts';
import type { Study } from '../../study/study.ts';
import type { Stands } from './stands.ts';

export interface BoxFacts {
  /** the weakest barrier between a coil of the loop and contacts on mains; `none` where no relay has both */
  readonly isolation: 'none' | 'reinforced' | 'unsaid' | 'weak';
  /** a solid-state output switches mains */
  readonly solidState: boolean;
  /** a relay on an open circuit board has a contact on mains */
  readonly boardOnMains: boolean;
  /** a relay with a contact on mains lies in no box of the plan */
  readonly relayUnboxed: boolean;
  /** a box with no divider holds mains and low voltage */
  readonly sharedBox: boolean;
  /** one cable carries both */
  readonly sharedCable: boolean;
  /** a mains joint lies in no box */
  readonly openSplice: boolean;
  /** a flexible mains cord ends in a box */
  readonly cordIntoBox: boolean;
}

export function boxFacts(study: Study, stands: Stands): BoxFacts {
  const { plan, circuit, sides } = study;
  const parts = [...plan.parts.values()];
  const boxes = parts.filter((p): p is BoxPart => p.kind === 'box');
  const boxed = new Set(boxes.flatMap((b) => b.holds));
  const onMains = new Set(
    circuit.contacts
      .filter((c) => c.when.by === 'relay' && (isMains(sides, c.a) || isMains(sides, c.b)))
      .map((c) => c.part),
  );
  const onLoop = new Set(
    circuit.relays
      .filter((r) => r.senses.some((s) => isLow(sides, s.a) || isLow(sides, s.b)))
      .map((r) => r.part),
  );
  const relays = parts.filter((p) => onMains.has(p.name));
  const isMainsEnd = (terminal: { readonly part: string; readonly terminal: string }) =>
    isMains(sides, netAt(circuit, terminal.part, terminal.terminal));
  return {
    isolation: weakest(
      relays.filter((p) => onLoop.has(p.name)).map((p) => ('isolation' in p ? p.isolation : undefined)),
    ),
    solidState: relays.some((p) => 'technology' in p && p.technology === 'solid-state'),
    boardOnMains: relays.some((p) => p.kind === 'board'),
    relayUnboxed: relays.some((p) => !boxed.has(p.name)),
    sharedBox:
      stands('sides-share-box') ||
      boxes.some((b) => !b.divider && b.holds.some((name) => onMains.has(name) && onLoop.has(name))),
    sharedCable: stands('sides-share-cable'),
    openSplice: parts.some(
      (p) => p.kind === 'joint' && !boxed.has(p.name) && isMains(sides, netAt(circuit, p.name, '')),
    ),
    cordIntoBox: plan.runs.some(
      (run) =>
        run.cable?.flexible === true &&
        run.cores.some((core) => [core.a, core.b].some((end) => boxed.has(end.part) && isMainsEnd(end))),
    ),
  };
}

function weakest(barriers: readonly (string | undefined)[]): BoxFacts['isolation'] {
  if (barriers.length === 0) return 'none';
  if (barriers.some((b) => b === 'basic' || b === 'functional')) return 'weak';
  return barriers.includes(undefined) ? 'unsaid' : 'reinforced';
}
