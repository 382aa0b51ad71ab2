/** Every reading of the right circuit that a sheet may ask for. */

import type { Source } from '../circuit/circuit.ts';
import { widestVolts } from '../circuit/rail-volts.ts';
import { isLow, isMains } from '../circuit/sides.ts';
import type { Figures } from '../electric/island.ts';
import { Ohmmeter } from '../machine/ohmmeter.ts';
import { loopNeedsMains } from '../machine/power.ts';
import { isFixedFeed } from '../plan/fixed-feed.ts';
import type { Plan } from '../plan/plan.ts';
import { partOfKey, terminalKey } from '../plan/terminal-key.ts';
import { figuresFor } from '../study/corner-figures.ts';
import { withDeltas } from '../study/mains/three-phase.ts';
import { perStudy } from '../study/per-study.ts';
import type { Study } from '../study/study.ts';
import { liveMeasure, type Measure, ohmMeasures, type Where } from './measure.ts';
import { ohmLimits } from './ohm-limits.ts';
import type { Volts } from './powered-circuit.ts';
import type { Pair } from './probe-pairs.ts';
import { wiredTerminals } from './probe-terminals.ts';
import type { Stance } from './stance.ts';
import type { Bench, Subject } from './subject.ts';
import type { Trial } from './trial.ts';
import { unpluggedCircuit } from './unplugged.ts';

/** Where the readings of a trial belong. */
const STAGE = { dead: 1, 'dead clipped': 1, loop: 2, 'loop clipped': 2, mains: 3 } as const;
const CORNERS = ['low', 'high', 'strong'] as const;
/** Part of a volt by which two ways of working out one reading may differ. */
const SAME = 1e-6;

export class Measurer {
  private readonly right: Subject;
  private readonly plan: Plan;
  private readonly loopNeedsMains: boolean;
  private readonly clipSets: readonly ClipSet[];
  /** the dead circuit with the least and the most that everything may have */
  private readonly deadLimits: readonly [Ohmmeter, Ohmmeter];
  /** figures at the ends of the tolerances for readings in volts */
  private readonly corners: readonly Figures[];
  /** most volts that could appear in each stage */
  private readonly most: { readonly 2: Volts | undefined; readonly 3: Volts | undefined };

  constructor(
    private readonly study: Study,
    { right, figures: here }: Pick<Bench, 'right' | 'figures'>,
  ) {
    const { plan } = study;
    const { circuit } = right;
    this.right = right;
    this.plan = plan;
    this.loopNeedsMains = loopNeedsMains(circuit);
    const { sets, least, most, corners } = toleranceOf(study);
    this.clipSets = sets;
    const dead = unpluggedCircuit(circuit);
    this.deadLimits = [new Ohmmeter(dead, here(least)), new Ohmmeter(dead, here(most))];
    const near = corners.map(here);
    this.corners = near.flatMap((figures) => withIndicators(plan, figures));
    this.most = { 2: highest(right, near[1]!, false), 3: highest(right, near[1]!, true) };
  }

  /** The readings that belong to one kind of trial. */
  trying(trial: Trial, stance: Stance, pairs: readonly Pair[]): Measure[] {
    const stage = STAGE[trial];
    const clipped = stage !== 3 && trial.endsWith(' clipped');
    return clipped ? this.clipped(stage, stance, pairs) : this.at(stage, stance, pairs);
  }

  /** The readings of one stage in one stance at these pairs. */
  at(stage: 1 | 2 | 3, stance: Stance, pairs: readonly Pair[]): Measure[] {
    if (stage === 1) return stance.first.length > 0 ? [] : this.dead(stance, pairs);
    const volts = this.live(stage, stance, pairs);
    return stage === 2 && !this.loopNeedsMains ? [...volts, ...this.lines(stance, pairs, NO_CLIP)] : volts;
  }

  /** Readings of the line in ohms in one stance at these pairs, while a clip lead joins pins of a plug. */
  clipped(stage: 1 | 2, stance: Stance, pairs: readonly Pair[]): Measure[] {
    if (stance.first.length > 0 || (stage === 2 && this.loopNeedsMains)) return [];
    const { right } = this;
    const fitting = pairs.filter((p) => !this.isMixed(p));
    return this.clipSets.flatMap(({ pins: clipped, fixed }) => {
      // A lead on a fixed feed comes off before the loop is live, and is looked for then.
      if (stage === 2 && fixed) return [];
      const relays = stage === 1 ? undefined : right.loop.relaysAt(stance);
      const at = { moved: stance.moved, relays, clipped };
      const near = fitting.filter(
        ({ a, b }) => !(clipped.includes(a) && clipped.includes(b)) && right.dead.reaches(at, [a, b]),
      );
      if (stage === 2) return this.lines(stance, near, clipped);
      return near.flatMap((pair) => this.ohms(1, { stance, pair, clipped }, undefined));
    });
  }

