import { copperFactor } from '../../ratings/coil.ts';
import { coilOf, warmCelsius } from '../../study/coil-models.ts';
import type { CoilRow } from '../../study/coil-rows.ts';
import { type CoilState, worstRow } from '../../study/coil-states.ts';
import { figuresFor } from '../../study/corner-figures.ts';
import { ambientOf } from '../../study/corners.ts';
import type { Electrics } from '../../study/electrics.ts';
import type { Study } from '../../study/study.ts';
import { rounded } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import { finding } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { lowRemedies } from './coil-remedy.ts';

/** Share of rated volts by which the least may lie above pull-in before the margin counts as thin. */
export const THIN = 0.05;

const EPSILON = 1e-9;

export function tooLow(study: Study, electrics: Electrics, state: CoilState): Finding[] {
  const { fed, rows, pullIn } = state;
  const { part, model, source } = fed;
  const row = worstRow(state);
  const fails = row.least < pullIn - EPSILON;
  if (!fails && row.least >= pullIn + THIN * model.rated - EPSILON) return [];
  if (!fails && model.ohms === undefined && part.kind !== 'board') return [];
  const short = rows.filter((r) => r.least < pullIn - EPSILON && r.gate !== undefined);
  const everywhere = short.length === rows.length;
  const at = row.gate === undefined || (everywhere && rows.length > 1) ? '' : ` from ${row.gate}`;
  const needs =
    model.kind === 'dc' && !model.pullInIsWarm
      ? `${rounded(pullIn)} V to pull in warm`
      : `${rounded(pullIn)} V to pull in`;
  const others = short.map((r) => r.gate!).filter((g) => g !== row.gate);
  const remedies = lowRemedies(study, electrics, state, row);
  return [
    finding(study.plan, {
      id: fails ? 'coil-too-low' : 'coil-thin-margin',
      severity: fails ? 'fault' : 'caution',
      question: 4,
      parts: [
        part.name,
        source.part,
        ...(row.gate === undefined ? [] : row.moved.map((i) => study.circuit.inputs[i]!.part)),
      ],
      at: part.where.get('coil.rated') ?? part.at,
      message: fails
        ? `${part.name} gets ${rounded(row.least)} V${at} at worst and needs ${needs}`
        : `${part.name} gets ${rounded(row.least)} V${at} at worst, only ${rounded(row.least - pullIn, 2)} V above what it needs${model.kind === 'dc' && !model.pullInIsWarm ? ' warm' : ''}`,
      why: `${whyLow(study, state, row)}${fails && others.length > 0 ? ` ${everywhere ? 'Every other way of starting it is short too' : `Short too: ${listOf(others)}`}.` : ''}`,
      fix:
        remedies.length > 0
          ? `${remedies.join('; or ')}.`
          : `Use a relay whose coil suits ${source.part}, or another supply.`,
      figures: [
        { name: 'least volts at the coil', value: rounded(row.least, 4), unit: 'V' },
        { name: 'volts at the coil as printed', value: rounded(row.nominal, 4), unit: 'V' },
        { name: 'pull-in of the warm coil', value: rounded(pullIn, 4), unit: 'V' },
        { name: 'margin', value: rounded(row.least - pullIn), unit: 'V' },
      ],
      basis:
        model.kind === 'dc'
          ? 'pull-in rises with the copper as (234.5 + T)/254.5, relay makers’ data; wire by ASTM B258 or IEC 60228'
          : 'drop worked out at the current with the armature open, relay and contactor makers’ data',
    }),
  ];
}

function whyLow(study: Study, { fed, pullIn }: CoilState, row: CoilRow): string {
  const { model, supply, source } = fed;
  const { plan } = study;
  const start = supply
    ? `${source.part} may stand at ${rounded(supply.openCircuit.min)} V`
    : `the mains may stand low`;
  const lost = supply ? supply.openCircuit.min - row.least : 0;
  const inside =
    supply && supply.sourceOhms > 0
      ? 'the supply itself, the wire and the contacts'
      : 'the wire and the contacts';
  const way = `${rounded(lost, 2)} V stay in ${inside}${model.kind === 'ac' ? ' while the armature is still open' : ''}`;
  const warm =
    model.kind === 'dc' && !model.pullInIsWarm
      ? ` In air of ${rounded(ambientOf(plan))} °C a coil that has been on is at ${rounded(warmCelsius(plan, model))} °C and needs ${rounded(copperFactor(warmCelsius(plan, model)))} times its ${rounded(model.pullInVolts)} V.`
      : ` It needs ${rounded((pullIn / model.rated) * 100)} % of its ${model.rated} V.`;
  return `${start}, and ${way}.${warm}`;
}

/**
 * Too many volts for long. Where the plan states what the coil stands, the greatest volts are held to that; where it
 * does not, 110 % of rated with the mains at nominal, and only what is above all common coils is sure to harm.
 */
export function tooHigh(study: Study, { fed, rows }: CoilState): Finding[] {
  const { part, model, source, supply } = fed;
  const stated = coilOf(part).most !== undefined;
  const scale = (corner: 'nominal' | 'high') => figuresFor(study.plan, corner).source(source).scale;
  const nominal = scale('nominal') / scale('high');
  const most = Math.max(...rows.map((r) => r.most)) * (stated ? 1 : nominal);
  if (most <= model.mostVolts + EPSILON) return [];
  const sure = stated || most > 1.3 * model.rated;
  return [
    finding(study.plan, {
      id: 'coil-too-high',
      severity: sure ? 'warning' : 'caution',
      question: 4,
      parts: [part.name, source.part],
      at: part.where.get('coil.rated') ?? part.at,
      message: `${part.name} gets ${rounded(most)} V${stated ? '' : ' with the mains at nominal'} and stands ${rounded(model.mostVolts)} V for long`,
      why: `Its coil is rated ${model.rated} V; ${source.part} ${supply && supply.sourceOhms > 0 ? 'rises above its label when lightly loaded' : 'may stand that high'}. The coil overheats.`,
      fix:
        model.kind === 'ac'
          ? `Measure it with the coil on and state no-load: of ${source.part}; or use a transformer with less rise, or a coil that states coil: {most: ...}.`
          : `Use a regulated supply of ${model.rated} V, or a coil that states coil: {most: ...} for that voltage.`,
      figures: [
        { name: 'volts at the coil', value: rounded(most, 4), unit: 'V' },
        { name: 'most for long', value: rounded(model.mostVolts, 4), unit: 'V' },
      ],
      basis: stated
        ? 'highest continuous voltage as printed on the relay'
        : 'continuous coil voltage 110 % of rated unless the maker states more (makers’ data)',
    }),
  ];
}
