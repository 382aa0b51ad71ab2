import type { Figures } from '../../electric/island.ts';
import { lengthUnit } from '../../plan/length-unit.ts';
import type { Plan } from '../../plan/plan.ts';
import { type Coiled, coilImpedance } from '../../study/coil-models.ts';
import type { CoilRow } from '../../study/coil-row.ts';
import type { CoilState } from '../../study/coil-states.ts';
import type { Electrics } from '../../study/electrics.ts';
import { loopOf, loopWith } from '../../study/loop-path.ts';
import type { Study } from '../../study/study.ts';
import { figureOfLength } from '../../text/lengths.ts';
import { ampsText, rounded } from '../../text/numbers.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'drop-large',
  title: 'over a tenth of the volts stay in the wire',
  severity: 'caution',
  question: 5,
  base: 'ac-contactor',
  meaning:
    'At the farthest gate the wire and its contacts take more than 10 % of the supply while the coil pulls in. It still works, but the wire is thin for its length and little is left for a weak supply or a tarnished contact. Thicker wire or a relay that draws less cures it; the check names the runs and the size that do.',
  wrong: 'gauge: 24 AWG',
  right: 'gauge: 18 AWG',
  basis: 'ASTM B258 or IEC 60228 resistance; 10 % is common practice',
  followsFrom: ['coil-too-low', 'coil-thin-margin'],
};

export const dropLarge: Check = { entry, find };

/** Share of the supply's volts that may be lost in the wire. */
export const MOST_LOST = 0.1;

/** What is lost on the way to a coil, and by which gate. */
export interface Lost {
  readonly state: CoilState;
  readonly row: CoilRow;
  readonly ohms: number;
  readonly metres: number | undefined;
  /** V at the current with which the coil pulls in */
  readonly volts: number;
  /** V that the supply gives with nothing on it, as printed */
  readonly of: number;
}

function find(study: Study): Finding[] {
  const own = study.electrics;
  if (!own) return [];
  return study.coilStates.flatMap((state) => {
    const far = farthest(study, own, state);
    return far && far.volts > MOST_LOST * far.of + 1e-9 ? [tooMuchLost(study, far)] : [];
  });
}

/** The gate that loses most; undefined where a mains source feeds the coil or its current is not stated. */
export function farthest({ plan }: Study, own: Electrics, state: CoilState): Lost | undefined {
  const { part, supply, model } = state.fed;
  if (!supply || (model.ohms === undefined && part.kind !== 'board')) return undefined;
  const of = supply.openCircuit.nominal;
  const coil = coilOhms(plan, part);
  if (coil === undefined) return undefined;
  const rows = state.rows.flatMap((row): Lost[] => {
    const { ohms, metres } = loopOf(own, state, row);
    return ohms === undefined ? [] : [{ state, row, ohms, metres, volts: (ohms * row.nominal) / coil, of }];
  });
  return rows.length === 0 ? undefined : rows.reduce((x, y) => (y.volts > x.volts ? y : x));
}

/** ohm of the coil at 20 °C with its armature open. */
function coilOhms(plan: Plan, part: Coiled): number | undefined {
  const z = coilImpedance(plan, part, 'nominal', false);
  return z && Math.hypot(z.re, z.im);
}

function tooMuchLost(study: Study, far: Lost): Finding {
  const { row, metres } = far;
  const { part, model } = far.state.fed;
  return found(study.plan, entry, {
    parts: [row.gate ?? part.name, part.name],
    message: `${rounded(far.volts)} V of ${rounded(far.of)} V stay in the wire${row.gate ? ` when ${row.gate} starts ${part.name}` : ` to ${part.name}`}`,
    why: `${metres === undefined ? 'Its' : `${figureOfLength(metres, lengthUnit(study.plan))} of conductor, there and back, with contacts`} have ${rounded(far.ohms)} ohm at 20 °C; the coil takes ${ampsText(far.volts / far.ohms)}${model.kind === 'ac' ? ' while its armature is open' : ''}.`,
    fix: `The wire may take ${rounded(MOST_LOST * far.of)} V and takes ${rounded(far.volts - MOST_LOST * far.of)} V more.`,
    figures: [
      { name: 'lost', value: rounded((far.volts / far.of) * 100), unit: '%' },
      { name: 'most', value: MOST_LOST * 100, unit: '%' },
    ],
    basis: entry.basis,
    twin: { name: part.name, alike: far.state.fed.source.part, badness: far.volts / far.of },
  });
}

/** Share of the supply's volts that is lost on the way to a coil by one gate, with other figures for its wires. */
export function lostWith(
  { plan }: Study,
  own: Electrics,
  state: CoilState,
  row: CoilRow,
  figures: Figures,
): number {
  const of = state.fed.supply!.openCircuit.nominal;
  const loop = loopWith(own, state, row, figures);
  return loop === undefined ? 0 : (loop.ohms * loop.volts) / coilOhms(plan, state.fed.part)! / of;
}
