/** The way from the supply to the farthest gate, and the wire of the loop. */

import type { Cable, Plan, Run } from '../../plan/plan.ts';
import type { CoilRow } from '../../study/coil-row.ts';
import type { CoilState } from '../../study/coil-states.ts';
import { figuresFor } from '../../study/corner-figures.ts';
import type { Electrics } from '../../study/electrics.ts';
import { loopOf } from '../../study/loop-path.ts';
import { lossesOnWay } from '../../study/mains/way-losses.ts';
import { perStudy } from '../../study/per-study.ts';
import type { Study } from '../../study/study.ts';
import { sizesWithOwn } from '../least-loop.ts';
import { sectionOf } from '../wiring-order.ts';

/** Share by which areas of one size may differ: a gauge in mm2 is rounded. */
const SAME = 0.01;
/** m², the thickest wire that is told of for a loop. */
const THICKEST = 2.7e-6;

/** The gate with the longest cable to it, of the coil that has the least to spare. */
export interface FarGate {
  readonly gate: string;
  readonly state: CoilState;
  readonly row: CoilRow;
  /** m of cable from the supply to the gate, one way */
  readonly metres: number;
  /** the runs at the gate itself that its current passes; these are made longer */
  readonly last: readonly Run[];
}

/** m from the supply to the gate of a row, one way; undefined where no loop is found. */
export function metresTo(own: Electrics, state: CoilState, row: CoilRow): number | undefined {
  const { metres } = loopOf(own, state, row);
  return metres === undefined ? undefined : metres / 2;
}

const spare = ({ pullIn, fed }: CoilState, row: CoilRow): number => (row.least - pullIn) / fed.model.rated;

/** Coils that a low-voltage supply feeds, the one with the least to spare first. */
function coilsBySpare({ coilStates }: Study): CoilState[] {
  const least = (s: CoilState) => Math.min(...s.rows.map((row) => spare(s, row)));
  return coilStates
    .filter((s) => !s.fed.source.mains && s.fed.supply !== undefined)
    .map((state) => ({ state, least: least(state) }))
    .sort((a, b) => a.least - b.least)
    .map(({ state }) => state);
}

/** The coil with the least to spare; undefined where no coil of the loop is fed. */
export const tightestCoil = (study: Study): CoilState | undefined => coilsBySpare(study)[0];

type Far = FarGate | { readonly untold: string };

function farOf(study: Study, own: Electrics, state: CoilState): Far {
  const rows = state.rows.flatMap((row) => {
    const gate = row.gate === undefined ? undefined : study.plan.parts.get(row.gate);
    const metres = gate?.kind === 'gate' ? metresTo(own, state, row) : undefined;
    return metres === undefined ? [] : [{ row, gate: gate!.name, metres }];
  });
  if (rows.length === 0) return { untold: `no gate by itself tells the volts of ${state.fed.part.name}` };
  const far = rows.reduce((a, b) => (b.metres > a.metres + 1e-9 ? b : a));
  const passed = lossesOnWay(own, state, far.row.leastIn);
  const last = study.plan.runs.filter(
    (r) =>
      passed.has(r.index) &&
      r.cable !== undefined &&
      r.length !== undefined &&
      r.cores.some((c) => c.a.part === far.gate || c.b.part === far.gate),
  );
  if (last.length === 0) return { untold: `no run of cable with a length ends at ${far.gate}` };
  return { ...far, state, last };
}

/** Coils that are looked at for one that hangs on a gate itself. */
const MOST_COILS = 12;
/** m that the cable to a gate is made longer to see whether the coil hangs on it. */
const LONGER = 100;

/** Whether the coil gets its volts through the cable at the gate, and not from a contact of a relay that the gate works. */
function hangsOn(study: Study, own: Electrics, far: FarGate): boolean {
  const figures = figuresFor(study.plan, 'low');
  const longer = new Set(far.last.map((r) => r.index));
  const volts = own.coilVoltsWith(far.state.relay, far.row.leastIn, {
    ...figures,
    wire: (w) => figures.wire(longer.has(w.run) ? { ...w, metres: w.metres + LONGER } : w),
  });
  return volts < far.row.least * (1 - 1e-4);
}

/** Of the coils that hang on gates, the one with the least to spare, and its farthest gate. */
export const farGate = perStudy((study): Far => {
  const own = study.electrics;
  const [first, ...more] = coilsBySpare(study).slice(0, MOST_COILS);
  if (own === undefined || first === undefined) return { untold: 'no coil is fed by a loop of its own' };
  const least = farOf(study, own, first);
  for (const state of [first, ...more]) {
    const far = state === first ? least : farOf(study, own, state);
    if (!('untold' in far) && hangsOn(study, own, far)) return far;
  }
  return 'untold' in least
    ? least
    : { untold: `no coil of ${least.state.fed.source.part} hangs on a gate itself` };
});

/**
 * The wire of the loop: runs with cores at low voltage and none on mains, in the gauge of the run at the farthest gate; the
 * heavy wire of a load that the same supply feeds is not among them.
 */
export const loopRuns = perStudy((study): readonly Run[] => {
  const { plan, circuit, sides } = study;
  const low = plan.runs.filter(
    (r) =>
      r.cable !== undefined && r.cores.every((core) => sectionOf(circuit, sides, core) === 'low voltage'),
  );
  const far = farGate(study);
  const area = 'untold' in far ? undefined : far.last[0]?.cable?.area;
  return area === undefined ? low : low.filter((r) => Math.abs(r.cable!.area / area - 1) < SAME);
});

/** Gauges of the practice in which a loop is wired, the thinnest first, with that of the plan among them. */
export function loopGauges(study: Study): Cable[] {
  const own = loopRuns(study).map((r) => r.cable!);
  const [first] = own;
  if (first === undefined) return [];
  const areas = new Set(own.map((c) => c.area));
  return sizesWithOwn(first).filter((c) => c.area <= THICKEST || areas.has(c.area));
}

/** Whether all wire of the loop is of one size already. */
export const isOwn = (study: Study, size: Cable): boolean =>
  loopRuns(study).every((r) => Math.abs(r.cable!.area / size.area - 1) < SAME);

/** The plan with the runs at the farthest gate so much longer or shorter (m) that each keeps its share. */
export function withLast(plan: Plan, last: readonly Run[], more: number): Plan {
  const own = new Set(last.map((r) => r.index));
  return {
    ...plan,
    runs: plan.runs.map((r) => (own.has(r.index) ? { ...r, length: (r.length ?? 0) + more } : r)),
  };
}

/** V at the coil at worst with all wire of the loop in one gauge and the runs at the gate longer by `more` m. */
export function leastWith(study: Study, far: FarGate, size: Cable | undefined, more: number): number {
  const own = study.electrics!;
  const loop = new Set(loopRuns(study).map((r) => r.index));
  const { plan } = study;
  const cableOf = (run: number): Cable | undefined => {
    const cable = plan.runs[run]!.cable;
    if (size === undefined || cable === undefined || !loop.has(run)) return undefined;
    const { awg: _, ...rest } = cable;
    return { ...rest, gauge: size.gauge, area: size.area, ...(size.awg !== undefined && { awg: size.awg }) };
  };
  const figures = figuresFor(plan, 'low', { cableOf });
  const longer = new Set(far.last.map((r) => r.index));
  return own.coilVoltsWith(far.state.relay, far.row.leastIn, {
    ...figures,
    wire: (w) => figures.wire(longer.has(w.run) ? { ...w, metres: w.metres + more } : w),
  });
}
