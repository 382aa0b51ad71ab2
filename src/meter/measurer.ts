/** Every reading of the right circuit that a sheet may ask for. */

import type { Source } from '../circuit/circuit.ts';
import { isLow, isMains } from '../circuit/sides.ts';
import type { Figures } from '../electric/island.ts';
import { balanced } from '../machine/three-phase.ts';
import { isFixedFeed } from '../plan/fixed-feed.ts';
import type { Plan } from '../plan/plan.ts';
import { terminalKey } from '../plan/terminal-key.ts';
import { figuresFor } from '../study/corner-figures.ts';
import type { Study } from '../study/study.ts';
import { liveMeasure, type Measure, ohmMeasures, type Where } from './measure.ts';
import { DeadBench, ohmLimits } from './ohm-bench.ts';
import type { Pair } from './probe-pairs.ts';
import { wiredTerminals } from './probe-terminals.ts';
import { probeOf } from './probe-words.ts';
import type { Stance } from './stance.ts';
import type { Subject } from './subject.ts';
import type { Volts } from './volt-bench.ts';

export interface Measurer {
  /** the readings of one stage in one stance at these pairs */
  at(stage: 1 | 2 | 3, stance: Stance, pairs: readonly Pair[]): Measure[];
  /** readings of the line in ohms in one stance at these pairs, while a clip lead joins pins of a plug */
  clipped(stage: 1 | 2, stance: Stance, pairs: readonly Pair[]): Measure[];
}

const CORNERS = ['low', 'high', 'strong'] as const;
/** Part of a volt by which two ways of working out one reading may differ. */
const SAME = 1e-6;

export function measurer({ plan, circuit: joined, sides }: Study, right: Subject): Measurer {
  const on = (test: typeof isLow) => (p: Pair) =>
    [p.a, p.b].every((key) => test(sides, joined.netOf.get(key)));
  const low = on((s, net) => isLow(s, net) && !isMains(s, net));
  const mains = on(isMains);
  const mixed = (p: Pair) =>
    [p.a, p.b].some((key) => isLow(sides, joined.netOf.get(key)) && isMains(sides, joined.netOf.get(key)));
  const needsMains = right.circuit.sources.some((s) => !s.mains && s.feed.by !== 'always');
  const offLoop = (key: string) => !isLow(sides, joined.netOf.get(key));
  const limits = ohmLimits(plan);
  // The right circuit has all sides of its deltas already.
  const bounds = [limits.least, limits.most].map(
    (figures) => new DeadBench(right.circuit, balanced(plan, right.circuit, figures).figures),
  );
  const corners = CORNERS.map((c) => balanced(plan, right.circuit, figuresFor(plan, c)).figures);
  const ends = corners.flatMap((figures) => withIndicators(plan, figures));
  const most = { low: highest(right, corners[1]!, false), mains: highest(right, corners[1]!, true) };

  /** The pins of a plug are in the wall while mains is on. */
  const inWall = (p: Pair) =>
    [p.a, p.b].some((key) => {
      const part = plan.parts.get(probeOf(key).part);
      return part?.kind === 'plug' && !isFixedFeed(part);
    });

  const ohms = (stage: 1 | 2, where: Where, relays: readonly boolean[] | undefined) => {
    const { pair, stance, clipped } = where;
    const at = { moved: stance.moved, relays, clipped };
    const [least, high] = bounds.map((b) => b.ohms(at, pair.a, pair.b)) as [Ohm, Ohm];
    return ohmMeasures(stage, where, right.dead.ohms(at, pair.a, pair.b), [least.most, high.most]);
  };
  // Where mains and the loop meet, a beep tells of harm, not of a right circuit.
  const dead = (stance: Stance, pairs: readonly Pair[]) =>
    pairs.flatMap((pair) => (mixed(pair) ? [] : ohms(1, { stance, pair, clipped: NONE }, undefined)));
  /** With the relay in and mains out, the line is still dead from end to end. */
  const lines = (stance: Stance, pairs: readonly Pair[], clipped: readonly string[]) =>
    pairs.flatMap((pair) => {
      if (mixed(pair) || !(offLoop(pair.a) && offLoop(pair.b))) return [];
      const relays = right.loop.relaysAt(stance, pair.a, pair.b);
      return relays === undefined ? [] : ohms(2, { stance, pair, clipped }, relays);
    });
  const live = (stage: 2 | 3, stance: Stance, pairs: readonly Pair[]) => {
    const bench = stage === 2 ? right.loop : right.mains;
    const top = stage === 2 ? most.low : most.mains;
    if (top === undefined) return [];
    const fitting = pairs.filter(stage === 2 ? low : (p) => mains(p) && !inWall(p)).filter((p) => !p.far);
    const at = ends.map((figures) => bench.withFigures(stance, figures));
    return fitting.flatMap((pair) => {
      const nominal = bench.volts(stance, pair.a, pair.b);
      // With only some supplies on, a reading is asked for where the others would change nothing.
      if (stage === 2 && !alike(nominal, right.mains.volts(stance, pair.a, pair.b))) return [];
      const all = at.map((read) => read(pair.a, pair.b));
      return liveMeasure(stage, { stance, pair, clipped: NONE }, nominal, all, top) ?? [];
    });
  };
  const leads = clipSets(plan);
  return {
    at: (stage, stance, pairs) => {
      if (stage === 1) return stance.first.length > 0 ? [] : dead(stance, pairs);
      const volts = live(stage, stance, pairs);
      return stage === 2 && !needsMains ? [...volts, ...lines(stance, pairs, NONE)] : volts;
    },
    clipped: (stage, stance, pairs) => {
      if (stance.first.length > 0 || (stage === 2 && needsMains)) return [];
      const fitting = pairs.filter((p) => !mixed(p));
      return leads.flatMap(({ pins: clipped, fixed }) => {
        // A lead on a fixed feed comes off before the loop is live, and is looked for then.
        if (stage === 2 && fixed) return [];
        const relays = stage === 1 ? undefined : right.loop.relaysAt(stance);
        const at = { moved: stance.moved, relays, clipped };
        const near = fitting.filter(
          ({ a, b }) => !(clipped.includes(a) && clipped.includes(b)) && right.dead.reaches(at, [a, b]),
        );
        if (stage === 2) return lines(stance, near, clipped);
        return near.flatMap((pair) => ohms(1, { stance, pair, clipped }, undefined));
      });
    },
  };
}

