/** Habits of a wiring that can be told from its cores alone, and how often each is broken. */
import { UnionFind } from '../circuit/union-find.ts';
import { kept } from '../plan/map-entries.ts';
import type { Core, Plan, Run } from '../plan/plan.ts';
import { terminalKey } from '../plan/terminal-key.ts';
import { wornBy } from '../ratings/core-colours.ts';
import { colourOf } from '../text/core-colours.ts';
import { kindOf } from './kinds.ts';

/** A wiring as its cores: what `Plan` and a change of it have in common. */
export interface Wired {
  readonly run: Run;
  readonly core: Core;
  readonly a: string;
  readonly b: string;
}

export const keyOf = (end: Core['a']): string => terminalKey(end.part, end.terminal);

const SMALL: ReadonlySet<string> = new Set(['diode', 'led', 'lamp', 'resistor']);
/** Parts that do nothing with a link from one end to the other. */
const ACROSS: ReadonlySet<string> = new Set([
  'diode',
  'led',
  'lamp',
  'resistor',
  'fuse',
  'gate',
  'button',
  'cutout',
  'plug',
  'outlet',
  'motor',
  'load',
]);
/** How many there are but for the largest group. */
export function butMost(groups: readonly number[]): number {
  return groups.reduce((x, y) => x + y, 0) - Math.max(...groups);
}

/** Colours that one of two lists has and the other has not. */
export function apart(x: readonly string[], y: readonly string[]): number {
  return x.filter((c) => !y.includes(c)).length + y.filter((c) => !x.includes(c)).length;
}

/** The conductors that wires and joints make: a number for each terminal with a core. */
export function conductorsOf(wired: readonly Wired[]): (key: string) => number | undefined {
  const sets = new UnionFind();
  const ids = new Map<string, number>();
  const id = (key: string): number => kept(ids, key, () => sets.add());
  for (const { a, b } of wired) sets.union(id(a), id(b));
  return (key) => {
    const found = ids.get(key);
    return found === undefined ? undefined : sets.find(found);
  };
}

/** Cores of other colours than most on the same conductor, wires and joints alone joining. */
export function offColour(wired: readonly Wired[], conductor: (key: string) => number | undefined): number {
  const colours = new Map<number, Map<string, number>>();
  for (const { run, core, a } of wired) {
    if (run.link) continue;
    const on = kept(colours, conductor(a)!, () => new Map<string, number>());
    on.set(core.colour, (on.get(core.colour) ?? 0) + 1);
  }
  return [...colours.values()].reduce((sum, on) => sum + butMost([...on.values()]), 0);
}

/** Small parts with both ends on one conductor. */
export function useless(plan: Plan, conductor: (key: string) => number | undefined): number {
  return [...plan.parts.values()].filter((part) => {
    if (!SMALL.has(part.kind)) return false;
    const [a, b] = (plan.terminals.get(part.name)?.names ?? []).map((t) =>
      conductor(terminalKey(part.name, t)),
    );
    return a !== undefined && a === b;
  }).length;
}

/** Cores that join what another core of their cable joins, and what lies across one switch or one small part. */
export function idle(plan: Plan): number {
  let count = 0;
  for (const run of plan.runs) {
    const seen = new Set<string>();
    for (const core of run.cores) {
      const key = [keyOf(core.a), keyOf(core.b)].sort().join(' ');
      const kind = plan.parts.get(core.a.part)?.kind ?? '';
      const across = core.a.part === core.b.part && (!run.link || ACROSS.has(kind));
      if (across || (!run.link && seen.has(key))) count++;
      seen.add(key);
    }
  }
  return count;
}

/** Ends on the line pins of mains parts in the colour of a neutral, and the reverse. */
export function crossColoured(wired: readonly Wired[], practice: Plan['practice']): number {
  const neutral: readonly string[] = wornBy(practice, 'neutral');
  const line: readonly string[] = wornBy(practice, 'line');
  return wired
    .flatMap(({ core }) => {
      const colour = colourOf(core.marked ?? core.colour)?.colour;
      return colour === undefined ? [] : [core.a, core.b].map((end) => ({ mark: end.terminal, colour }));
    })
    .filter(({ mark, colour }) =>
      /^L\d?$/.test(mark) ? neutral.includes(colour) : mark === 'N' && line.includes(colour),
    ).length;
}