  private dead(stance: Stance, pairs: readonly Pair[]): Measure[] {
    return pairs
      .filter((pair) => !this.isMixed(pair))
      .flatMap((pair) => this.ohms(1, { stance, pair, clipped: NO_CLIP }, undefined));
  }

  /** With the relay in and mains out, the line is still dead from end to end. */
  private lines(stance: Stance, pairs: readonly Pair[], clipped: readonly string[]): Measure[] {
    return pairs.flatMap((pair) => {
      if (this.isMixed(pair) || this.isInLoop(pair.a) || this.isInLoop(pair.b)) return [];
      const relays = this.right.loop.relaysAt(stance, pair.a, pair.b);
      return relays === undefined ? [] : this.ohms(2, { stance, pair, clipped }, relays);
    });
  }

  private ohms(stage: 1 | 2, where: Where, relays: readonly boolean[] | undefined): Measure[] {
    const { pair, stance, clipped } = where;
    const at = { moved: stance.moved, relays, clipped };
    const [least, most] = this.deadLimits.map((m) => m.readOneOfMany(at, pair.a, pair.b).most) as [
      number,
      number,
    ];
    return ohmMeasures(stage, where, this.right.dead.readOneOfMany(at, pair.a, pair.b), [least, most]);
  }

  private live(stage: 2 | 3, stance: Stance, pairs: readonly Pair[]): Measure[] {
    const { right } = this;
    const powered = stage === 2 ? right.loop : right.mains;
    const top = this.most[stage];
    if (top === undefined) return [];
    const fitting = pairs.filter((p) => !p.far && (stage === 2 ? this.isLowOnly(p) : this.isOpenMains(p)));
    const at = this.corners.map((figures) => powered.withFigures(stance, figures));
    return fitting.flatMap((pair) => {
      const nominal = powered.volts(stance, pair.a, pair.b);
      // With only some supplies on, a reading is asked for where the others would change nothing.
      if (stage === 2 && !alike(nominal, right.mains.volts(stance, pair.a, pair.b))) return [];
      const all = at.map((read) => read(pair.a, pair.b));
      return liveMeasure(stage, { stance, pair, clipped: NO_CLIP }, nominal, all, top) ?? [];
    });
  }

  private isInLoop(key: string): boolean {
    return isLow(this.study.sides, this.study.circuit.netOf.get(key));
  }

  private isOnMains(key: string): boolean {
    return isMains(this.study.sides, this.study.circuit.netOf.get(key));
  }

  /** Where mains and the loop meet, a beep tells of harm, not of a right circuit. */
  private isMixed({ a, b }: Pair): boolean {
    return [a, b].some((key) => this.isInLoop(key) && this.isOnMains(key));
  }

  private isLowOnly({ a, b }: Pair): boolean {
    return [a, b].every((key) => this.isInLoop(key) && !this.isOnMains(key));
  }

  /** On the mains, and no pin of a plug, which is in the wall while mains is on. */
  private isOpenMains({ a, b }: Pair): boolean {
    return [a, b].every((key) => {
      const part = this.plan.parts.get(partOfKey(key));
      return this.isOnMains(key) && !(part?.kind === 'plug' && !isFixedFeed(part));
    });
  }
}

/** What is the same wherever in a shop is measured: the ends of the tolerances, and where clip leads go. */
const toleranceOf = perStudy((study: Study) => {
  const { plan, wired } = study;
  const { least, most } = ohmLimits(plan);
  // The right circuit has all sides of its deltas already.
  const whole = (figures: Figures) => withDeltas(plan, wired, figures).figures;
  return {
    sets: clipSets(plan),
    least: whole(least),
    most: whole(most),
    corners: CORNERS.map((c) => whole(figuresFor(plan, c))),
  };
});

/** No clip lead anywhere. */
const NO_CLIP: readonly string[] = [];
/** Most pins of one plug that a clip lead is tried on. */
const MOST_PINS = 5;

/** Pins of one plug that a clip lead joins, and whether that plug is wired in. */
interface ClipSet {
  readonly pins: readonly string[];
  readonly fixed: boolean;
}

/** Every two or more wired pins of one plug. */
function clipSets(plan: Plan): ClipSet[] {
  const used = wiredTerminals(plan);
  return [...plan.parts.values()].flatMap((part) => {
    if (part.kind !== 'plug') return [];
    const pins = plan.terminals
      .get(part.name)!
      .names.map((t) => terminalKey(part.name, t))
      .filter((key) => used.has(key))
      .slice(0, MOST_PINS);
    const sets: ClipSet[] = [];
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
    return { volts: scale * widestVolts(s), kind: s.kind };
  });
  return across.sort((x, y) => y.volts - x.volts)[0];
}
