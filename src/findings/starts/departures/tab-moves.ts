/** Cores that could sit on the other of the two tabs of a switch. */
import { endKey } from '../../../circuit/nets.ts';
import { push } from '../../../plan/map-entries.ts';
import type { Part, Tab } from '../../../plan/part-types.ts';
import type { Core, Plan } from '../../../plan/plan.ts';

type OuterTab = Exclude<Tab, 'COM'>;

/** One core, or all the cores of one tab, taken from it to its fellow. */
export interface TabMove {
  readonly part: string;
  readonly from: OuterTab;
  readonly to: OuterTab;
  readonly ends: readonly CoreEnd[];
}

interface CoreEnd {
  readonly core: Core;
  readonly index: number;
  readonly end: 'a' | 'b';
}

const SHOWS: ReadonlySet<string> = new Set(['lamp', 'led', 'resistor']);

/** Ends of cores with the terminals that the moves bring them to, as `Study.rewired` takes them. */
export function endsMoved(moves: readonly TabMove[]): Map<string, string> {
  const map = new Map<string, string>();
  for (const m of moves)
    for (const e of m.ends) map.set(endKey(e.core.run, e.index, e.end), `${m.part}.${m.to}`);
  return map;
}

/** Every move at a part of the kinds wanted, the likeliest mistakes first. */
export function tabMoves(plan: Plan, wanted: (part: Part) => boolean): TabMove[] {
  const tabs = coresOnTabs(plan, wanted);
  const moves = [...tabs.values()].flatMap((ends): TabMove[] => {
    const { part, terminal } = ends[0]!.core[ends[0]!.end];
    const [from, to]: readonly [OuterTab, OuterTab] = terminal === 'NO' ? ['NO', 'NC'] : ['NC', 'NO'];
    const owner = plan.parts.get(part)!;
    if ('tabs' in owner && !owner.tabs.includes(to)) return [];
    const singly = ends.map((e) => ({ part, from, to, ends: [e] }));
    return ends.length > 1 ? [...singly, { part, from, to, ends }] : singly;
  });
  // Switches with both tabs in use, or on the other tab than their mounting asks for, come first.
  const rank = (m: TabMove) =>
    (isOdd(plan, m) ? 0 : 2) + (tabs.has(`${m.part}.NO`) && tabs.has(`${m.part}.NC`) ? 0 : 1);
  return moves.sort((x, y) => rank(x) - rank(y));
}

function coresOnTabs(plan: Plan, wanted: (part: Part) => boolean): Map<string, CoreEnd[]> {
  const tabs = new Map<string, CoreEnd[]>();
  for (const run of plan.runs)
    run.cores.forEach((core, index) => {
      for (const end of ['a', 'b'] as const) {
        const { part, terminal } = core[end];
        const owner = plan.parts.get(part);
        if ((terminal !== 'NO' && terminal !== 'NC') || !owner || !wanted(owner)) continue;
        // A lamp across a switch is no core on a wrong tab.
        if (SHOWS.has(plan.parts.get(core[end === 'a' ? 'b' : 'a'].part)?.kind ?? '')) continue;
        push(tabs, `${part}.${terminal}`, { core, index, end });
      }
    });
  return tabs;
}

/** The move takes a core away from the tab that the use of the gate does not ask for. */
export function isOdd(plan: Plan, move: TabMove): boolean {
  const part = plan.parts.get(move.part);
  return part?.kind === 'gate' && move.from === (part.pressedWhen === 'open' ? 'NC' : 'NO');
}

/** Moves of a core alone that another one makes together with the rest of its tab. */
export function isPartOf(x: TabMove, whole: TabMove): boolean {
  return whole.part === x.part && whole.from === x.from && whole.ends.length > x.ends.length;
}
