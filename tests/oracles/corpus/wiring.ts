/** Every single mistake with a core: an end on another terminal, a core left out, two ends changed over. */
import type { Change, Family } from './mutant.ts';
import { type Core, type End, partOf, type Sheet } from './sheet.ts';
import { type Side, sidesOf, terminalsOf } from './terminals.ts';

export type SideOf = (key: string) => Side;

const FRESH = 'spare-nut';

function moveKind(from: Side, to: Side, samePart: boolean): string {
  if (from === 'low' && to === 'low') return samePart ? 'end on another tab' : 'end on another part';
  if (from === to) return from === 'mains' ? 'mains end moved' : 'earth end moved';
  return `${from === 'low' ? 'loop' : from} end on ${to === 'low' ? 'loop' : to}`;
}

const familyOf = (...sides: Side[]): Family => (sides.every((x) => x === 'low') ? 'wiring' : 'mains');

/** One end on any other terminal of any part. */
export function moves(s: Sheet, side: SideOf): Change[] {
  const written = new Set(s.ends.map((e) => e.written));
  const all = [...s.wiring.parts.values()].flatMap((p) => terminalsOf(s.wiring, p, written));
  return s.ends.flatMap((end) =>
    all
      .filter((to) => to !== end.written)
      .map((to): Change => {
        const [a, b] = [side(end.key), side(to)];
        const run = s.cores[end.core]!.run + 1;
        const family = familyOf(a, b, side(otherEnd(s, end).key));
        const kind = moveKind(a, b, partOf(to) === partOf(end.written));
        return { name: `${end.written} to ${to} (run ${run})`, kind, family, moves: [{ end, to }] };
      }),
  );
}

const otherEnd = (s: Sheet, e: End): End => s.cores[e.core]!.ends[1 - e.side]!;

/** One core left out. */
function leftOut(s: Sheet, side: SideOf): Change[] {
  return s.cores.map((core): Change => {
    const where = side(core.ends[0].key);
    const kind = where === 'low' ? 'core left out' : `${where} core left out`;
    const name = `${core.ends[0].written} to ${core.ends[1].written} left out (run ${core.run + 1})`;
    return { name, kind, family: familyOf(where, side(core.ends[1].key)), moves: [], leftOut: [core] };
  });
}

/** An end that belongs in a joint hangs in a nut of its own. */
function jointMissed(s: Sheet, side: SideOf): Change[] {
  return s.ends
    .filter((e) => s.wiring.parts.get(partOf(e.key))?.kind === 'joint')
    .map((end): Change => {
      const name = `${end.written} missed by run ${s.cores[end.core]!.run + 1}`;
      const family = familyOf(side(end.key), side(otherEnd(s, end).key));
      return { name, kind: 'joint missed', family, moves: [{ end, to: FRESH }], fresh: FRESH };
    });
}

const swap = (a: End, b: End): Change['moves'] => [
  { end: a, to: b.written },
  { end: b, to: a.written },
];

/** The two pairs of ends that lie together at the two ends of a cable. */
function together(a: Core, b: Core): [End, End][] {
  const at = (c: Core, i: 0 | 1): string => partOf(c.ends[i].written);
  const straight = at(a, 0) === at(b, 0) || at(a, 1) === at(b, 1);
  const turned = !straight && (at(a, 0) === at(b, 1) || at(a, 1) === at(b, 0));
  return [
    [a.ends[0], b.ends[turned ? 1 : 0]],
    [a.ends[1], b.ends[turned ? 0 : 1]],
  ];
}

