/** What would give a coil enough volts, each worked out by solving the network with the change made. */
import type { Figures } from '../../electric/island.ts';
import type { SupplyPart } from '../../plan/part-types.ts';
import type { Cable, Plan } from '../../plan/plan.ts';
import { supplyModel } from '../../ratings/supply.ts';
import { ohmsPerMetre, strandingAllowance, thickerSizes } from '../../ratings/wire.ts';
import { coilOf } from '../../study/coil-models.ts';
import type { CoilRow } from '../../study/coil-rows.ts';
import type { CoilState } from '../../study/coil-states.ts';
import { figuresFor } from '../../study/corner-figures.ts';
import { ambientOf } from '../../study/corners.ts';
import type { Electrics } from '../../study/electrics.ts';
import type { Study } from '../../study/study.ts';
import { rounded } from '../../text/numbers.ts';
import { type LowCoil, THIN } from './low-volts.ts';

/** Times the area of the wire in the plan up to which thicker wire is proposed; beyond it another cure is meant. */
const MOST_THICKER = 7;

/** VA of small transformers that are sold. */
const TRANSFORMERS = [10, 15, 20, 30, 40, 50, 75, 100];

/** Sentences without their full stop, the best first; at most three. */
export function lowRemedies(study: Study, { state, row }: LowCoil): string[] {
  const own = study.electrics!;
  const { model } = state.fed;
  const volts = (figures: Figures) => own.coilVoltsWith(state.relay, row.leastIn, figures);
  const wanted = state.pullIn + THIN * model.rated;
  const enough = (v: number) => v >= state.pullIn - 1e-9;
  const found = [
    ...thickerWire(study, own, state, volts, wanted, enough),
    ...shorterLoop(study, volts, state.pullIn),
    ...otherSupply(study, state, row, wanted, (plan) => volts(figuresFor(plan, 'low'))),
  ];
  return found.slice(0, 3).map((text, i) => (i === 0 ? text.charAt(0).toUpperCase() + text.slice(1) : text));
}

function cablesIn(study: Study, own: Electrics, state: CoilState): Map<number, Cable> {
  const island = own.islandOf(state.relay)!;
  const runs = new Map<number, Cable>();
  for (const w of island.wires) {
    const cable = study.plan.runs[w.run]!.cable;
    if (cable) runs.set(w.run, cable);
  }
  return runs;
}

/** The thinnest size that gives the wanted margin if it replaces whatever in the loop is thinner; else one that serves. */
function thickerWire(
  study: Study,
  own: Electrics,
  state: CoilState,
  volts: (figures: Figures) => number,
  wanted: number,
  enough: (v: number) => boolean,
): string[] {
  const runs = cablesIn(study, own, state);
  if (runs.size === 0) return [];
  const ambient = ambientOf(study.plan);
  const worst = (c: Cable) => ohmsPerMetre(c, ambient) * strandingAllowance(c);
  const thinnest = [...runs.values()].reduce((x, y) => (worst(y) > worst(x) ? y : x));
  let serves: string | undefined;
  for (const size of thickerSizes(thinnest).filter((c) => c.area <= MOST_THICKER * thinnest.area)) {
    const cableOf = (run: number) => {
      const cable = runs.get(run);
      return cable && worst(cable) > worst(size) ? size : undefined;
    };
    const v = volts(figuresFor(study.plan, 'low', { cableOf }));
    if (!enough(v)) continue;
    serves = `${size.gauge} instead of ${thinnest.gauge} gives ${rounded(v)} V`;
    if (v >= wanted - 1e-9) return [serves];
  }
  // Wire that only just serves is worth naming where the coil would not pull in at all, not where it does already.
  return serves === undefined || enough(volts(figuresFor(study.plan, 'low'))) ? [] : [serves];
}

/** How much shorter the whole loop would have to be with the wire as it is. */
function shorterLoop(study: Study, volts: (figures: Figures) => number, needed: number): string[] {
  const at = (metres: number) => volts(figuresFor(study.plan, 'low', { metres }));
  if (at(1) >= needed || at(0) < needed) return [];
  let [low, high] = [0, 1];
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2;
    if (at(middle) >= needed) low = middle;
    else high = middle;
  }
  return low < 0.02 ? [] : [`cables no more than ${Math.floor(low * 100)} % as long`];
}

function otherSupply(
  study: Study,
  state: CoilState,
  row: CoilRow,
  wanted: number,
  with_: (plan: Plan) => number,
): string[] {
  const { fed } = state;
  const { model, supply, part } = fed;
  if (!supply) return [];
  const owner = study.plan.parts.get(fed.source.part)!;
  const otherVolts = `a coil rated for what ${fed.source.part} gives, or a supply of ${model.rated} V ${model.kind.toUpperCase()}`;
  if (owner.kind === 'supply' && supply.sourceOhms > 0 && owner.output.kind === 'ac') {
    for (const va of TRANSFORMERS) {
      if (va <= owner.limit.amps * owner.output.volts * 1.001) continue;
      const plan = withSupply(study.plan, bigger(owner, va));
      const v = with_(plan);
      const high = supplyModel(bigger(owner, va), plan.practice).openCircuit.nominal;
      if (v >= wanted)
        return [
          `a transformer of ${owner.output.volts} V and at least ${va} VA gives ${rounded(v)} V${high > model.mostVolts ? ' (but then check that the coil stands what it gives once pulled in)' : ''}`,
        ];
    }
    return owner.output.volts < 0.95 * model.rated ? [otherVolts] : [];
  }
  if (row.least <= 0) return [];
  // With one source and no diode on the way, volts at the coil go with the supply's.
  const aim = row.least < state.pullIn ? state.pullIn : wanted;
  const least = (supply.openCircuit.min * aim) / row.least;
  const share = least / supply.openCircuit.min;
  const most = supply.openCircuit.max * share;
  const stands = coilOf(part).most === undefined ? 1.3 * model.rated : model.mostVolts;
  if (share > 1 && share < 1.3 && most <= stands)
    return [`a supply that never falls below ${rounded(Math.ceil(least * 100) / 100)} V`];
  return share >= 1.3 ? [otherVolts] : [];
}

/** The same transformer in another size, its no-load rise left to the default for that size. */
function bigger(part: SupplyPart, va: number): SupplyPart {
  const { noLoad: _, ...rest } = part;
  return { ...rest, limit: { amps: va / part.output.volts, printed: 'VA', value: va } };
}

function withSupply(plan: Plan, part: SupplyPart): Plan {
  return { ...plan, parts: new Map([...plan.parts, [part.name, part]]) };
}
