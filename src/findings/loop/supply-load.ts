/** What a supply has to give at one time, against what it can. */
import type { Source } from '../../circuit/circuit.ts';
import { ohmsOf } from '../../logic/ohms.ts';
import type { SupplyPart } from '../../plan/plan.ts';
import type { CoilState } from '../../study/coil-states.ts';
import type { FedCoil } from '../../study/fed-coils.ts';
import { mostTogether } from '../../study/fed-together.ts';
import type { Study } from '../../study/study.ts';
import { ampsText, rounded } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import { COMMON_PRACTICE, finding } from '../finding.ts';
import type { Figure, Finding } from '../report-model.ts';

export const amps = (name: string, value: number): Figure => ({
  name,
  value: rounded(value),
  unit: 'A',
});

export function holding(c: FedCoil): number {
  return c.model.ohms === undefined ? 0 : c.model.rated / c.model.ohms;
}
export function inrush(c: FedCoil): number {
  const ohms = c.model.kind === 'ac' ? (c.model.inrushOhms ?? c.model.ohms) : c.model.ohms;
  return ohms === undefined ? 0 : c.model.rated / ohms;
}

interface Draw {
  readonly source: Source;
  readonly part: SupplyPart;
  readonly coils: readonly FedCoil[];
  /** A while coils pull in */
  readonly amps: number;
  /** A with all of them in */
  readonly settled: number;
}

/** The most that each supply has to give at one time: coils that can be in together, lamps and indicators. */
function drawOf(study: Study, coils: readonly FedCoil[], source: Source): Draw | undefined {
  const { plan, circuit } = study;
  const part = plan.parts.get(source.part);
  if (part?.kind !== 'supply') return undefined;
  const volts = part.output.volts;
  const reach = study.verified?.model.railReach[source.index] ?? [];
  const near = (net: number): boolean => reach.some((r) => r.has(net));
  const elements = circuit.passives.filter(
    (p) => p.what !== 'coil' && p.what !== 'load' && p.what !== 'primary',
  );
  const others = elements.filter((p) => near(p.a) || near(p.b)).map((p) => volts / ohmsOf(plan, p));
  const leds = circuit.diodes
    .filter((d) => d.load && (near(d.anode) || near(d.cathode)))
    .map((d) => d.amps ?? 0.02);
  const extra = [...others, ...leds].reduce((a, b) => a + b, 0);
  const own = coils.filter((c) => c.source === source);
  const before = holdingThemselves(study);
  const settled = mostTogether(study, own, holding).amps + extra;
  // A relay that holds itself in has pulled in before the others do.
  const rest = mostTogether(study, own, (c) => (before.has(c.part.name) ? holding(c) : inrush(c)));
  const first = mostTogether(
    study,
    own.filter((c) => before.has(c.part.name)),
    inrush,
  );
  const most = first.amps > rest.amps ? first : rest;
  return { source, part, coils: most.coils, amps: most.amps + extra, settled };
}

/** Relays with a contact in the way of their own coil. */
export function holdingThemselves(study: Study): ReadonlySet<string> {
  const relays = study.verified?.settler.memory.relays ?? [];
  return new Set(relays.map((k) => study.circuit.relays[k]!.part));
}

/** For the answer to question 5: supply, its limit and the most that is drawn, in words. */
export function draws(study: Study): { supply: string; limit: string; drawn: string }[] {
  const coils = study.fedCoils;
  return study.circuit.sources.flatMap((source) => {
    const d = source.mains ? undefined : drawOf(study, coils, source);
    return d ? [{ supply: source.part, limit: ampsText(d.part.limit.amps), drawn: ampsText(d.amps) }] : [];
  });
}

/** Times its limit that a transformer may give for the moment of pull-in, if its own sag leaves every coil enough. */
const MOMENT = 2;

/**
 * More than a supply gives. A transformer gives more than its rating for the moment in which armatures close, at the cost
 * of its volts; while those still serve every coil at worst, that is a caution and no fault.
 */
export function overloaded(study: Study, coils: readonly FedCoil[], states: readonly CoilState[]): Finding[] {
  const { plan, circuit } = study;
  const found: Finding[] = [];
  for (const source of circuit.sources.filter((s) => !s.mains)) {
    const d = drawOf(study, coils, source);
    if (!d) continue;
    const { part, amps: draw } = d;
    const volts = part.output.volts;
    const limit = part.limit.amps;
    if (draw <= 0.8 * limit + 1e-9) continue;
    const serves = states
      .filter((x) => x.fed.source.part === source.part)
      .every((x) => x.rows.every((row) => row.least >= x.pullIn - 1e-9));
    const moment = source.kind === 'ac' && d.settled <= limit + 1e-9 && draw <= MOMENT * limit && serves;
    const over = draw > limit + 1e-9 && !moment;
    found.push(
      finding(plan, {
        id: 'supply-overloaded',
        severity: over ? 'fault' : 'caution',
        question: 5,
        parts: [source.part, ...d.coils.map((c) => c.part.name)],
        at: part.where.get('limit') ?? part.at,
        message: `${source.part} gives ${ampsText(limit)}; ${listOf(d.coils.map((c) => c.part.name)) || 'the loop'} can draw ${ampsText(draw)}${source.kind === 'ac' ? ' at pull-in' : ''}`,
        why: over
          ? 'The supply sags, cuts out or overheats when everything is in at once.'
          : draw > limit
            ? 'Only while the armatures close; its volts then sag, and with that counted every coil still pulls in.'
            : 'That is more than 80 % of what it can give.',
        fix: `Use a supply for at least ${ampsText(draw / 0.8)}${source.kind === 'ac' ? ` (${Math.ceil((draw / 0.8) * volts)} VA)` : ''}.`,
        figures: [amps('draw', draw), amps('limit', limit)],
        basis: COMMON_PRACTICE,
      }),
    );
  }
  return found;
}
