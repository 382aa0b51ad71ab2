/**
 * How odd a wiring looks by its own habits: the fewer habits a plan breaks, the likelier it is what was meant. Weights
 * are of our own choosing; `npm run repairs` measures what they are worth.
 */

import { kept, push } from '../plan/map-entries.ts';
import type { Core, Plan, Run } from '../plan/plan.ts';
import { terminalKey } from '../plan/terminal-key.ts';
import {
  aheadOfIsolators,
  apart,
  bothThrows,
  butMost,
  conductorsOf,
  crossColoured,
  earthOnContacts,
  idle,
  keyOf,
  offColour,
  quenchesNothing,
  spanned,
  useless,
  type Wired,
} from './habits.ts';
import type { Places } from './places.ts';

/** What each broken habit weighs, in ends moved by mistake. */
const WEIGHT = {
  /** a core of a cable that ends elsewhere than the others of that cable */
  astray: 1.2,
  /** a tab with another colour on it than the same tab of its twins, or with none where they have one */
  unlikeTwins: 1,
  /** a core of another colour than most on its conductor */
  offColour: 0.4,
  /** a terminal that does nothing without a core and has none, or a joint with one core */
  loose: 1.5,
  /** a core of the cable that is left unused, where its like use all */
  spare: 0.6,
  /** a core from one tab to another where cores of its colour between such parts mostly go otherwise */
  offPattern: 0.5,
  /** a feed on the far side of a contact: the common or odd terminal is for the feed (common practice, no source) */
  turnedRound: 0.3,
  /** a red core on the minus of a supply (common practice, no source) */
  redOnMinus: 0.5,
  /** a line in the colour of the neutral, or the reverse: NEC 200.6, IEC 60445 */
  crossColoured: 0.6,
  /** a diode that lies across no coil */
  quenchesNothing: 0.8,
  /** a diode, lamp or resistor with both ends on one conductor */
  useless: 2.5,
  /** an end of a protective conductor on a contact: NEC 250.124(B), IEC 60364-5-54 clause 543.3.3 (from memory) */
  earthOnContact: 1,
  /** both throws of a button in use (common practice, no source) */
  bothThrows: 2.6,
  /** what is fed ahead of the isolator, and stays live behind it (common practice, no source) */
  aheadOfIsolator: 1.2,
  /** a core that joins what is joined already by another of its cable, or two tabs of one switch */
  idle: 1.5,
} as const;

/** The habits of one plan, by which any wiring of its parts can be judged. */
export class Oddness {
  private readonly usual: ReadonlyMap<string, number>;
  private readonly twins: readonly (readonly string[])[];

  constructor(
    private readonly plan: Plan,
    private readonly places: Places,
  ) {
    this.usual = usualCores(plan);
    this.twins = twinsOf(plan);
  }

  /** The habits broken by a plan of the same parts, weighed. */
  of(plan: Plan, lacking: number): number {
    const wired = plan.runs.flatMap((run) =>
      run.cores.map((core): Wired => ({ run, core, a: keyOf(core.a), b: keyOf(core.b) })),
    );
    const conductor = conductorsOf(wired);
    return (
      WEIGHT.astray * this.astray(plan) +
      WEIGHT.unlikeTwins * this.unlikeTwins(wired) +
      WEIGHT.offColour * offColour(wired, conductor) +
      WEIGHT.useless * useless(plan, conductor) +
      WEIGHT.loose * (lacking + this.idleJoints(wired)) +
      WEIGHT.spare * this.spare(plan) +
      WEIGHT.offPattern * this.offPattern(wired) +
      WEIGHT.turnedRound * this.turnedRound(wired) +
      WEIGHT.redOnMinus *
        wired.filter(({ core }) => core.colour === 'red' && [core.a, core.b].some((e) => e.terminal === '-'))
          .length +
      WEIGHT.crossColoured * crossColoured(wired, plan.practice) +
      WEIGHT.quenchesNothing * quenchesNothing(plan, conductor) +
      WEIGHT.earthOnContact * earthOnContacts(plan, wired, conductor) +
      WEIGHT.bothThrows * bothThrows(plan, wired) +
      WEIGHT.aheadOfIsolator * aheadOfIsolators(plan, wired, conductor) +
      WEIGHT.idle * (idle(plan) + spanned(plan, conductor))
    );
  }