/** Diodes with both ends wired that lie across no coil. */
export function quenchesNothing(plan: Plan, conductor: (key: string) => number | undefined): number {
  const coils = [...plan.parts.values()].flatMap((part) => {
    const coil = kindOf(part).coil;
    return coil ? [coil.map((t) => conductor(terminalKey(part.name, t)))] : [];
  });
  return [...plan.parts.values()].filter((part) => {
    if (part.kind !== 'diode') return false;
    const ends = ['A', 'K'].map((t) => conductor(terminalKey(part.name, t)));
    if (ends.some((n) => n === undefined)) return false;
    return !coils.some((coil) => ends.every((n) => coil.includes(n)));
  }).length;
}

/** Contacts with a core at both ends and both on one conductor, which they cannot part. */
export function spanned(plan: Plan, conductor: (key: string) => number | undefined): number {
  let count = 0;
  for (const part of plan.parts.values()) {
    const poles =
      'poles' in part && part.poles.length > 0 ? part.poles : [{ common: 'COM', make: 'NO', break: 'NC' }];
    if (!('contact' in part || 'poles' in part)) continue;
    for (const pole of poles)
      for (const tab of [pole.make, pole.break]) {
        if (tab === undefined) continue;
        const [x, y] = [pole.common, tab].map((t) => conductor(terminalKey(part.name, t)));
        if (x !== undefined && x === y) count++;
      }
  }
  return count;
}

/**
 * Cores from the feed of an isolator to something else than it, which stays live when it is off. What stops or blocks a load
 * and has several poles is one.
 */
export function aheadOfIsolators(
  plan: Plan,
  wired: readonly Wired[],
  conductor: (key: string) => number | undefined,
): number {
  const stops = new Set(
    (plan.intents ?? [])
      .flatMap((i) => [...i.blockedBy, ...i.stoppedBy].map((ref) => ref.part))
      .filter((name) => (plan.terminals.get(name)?.names.length ?? 0) > 3),
  );
  if (stops.size === 0) return 0;
  const fed = new Set<number | undefined>();
  const led = new Set<number | undefined>();
  for (const { core, a } of wired)
    for (const { part, terminal } of [core.a, core.b]) {
      if (stops.has(part)) led.add(conductor(a));
      if (plan.parts.get(part)?.kind === 'plug' && terminal !== 'PE') fed.add(conductor(a));
    }
  const leadsOn = ({ part }: Core['a']) =>
    !stops.has(part) && !['plug', 'joint'].includes(plan.parts.get(part)?.kind ?? '');
  return wired.filter(
    ({ core, a }) =>
      fed.has(conductor(a)) && led.has(conductor(a)) && [core.a, core.b].some((end) => leadsOn(end)),
  ).length;
}

/** Buttons of one pole with a core on both throws: what is led over both has a gap while the button moves. */
export function bothThrows(plan: Plan, wired: readonly Wired[]): number {
  const landed = new Set(wired.flatMap(({ a, b }) => [a, b]));
  return [...plan.parts.values()].filter(
    (p) => p.kind === 'button' && ['NO', 'NC'].every((tab) => landed.has(terminalKey(p.name, tab))),
  ).length;
}

/** Ends on a contact or fuse of cores that some conductor joins to a protective terminal. */
export function earthOnContacts(
  plan: Plan,
  wired: readonly Wired[],
  conductor: (key: string) => number | undefined,
): number {
  const earthed = new Set(
    wired.flatMap(({ core, a }) =>
      [core.a, core.b].some((end) => end.terminal === 'PE') ? [conductor(a)] : [],
    ),
  );
  const opens = ({ part: name, terminal }: Core['a']) => {
    const part = plan.parts.get(name);
    return (
      part !== undefined &&
      (part.kind === 'fuse' || 'contact' in part || 'poles' in part) &&
      terminal !== 'PE'
    );
  };
  return wired
    .filter(({ a }) => earthed.has(conductor(a)))
    .reduce((sum, { core }) => sum + [core.a, core.b].filter(opens).length, 0);
}
