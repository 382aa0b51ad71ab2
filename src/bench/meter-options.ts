/** Every reading of the right circuit that a sheet may ask for. */
import { figuresFor } from '../checks/figures.ts';
import { isLow, isMains } from '../checks/sides.ts';
import { findSides } from '../checks/study.ts';
import { buildCircuit } from '../circuit/build.ts';
import type { Source } from '../circuit/circuit.ts';
import type { Figures } from '../electric/island.ts';
import type { Plan } from '../plan/plan.ts';
import { DeadBench, ohmLimits } from './meter-dead.ts';
import type { Volts } from './meter-live.ts';
import { deadMeasures, liveMeasure, type Measure } from './meter-measure.ts';
import type { Pair } from './meter-pairs.ts';
import { isFixed } from './meter-setup.ts';
import type { Stance } from './meter-stance.ts';
import type { Subject } from './meter-subject.ts';
import { probeOf } from './meter-words.ts';
import { balanced } from './three-phase.ts';

/** Makes the readings of one stage in one stance at these pairs. */
export type Measurer = (stage: 1 | 2 | 3, stance: Stance, pairs: readonly Pair[]) => Measure[];

const CORNERS = ['low', 'high', 'strong'] as const;
/** Part of a volt by which two ways of working out one reading may differ. */
const SAME = 1e-6;

export function measurer(plan: Plan, right: Subject): Measurer {
  const joined = buildCircuit(plan);
  const sides = findSides(joined);
  const on = (test: typeof isLow) => (p: Pair) =>
    [p.a, p.b].every((key) => test(sides, joined.netOf.get(key)));
  const low = on((s, net) => isLow(s, net) && !isMains(s, net));
  const mains = on(isMains);
  const mixed = (p: Pair) =>
    [p.a, p.b].some((key) => isLow(sides, joined.netOf.get(key)) && isMains(sides, joined.netOf.get(key)));
  const limits = ohmLimits(plan);
  const bounds = [limits.least, limits.most].map((figures) => {
    const made = balanced(plan, right.circuit, figures);
    return new DeadBench(made.circuit, made.figures);
  });
  const corners = CORNERS.map((c) => balanced(plan, right.circuit, figuresFor(plan, c)).figures);
  const ends = corners.flatMap((figures) => withIndicators(plan, figures));
  const most = { low: highest(right, corners[1]!, false), mains: highest(right, corners[1]!, true) };

  /** The pins of a plug are in the wall while mains is on. */
  const inWall = (p: Pair) =>
    [p.a, p.b].some((key) => {
      const part = plan.parts.get(probeOf(key).part);
      return part?.kind === 'plug' && !isFixed(part);
    });

  const dead = (stance: Stance, pairs: readonly Pair[]) =>
    // Where mains and the loop meet, a beep tells of harm, not of a right circuit.
    pairs.flatMap((pair) => {
      if (mixed(pair)) return [];
      const [least, high] = bounds.map((b) => b.ohms(stance, pair.a, pair.b)) as [Ohm, Ohm];
      return deadMeasures({ stance, pair }, right.dead.ohms(stance, pair.a, pair.b), [least.most, high.most]);
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
      return liveMeasure(stage, { stance, pair }, nominal, all, top) ?? [];
    });
  };
  return (stage, stance, pairs) => {
    if (stage !== 1) return live(stage, stance, pairs);
    return stance.first.length > 0 ? [] : dead(stance, pairs);
  };
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