  /** Cores whose ends lie in other places than those of most cores in their cable. */
  private astray(plan: Plan): number {
    let count = 0;
    for (const run of plan.runs) {
      if (run.link || run.cores.length < 2) continue;
      const ways = new Map<string, number>();
      for (const core of run.cores) {
        const way = this.way(core);
        ways.set(way, (ways.get(way) ?? 0) + 1);
      }
      count += run.cores.length - Math.max(...ways.values());
    }
    return count;
  }

  private way(core: Core): string {
    const [a, b] = [this.places.of(core.a.part), this.places.of(core.b.part)];
    return a < b ? `${a} ${b}` : `${b} ${a}`;
  }

  /** Tabs of twin parts, each against the colours that most of them carry. */
  private unlikeTwins(wired: readonly Wired[]): number {
    const colours = new Map<string, Set<string>>();
    for (const { run, core, a, b } of wired) {
      if (run.link) continue;
      for (const key of [a, b]) {
        let on = colours.get(key);
        if (!on) {
          on = new Set();
          colours.set(key, on);
        }
        on.add(core.colour);
      }
    }
    let count = 0;
    for (const keys of this.twins) {
      const signs = new Map<string, { readonly sign: readonly string[]; count: number }>();
      for (const key of keys) {
        const sign = [...(colours.get(key) ?? [])].sort();
        kept(signs, sign.join(' '), () => ({ sign, count: 0 })).count++;
      }
      const kinds = [...signs.values()];
      count += Math.min(
        ...kinds.map((mode) => kinds.reduce((sum, k) => sum + k.count * apart(k.sign, mode.sign), 0)),
      );
    }
    return count;
  }

  /** Cores between parts of the same kinds, each against the tabs that most of them join. */
  private offPattern(wired: readonly Wired[]): number {
    const groups = new Map<string, Map<string, number>>();
    for (const { run, core } of wired) {
      const [x, y] = [this.tabOf(core.a), this.tabOf(core.b)];
      const turned = x.kind > y.kind;
      // Beside a pole it does not matter which line or phase it is.
      const [p, q] = [y.pole ? '' : x.tab, x.pole ? '' : y.tab];
      const tabs = turned ? `${q} ${p}` : `${p} ${q}`;
      const kinds = turned ? `${y.kind} ${x.kind}` : `${x.kind} ${y.kind}`;
      // Poles of one relay are wired alike, whatever the colours on them.
      const colour = x.pole || y.pole ? '' : core.colour;
      const ways = kept(
        groups,
        `${run.link ? 'link' : cableName(run)} ${colour} ${kinds}`,
        () => new Map<string, number>(),
      );
      ways.set(tabs, (ways.get(tabs) ?? 0) + 1);
    }
    return [...groups.values()].reduce((sum, ways) => sum + butMost([...ways.values()]), 0);
  }

  /** Feeds that lie on the make or break side of a contact, and loads on its common side. */
  private turnedRound(wired: readonly Wired[]): number {
    const isAgainst = (feed: Core['a'], contact: Core['a']): boolean => {
      const part = this.plan.parts.get(contact.part);
      const kind = this.plan.parts.get(feed.part)?.kind ?? '';
      const pole =
        part && 'poles' in part
          ? part.poles.find((p) => [p.common, p.make, p.break].includes(contact.terminal))
          : undefined;
      if (!pole) return false;
      return FEEDS.has(kind)
        ? contact.terminal !== pole.common
        : LOADS.has(kind) && contact.terminal === pole.common;
    };
    return wired.filter(({ core: { a, b } }) => isAgainst(a, b) || isAgainst(b, a)).length;
  }

