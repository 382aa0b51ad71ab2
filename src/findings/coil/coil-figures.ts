/** The report's rows on coils, and what was taken for granted of them. */

import type { CurrentKind } from '../../plan/device-figures.ts';
import { coilName, warmCelsius } from '../../study/coil-models.ts';
import type { CoilRow } from '../../study/coil-row.ts';
import type { CoilState } from '../../study/coil-states.ts';
import { figuresFor } from '../../study/corner-figures.ts';
import type { Electrics } from '../../study/electrics.ts';
import { loopOf } from '../../study/loop-path.ts';
import type { Study } from '../../study/study.ts';
import { rounded } from '../../text/numbers.ts';
import type { CoilFigures } from '../report-model.ts';

/** What every coil gets by each way of feeding it. */
export function coilFigures(study: Study): CoilFigures[] {
  const own = study.electrics;
  if (!own) return [];
  return study.coilStates.flatMap((state) => state.rows.map((row) => figures(study, own, state, row)));
}

/** Figures of coils and of what feeds them that the plan does not state, as sentences. */
export function coilDefaults(study: Study): string[] {
  return study.fedCoils.flatMap(({ model, part, supply }) => [
    ...model.defaults.map((d) => (d.startsWith(part.name) ? d : `${part.name}: ${d}`)),
    ...(supply?.defaults ?? []),
  ]);
}

function figures(study: Study, own: Electrics, state: CoilState, row: CoilRow): CoilFigures {
  const { model, part } = state.fed;
  const loop = loopOf(own, state, row);
  const known = model.ohms !== undefined || part.kind === 'board';
  const volts = (x: number) => (known ? rounded(x, 4) : null);
  return {
    relay: coilName(state.relay),
    gate: row.gate ?? null,
    ...(row.moved.length === 0 && { atRest: true }),
    metres: loop.metres === undefined ? null : rounded(loop.metres, 4),
    ohms: loop.ohms === undefined ? null : rounded(loop.ohms, 4),
    volts: { min: volts(row.least), nominal: volts(row.nominal), max: volts(row.most) },
    pullIn: rounded(state.pullIn, 4),
    dropOut: rounded(model.dropOutVolts, 4),
    margin: known ? rounded((row.least - state.pullIn) / model.rated, 3) : null,
    corner: cornerWords(study, state, row),
  };
}

/** Which supply, temperatures and positions give the least volts. */
function cornerWords(study: Study, { fed }: CoilState, row: CoilRow): string {
  const { model, supply } = fed;
  const { plan, circuit } = study;
  const coil = model.electronic
    ? 'no winding that warms'
    : model.kind === 'dc'
      ? `coil at ${rounded(warmCelsius(plan, model), 3)} °C and ${rounded(model.tolerance * 100, 2)} % low`
      : 'armature open';
  const source = supply
    ? `supply at ${rounded(supply.openCircuit.min, 4)} V`
    : `mains at ${rounded(figuresFor(plan, 'low').source(fed.source).scale * 100, 3)} %`;
  const others = row.leastIn.moved.filter((i) => !row.moved.includes(i)).map((i) => circuit.inputs[i]!.part);
  const with_ = others.length === 0 ? '' : `, with ${someOf(others)} as well`;
  return `${source}, ${coil}, wires at ${rounded(plan.ambient ?? 40, 3)} °C${with_}${proofWords(row, fed.source.kind)}`;
}

/** Names in a list, and of a long list the first few and how many more. */
function someOf(names: readonly string[]): string {
  const more = names.length - MOST_NAMES;
  return more > 1 ? `${names.slice(0, MOST_NAMES).join(', ')} and ${more} more` : names.join(', ');
}

const MOST_NAMES = 4;

/**
 * Whether the state is the worst there is. Where every combination was tried nothing is said. Of AC the turn of the volts by
 * reactive loads is allowed for with a margin, and that is no proof.
 */
function proofWords({ proved, floor }: CoilRow, kind: CurrentKind): string {
  if (proved && floor === undefined) return '';
  if (proved)
    return kind === 'dc'
      ? " (proved for every state of the other loads, by Rayleigh's law)"
      : " (the worst of every state of the other loads by Rayleigh's law, their reactance allowed for)";
  if (floor === undefined || !Number.isFinite(floor)) return ' (searched, not every combination tried)';
  return ` (the worst found; no state gives less than ${rounded(floor, 4)} V)`;
}