/** Two ends changed over: of one cable, or at one part. */
function crossed(s: Sheet, side: SideOf): Change[] {
  const out: Change[] = [];
  const add = (a: End, b: End, kind: string): void => {
    if (a.key === b.key || a.core === b.core) return;
    const sides = [a, b, otherEnd(s, a), otherEnd(s, b)].map((e) => side(e.key));
    const family = familyOf(...sides);
    const runs = [...new Set([a, b].map((e) => s.cores[e.core]!.run + 1))].join(' and ');
    const name = `${a.written} and ${b.written} changed over (run ${runs})`;
    out.push({ name, kind: family === 'mains' ? `mains ${kind}` : kind, family, moves: swap(a, b) });
  };
  s.cores.forEach((a, i) => {
    for (const b of s.cores.slice(i + 1)) {
      if (a.run === b.run) for (const [x, y] of together(a, b)) add(x, y, 'pair crossed');
    }
  });
  s.ends.forEach((a, i) => {
    for (const b of s.ends.slice(i + 1)) {
      if (partOf(a.key) === partOf(b.key)) add(a, b, 'ends at a part changed over');
    }
  });
  return out;
}

const POLES: Record<string, [string, string, string][]> = {
  diode: [['A', 'K', 'diode reversed']],
  led: [['A', 'K', 'indicator reversed']],
  supply: [
    ['+', '-', 'supply poles swapped'],
    ['~1', '~2', 'supply poles swapped'],
  ],
  battery: [['+', '-', 'supply poles swapped']],
  relay: [['A1', 'A2', 'coil ends swapped']],
  plug: [
    ['L', 'N', 'line and neutral swapped'],
    ['L1', 'L2', 'legs swapped'],
    ['L', 'PE', 'line and earth swapped'],
    ['N', 'PE', 'neutral and earth swapped'],
  ],
};
POLES.outlet = POLES.plug!;
POLES.motor = POLES.plug!;

/** All ends on two terminals of one part changed over. */
function turned(s: Sheet): Change[] {
  return [...s.wiring.parts.values()].flatMap((p) =>
    (POLES[p.kind] ?? []).flatMap(([a, b, kind]): Change[] => {
      const [x, y] = [`${p.name}.${a}`, `${p.name}.${b}`];
      const move = s.ends
        .filter((e) => e.key === x || e.key === y)
        .map((end) => ({ end, to: end.key === x ? y : x }));
      const family: Family = POLES[p.kind] === POLES.plug ? 'mains' : 'wiring';
      return new Set(move.map((m) => m.to)).size === 2
        ? [{ name: `${kind} at ${p.name}`, kind, family, moves: move }]
        : [];
    }),
  );
}

/** The contact that breaks the line moved into the neutral: crossed with its neighbour in every run at the contact. */
function intoNeutral(s: Sheet, side: SideOf): Change[] {
  return [...s.wiring.parts.values()]
    .filter((p) => ['relay', 'timer', 'board'].includes(p.kind))
    .flatMap((p) =>
      p.contacts.flatMap((k): Change[] => {
        const tabs = [k.com, k.no].map((t) => `${p.name}.${t}`);
        const move: Change['moves'] = [];
        for (const end of s.ends.filter((e) => tabs.includes(e.key) && side(e.key) === 'mains')) {
          const core = s.cores[end.core]!;
          const near = s.cores.filter(
            (c) => c !== core && c.run === core.run && side(c.ends[0].key) === 'mains',
          );
          if (near.length !== 1) continue;
          const pair = together(core, near[0]!).find(([x]) => x === end);
          if (pair && !move.some((m) => pair.includes(m.end))) move.push(...swap(...pair));
        }
        if (move.length < 4) return [];
        const name = `contact ${p.name}.${k.com} in the other conductor`;
        return [{ name, kind: 'contact moved into the neutral', family: 'mains', moves: move }];
      }),
    );
}

/** All single mistakes with cores, named ones first so that they keep their name. */
export function coreChanges(s: Sheet): Change[] {
  const side = sidesOf(s.wiring);
  return [
    ...turned(s),
    ...intoNeutral(s, side),
    ...leftOut(s, side),
    ...jointMissed(s, side),
    ...crossed(s, side),
    ...moves(s, side),
  ];
}