  /** What an end is on, by kind: of a pole the place in it. */
  private tabOf({ part: name, terminal }: Core['a']): { kind: string; tab: string; pole: boolean } {
    const part = this.plan.parts.get(name);
    const kind = part?.kind ?? '';
    if (!part || !('poles' in part) || part.poles.length < 2) return { kind, tab: terminal, pole: false };
    const pole = part.poles.find((p) => [p.common, p.make, p.break].includes(terminal));
    if (!pole) return { kind, tab: terminal, pole: false };
    const tab = terminal === pole.common ? 'common' : terminal === pole.make ? 'make' : 'break';
    return { kind: `${kind} pole`, tab, pole: true };
  }

  /** Joints that join nothing. */
  private idleJoints(wired: readonly Wired[]): number {
    const landed = new Map<string, number>();
    for (const { a, b } of wired) for (const key of [a, b]) landed.set(key, (landed.get(key) ?? 0) + 1);
    return [...this.plan.parts.values()].filter((p) => p.kind === 'joint' && (landed.get(p.name) ?? 0) < 2)
      .length;
  }

  /** Cores left unused in cables that elsewhere are used to the last; a core added along such a cable takes its place. */
  private spare(plan: Plan): number {
    const added = plan.runs
      .slice(this.plan.runs.length)
      .flatMap((run) => (run.link ? [] : run.cores.map((c) => this.way(c))));
    return plan.runs.slice(0, this.plan.runs.length).reduce((sum, run) => {
      if (run.link || run.cable === undefined) return sum;
      let unused = Math.max(0, (this.usual.get(cableName(run)) ?? 0) - run.cores.length);
      const way = run.cores[0] && this.way(run.cores[0]);
      while (unused > 0 && way !== undefined && added.includes(way)) {
        added.splice(added.indexOf(way), 1);
        unused--;
      }
      return sum + unused;
    }, 0);
  }
}

const FEEDS: ReadonlySet<string> = new Set(['plug', 'supply', 'battery', 'fuse']);
const LOADS: ReadonlySet<string> = new Set(['outlet', 'motor', 'load']);

/** Kinds of part that a shop has several of, wired alike. */
const TWINNED: ReadonlySet<string> = new Set(['gate', 'switch', 'button', 'cutout', 'lamp', 'led']);

/** Terminals of the same name on parts of one kind, mounting and duty, of which there are several. */
function twinsOf(plan: Plan): readonly (readonly string[])[] {
  const groups = new Map<string, string[]>();
  // What stops is wired on its break contact, what starts on its make contact.
  const stops = new Set(
    (plan.intents ?? []).flatMap((i) => [...i.blockedBy, ...i.stoppedBy].map((r) => r.part)),
  );
  for (const part of plan.parts.values()) {
    if (!TWINNED.has(part.kind)) continue;
    for (const name of plan.terminals.get(part.name)?.names ?? [])
      push(
        groups,
        `${part.kind} ${pressed(part)} ${stops.has(part.name)} ${name}`,
        terminalKey(part.name, name),
      );
  }
  return [...groups.values()].filter((keys) => keys.length > 1);
}

const pressed = (part: object): string => ('pressedWhen' in part ? String(part.pressedWhen) : '');
const cableName = (run: Run): string => `${run.cable?.stock ?? run.cable?.gauge} ${run.cable?.cores}`;

/** Cores that most runs of a cable use. */
function usualCores(plan: Plan): Map<string, number> {
  const used = new Map<string, number[]>();
  for (const run of plan.runs) if (!run.link && run.cable) push(used, cableName(run), run.cores.length);
  return new Map(
    [...used].map(([name, list]) => [name, [...list].sort((x, y) => x - y)[list.length >> 1]!] as const),
  );
}
