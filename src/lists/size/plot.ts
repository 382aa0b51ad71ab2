/** Points for a drawing of the coil's volts against distance, a line for each gauge. */
import { asUsual } from '../../findings/unsaid/usual.ts';
import { readMeter } from '../../machine/read-meter.ts';
import type { CoilState } from '../../study/coil-states.ts';
import type { Study } from '../../study/study.ts';
import { type FarGate, farGate, isOwn, leastWith, loopGauges, loopRuns, metresTo } from './loop-way.ts';
import type { Plot, PlotPoint, Section } from './size-model.ts';
import type { Trial } from './trial.ts';
import { withGauge } from './wires.ts';

/** Points that a line gets beyond the farthest gate. */
const BEYOND = 8;
/** Times the distance of the farthest gate up to which lines are drawn, at least and at most. */
const FAR = { least: 1.5, most: 8 };

/** V that a meter reads across the coil with these inputs moved, in the plan itself; null where it cannot be told. */
function readAt(study: Study, part: string, moved: readonly number[]): number | null {
  const marks = study.plan.terminals.get(part);
  const [a, b] = ['A1', 'A2'].map((t) => marks?.find(t));
  if (a === undefined || b === undefined) return null;
  const between = [
    { part, terminal: a },
    { part, terminal: b },
  ] as const;
  const { volts } = readMeter(study, { moved, dead: false, between });
  return volts === null ? null : Math.abs(volts);
}

/** A point for each gate; what a meter reads there is asked of `read`, the plan as it stands, where that is given. */
function gatePoints(study: Study, far: FarGate, read: Study | undefined): PlotPoint[] {
  const own = study.electrics!;
  const state: CoilState | undefined = study.coilStates.find((s) => s.relay.index === far.state.relay.index);
  return (state?.rows ?? []).flatMap((row): PlotPoint[] => {
    const gate = row.gate === undefined ? undefined : study.plan.parts.get(row.gate);
    const metres = gate?.kind === 'gate' ? metresTo(own, state!, row) : undefined;
    if (metres === undefined) return [];
    const seen = read === undefined ? null : readAt(read, state!.fed.part.name, row.moved);
    return [{ gate: gate!.name, metres, least: row.least, read: seen }];
  });
}

/** How far the lines go, m: as far as the thinnest wire allows, where that is not too far beyond the gates. */
function width(far: FarGate, { figures }: Section): number {
  const allowed = 1.1 * (figures[0]?.value ?? far.metres);
  return Math.min(Math.max(FAR.least * far.metres, allowed), FAR.most * far.metres);
}

/** Undefined where no way to a gate is found; figures are those of `check` and of `read`. */
export function plotOf(trial: Trial, reach: Section): Plot | null {
  // Volts are told as the report tells them.
  const { study } = asUsual(trial.study);
  const far = farGate(study);
  if ('untold' in far) return null;
  const sizes = loopGauges(study);
  const runs = new Set(loopRuns(study).map((r) => r.index));
  const end = width(far, reach);
  return {
    coil: far.state.fed.part.name,
    source: far.state.fed.source.part,
    pullIn: far.state.pullIn,
    rated: far.state.fed.model.rated,
    farthest: far.gate,
    lines: sizes.map((size) => {
      const other = study.withFigures(withGauge(study.plan, runs, size));
      const more = Array.from({ length: BEYOND }, (_, i) => ((end - far.metres) * (i + 1)) / BEYOND);
      const longer = more.map(
        (m): PlotPoint => ({
          gate: null,
          metres: far.metres + m,
          least: leastWith(study, far, size, m),
          read: null,
        }),
      );
      return {
        gauge: size.gauge,
        own: isOwn(study, size),
        points: [...gatePoints(other, far, isOwn(study, size) ? trial.study : undefined), ...longer].sort(
          (a, b) => a.metres - b.metres,
        ),
      };
    }),
  };
}
