/** Mistakes that a hand makes while wiring a plan, one at a time, each as a plan of its own. */
import type { Edit } from '../../../src/edit/edits.ts';
import { planAfter } from '../../../src/edit/expected-plan.ts';
import type { Part } from '../../../src/plan/part-types.ts';
import type { Plan } from '../../../src/plan/plan.ts';

export const SLIPS = ['move', 'near', 'swap', 'drop', 'double', 'mounted', 'break', 'reversed'] as const;
export type SlipKind = (typeof SLIPS)[number];

export interface Slip {
  readonly kind: SlipKind;
  readonly words: string;
  readonly edits: readonly Edit[];
  /** a gate whose lever is pressed in the other position */
  readonly turned?: string;
}

const key = (part: string, terminal: string) => (terminal === '' ? part : `${part}.${terminal}`);

interface End {
  readonly run: number;
  readonly core: number;
  readonly end: 'a' | 'b';
  readonly part: string;
  readonly at: string;
  readonly other: string;
}

function endsOf(plan: Plan): End[] {
  return plan.runs.flatMap((r) =>
    r.cores.flatMap((c, core) =>
      (['a', 'b'] as const).map((end) => {
        const other = c[end === 'a' ? 'b' : 'a'];
        return {
          run: r.index,
          core,
          end,
          part: c[end].part,
          at: key(c[end].part, c[end].terminal),
          other: key(other.part, other.terminal),
        };
      }),
    ),
  );
}

const terminalsOf = (plan: Plan, part: string) => plan.terminals.get(part)!.names.map((t) => key(part, t));

/** Parts in reach of a hand: of the same cable, or of the same box. */
function neighbours(plan: Plan, e: End): Set<string> {
  const near = new Set(plan.runs[e.run]!.cores.map((c) => c[e.end].part));
  for (const p of plan.parts.values())
    if (p.kind === 'box' && p.holds.includes(e.part)) for (const held of p.holds) near.add(held);
  near.delete(e.part);
  return near;
}

function moved(plan: Plan, e: End, parts: Iterable<string>, kind: 'move' | 'near'): Slip[] {
  return [...parts]
    .flatMap((p) => terminalsOf(plan, p))
    .filter((to) => to !== e.at && to !== e.other)
    .map((to) => ({
      kind,
      words: `the end of ${e.at}-${e.other} on ${e.at} sits on ${to}`,
      edits: [{ do: 'move', run: e.run, core: e.core, end: e.end, to }],
    }));
}

/** All ends on one terminal of a part put on another, and the reverse where `both`. */
function carried(plan: Plan, from: string, to: string, both: boolean): Edit[] {
  return endsOf(plan).flatMap((e): Edit[] => {
    if (e.at === from && e.other !== to) return [{ do: 'move', run: e.run, core: e.core, end: e.end, to }];
    if (both && e.at === to && e.other !== from)
      return [{ do: 'move', run: e.run, core: e.core, end: e.end, to: from }];
    return [];
  });
}

const REVERSED: Partial<Record<Part['kind'], readonly [string, string]>> = {
  diode: ['A', 'K'],
  led: ['A', 'K'],
  relay: ['A1', 'A2'],
  timer: ['A1', 'A2'],
  supply: ['+', '-'],
  battery: ['+', '-'],
  board: ['VCC', 'GND'],
  plug: ['L', 'N'],
  outlet: ['L', 'N'],
};

function ofParts(plan: Plan): Slip[] {
  return [...plan.parts.values()].flatMap((part): Slip[] => {
    const t = (terminal: string) => key(part.name, terminal);
    if (part.kind === 'gate')
      return [
        {
          kind: 'mounted',
          words: `${part.name} is pressed in the other position`,
          edits: [],
          turned: part.name,
        },
      ];
    const out: Slip[] = [];
    if ('poles' in part)
      for (const pole of part.poles) {
        if (pole.make === undefined || pole.break === undefined) continue;
        const edits = [
          ...carried(plan, t(pole.make), t(pole.break), false),
          ...carried(plan, t(pole.break), t(pole.make), false),
        ];
        if (edits.length > 0)
          out.push({ kind: 'break', words: `${part.name} works with its other contact`, edits });
      }
    const pair = REVERSED[part.kind];
    const edits =
      pair && plan.terminals.get(part.name)!.names.includes(pair[0])
        ? carried(plan, t(pair[0]), t(pair[1]), true)
        : [];
    if (edits.length > 0) out.push({ kind: 'reversed', words: `${part.name} is the other way round`, edits });
    return out;
  });
}

/** Every single slip in a plan. */
export function slips(plan: Plan): Slip[] {
  const ends = endsOf(plan);
  const out: Slip[] = ofParts(plan);
  for (const [i, e] of ends.entries()) {
    out.push(...moved(plan, e, [e.part], 'move'), ...moved(plan, e, neighbours(plan, e), 'near'));
    for (const f of ends.slice(i + 1)) {
      const together = (f.run === e.run && f.end === e.end) || f.part === e.part;
      if (!together || f.at === e.at || e.at === f.other || f.at === e.other) continue;
      out.push({
        kind: 'swap',
        words: `the ends on ${e.at} and ${f.at} have changed places`,
        edits: [
          {
            do: 'swap',
            first: { run: e.run, core: e.core, end: e.end },
            second: { run: f.run, core: f.core, end: f.end },
          },
        ],
      });
    }
    const run = plan.runs[e.run]!;
    if (e.end === 'a') {
      out.push({
        kind: 'drop',
        words: `no core ${e.at}-${e.other}`,
        edits: [{ do: 'remove', run: e.run, core: e.core }],
      });
    }
    for (const to of terminalsOf(plan, e.part)) {
      if (to === e.at || to === e.other) continue;
      const add: Edit = {
        do: 'add',
        from: e.other,
        to,
        like: run.link ? undefined : e.run,
        metres: run.length,
      };
      out.push({
        kind: 'double',
        words: `a second core ${e.other}-${to} beside ${e.other}-${e.at}`,
        edits: [add],
      });
    }
  }
  return out;
}

/** The plan with these slips in it; undefined where they cannot be made together. */
export function planWithSlips(plan: Plan, list: readonly Slip[]): Plan | undefined {
  const edits = list.flatMap((s) => s.edits);
  const after = edits.length > 0 ? planAfter(plan, edits) : plan;
  if (after === undefined) return undefined;
  const parts = new Map(after.parts);
  for (const { turned } of list) {
    const part = turned === undefined ? undefined : parts.get(turned);
    if (part?.kind === 'gate')
      parts.set(part.name, { ...part, pressedWhen: part.pressedWhen === 'open' ? 'shut' : 'open' });
  }
  return { ...after, parts };
}

/** What is to be wired where gates are mounted the other way: what was on NO is on NC, and the reverse. */
export function planMeant(plan: Plan, list: readonly Slip[]): Plan {
  const turned = list.flatMap((s) => s.turned ?? []);
  const edits = turned.flatMap((gate) => carried(plan, `${gate}.NO`, `${gate}.NC`, true));
  return planWithSlips(plan, [
    { kind: 'mounted', words: '', edits },
    ...list.filter((s) => s.turned !== undefined),
  ])!;
}
