import { takesKind } from '../../ratings/coil.ts';
import type { Study } from '../../study/study.ts';
import { ampsText, rounded } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { COMMON_PRACTICE, found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { ampsFigure } from './amps-figure.ts';
import { copperOnDc } from './loop-coils.ts';
import { type Draw, supplyDraw } from './supply-draws.ts';

const entry: FindingEntry = {
  id: 'supply-overloaded',
  title: 'the coils draw more than the supply gives',
  severity: 'fault',
  question: 5,
  base: 'ac-contactor',
  meaning:
    'Everything that can be in at once, lamps and boards with it, draws more than the supply is made for. It sags, and the contactor hums without closing, or it overheats. AC coils count with what they draw at pull-in. Above 80 % of the limit it is a caution; so it is where a transformer is over its rating for the moment of pull-in only, and its sag still leaves every coil enough.',
  wrong: 'limit: 10 VA',
  right: 'limit: 40 VA',
  basis: 'common practice',
  followsFrom: ['coil-kind'],
};

export const supplyOverloaded: Check = { entry, find };

/** Times its limit that a transformer may give for the moment of pull-in, if its own sag leaves every coil enough. */
const MOMENT = 2;

/** Share of its limit up to which nothing is said. */
const EASY = 0.8;

function find(study: Study): Finding[] {
  // an AC coil on DC is told by its kind, and what its copper then draws by this
  const coils = study.fedCoils.filter(
    (c) => c.supply !== undefined && (takesKind(c.model, c.source.kind) || copperOnDc(c) !== undefined),
  );
  return study.circuit.sources.flatMap((source) => {
    const draw = supplyDraw(study, coils, source);
    const limit = draw?.part.limit?.amps;
    return !draw || limit === undefined || draw.amps <= EASY * limit + 1e-9
      ? []
      : [overloaded(study, draw, limit)];
  });
}

/**
 * A transformer gives more than its rating for the moment in which armatures close, at the cost of its volts; while those
 * still serve every coil at worst, that is a caution and no fault.
 */
function onlyForAMoment(study: Study, { source, amps, settled }: Draw, limit: number): boolean {
  if (source.kind !== 'ac' || settled > limit + 1e-9 || amps > MOMENT * limit) return false;
  const { coilStates, verified, nominal } = study;
  // Two armatures that close at once may leave each other too little, though each by itself has enough.
  if (verified && nominal && nominal.verified.deviations.length > verified.deviations.length) return false;
  return coilStates
    .filter((x) => x.fed.source.part === source.part)
    .every((x) => x.rows.every((row) => row.least >= x.pullIn - 1e-9));
}

function overloaded(study: Study, draw: Draw, limit: number): Finding {
  const { source, part, amps } = draw;
  const over = amps > limit + 1e-9 && !onlyForAMoment(study, draw, limit);
  const names = [...draw.coils.map((c) => c.part.name), ...draw.others];
  const ac = source.kind === 'ac';
  return found(study.plan, entry, {
    severity: over ? 'fault' : 'caution',
    parts: [source.part, ...names],
    at: part.where.get('limit') ?? part.at,
    message: `${source.part} gives ${ampsText(limit)}; ${listOf(names) || 'the loop'} can draw ${ampsText(amps)}${ac ? ' at pull-in' : ''}`,
    why: over
      ? 'The supply sags, cuts out or overheats when everything is in at once.'
      : amps > limit
        ? 'Only while the armatures close; its volts then sag, and with that counted every coil still pulls in.'
        : 'That is more than 80 % of what it can give.',
    fix:
      amps > limit
        ? `${source.part} is ${ampsText(amps - limit)} short.`
        : `${source.part} is at ${rounded((amps / limit) * 100)} % of what it gives.`,
    figures: [ampsFigure('draw', amps), ampsFigure('limit', limit)],
    basis: COMMON_PRACTICE,
  });
}