/** No clip lead anywhere. */
const NONE: readonly string[] = [];
/** Most pins of one plug that a clip lead is tried on. */
const MOST_PINS = 5;

/** Every two or more wired pins of one plug. */
function clipSets(plan: Plan): { readonly pins: readonly string[]; readonly fixed: boolean }[] {
  const used = wiredTerminals(plan);
  return [...plan.parts.values()].flatMap((part) => {
    if (part.kind !== 'plug') return [];
    const pins = plan.terminals
      .get(part.name)!
      .names.map((t) => terminalKey(part.name, t))
      .filter((key) => used.has(key))
      .slice(0, MOST_PINS);
    const sets: { pins: string[]; fixed: boolean }[] = [];
    for (let mask = 1; mask < 1 << pins.length; mask++) {
      const set = pins.filter((_, i) => (mask >> i) & 1);
      if (set.length > 1) sets.push({ pins: set, fixed: isFixedFeed(part) });
    }
    return sets;
  });
}

/** V across an indicator whose forward volts are not stated, red to white; common practice, no source. */
const FORWARD = [1.6, 3.6] as const;

/** Figures with the indicators at either end of what they may drop; as they are where each states its volts. */
function withIndicators(plan: Plan, figures: Figures): Figures[] {
  const unknown = new Set(
    [...plan.parts.values()].flatMap((p) => (p.kind === 'led' && p.forward === undefined ? [p.name] : [])),
  );
  if (unknown.size === 0) return [figures];
  return FORWARD.map((drop) => ({
    ...figures,
    diode: (d) => (unknown.has(d.part) ? { ...figures.diode(d), drop } : figures.diode(d)),
  }));
}

type Ohm = ReturnType<DeadBench['ohms']>;

function alike(a: Volts | undefined, b: Volts | undefined): boolean {
  return a !== undefined && b !== undefined && a.kind === b.kind && Math.abs(a.volts - b.volts) < SAME;
}

/** Most volts between two poles of the supplies of one side; undefined where there is none. */
function highest(
  { circuit }: Subject,
  figures: { source(s: Source): { readonly scale: number } },
  mains: boolean,
): Volts | undefined {
  const all = circuit.sources.filter((s) => s.mains === mains);
  const across = all.map((s): Volts => {
    const { scale } = figures.source(s);
    const volts = s.rails.flatMap((x) => s.rails.map((y) => Math.hypot(x.re - y.re, x.im - y.im)));
    return { volts: scale * Math.max(0, ...volts), kind: s.kind };
  });
  return across.sort((x, y) => y.volts - x.volts)[0];
}
