/** Changes of figures as data, in words, and made in a plan. */
import type { FigureChange } from '../../findings/report-model.ts';
import type { Part } from '../../plan/part-types.ts';
import type { Cable, Plan } from '../../plan/plan.ts';
import { withParts } from './put.ts';

/** One figure, or the figures of one thing that is replaced. */
export interface Change {
  readonly told: FigureChange;
  /** an instruction without capital and full stop, `use a fuse of 1 A as F1` */
  readonly words: string;
  readonly apply: (plan: Plan) => Plan;
  /** what conducts may depend on it, so that the plan has to be proved anew */
  readonly anew: boolean;
}

type Fields = Readonly<Record<string, string | null>>;

/** One part with other figures; `change` makes them, `fields` tells them as the plan writes them. */
export function partChange(
  part: string,
  fields: Fields,
  words: string,
  change: (part: Part) => Part,
  anew = false,
): Change {
  return {
    told: { change: 'part', part, fields },
    words,
    apply: (plan) => withParts(plan, [part], change),
    anew,
  };
}

/** A cable in the gauge of another. */
export function inGauge(cable: Cable, { gauge, area, awg }: Cable): Cable {
  const { awg: _, stock: _stock, ...rest } = cable;
  return { ...rest, gauge, area, ...(awg !== undefined && { awg }) };
}

/** Runs in another gauge, each otherwise as it is; `which` names them. */
export function gaugeChange(runs: ReadonlySet<number>, size: Cable, which: string): Change {
  const { gauge } = size;
  const numbers = [...runs].sort((a, b) => a - b).map((r) => r + 1);
  return {
    told: { change: 'cable', runs: numbers, gauge },
    words: `use ${gauge} for ${which}`,
    apply: (plan) => ({
      ...plan,
      runs: plan.runs.map((r) =>
        runs.has(r.index) && r.cable ? { ...r, cable: inGauge(r.cable, size) } : r,
      ),
    }),
    anew: false,
  };
}

/** Whether two changes touch the same figure, so that they cannot be made both. */
export function overlap(x: Change, y: Change): boolean {
  const [a, b] = [x.told, y.told];
  // What a change put in is not changed again.
  if ((a.change === 'fuse' || a.change === 'relay') && 'part' in b && a.part === b.part) return true;
  if (a.change === 'cable' && b.change === 'cable') return a.runs.some((r) => b.runs.includes(r));
  if (a.change === 'part' && b.change === 'part')
    return a.part === b.part && Object.keys(a.fields).some((f) => Object.hasOwn(b.fields, f));
  if ('run' in a && 'run' in b) return a.run === b.run;
  return a.change === b.change;
}
