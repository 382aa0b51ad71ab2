import type { DiodeEdge, Passive } from '../../circuit/circuit.ts';
import type { Flows } from '../../electric/flows.ts';
import type { LedPart, ResistorPart } from '../../plan/part-types.ts';
import type { Electrics } from '../../study/electrics.ts';
import { hasResistor, indicator } from '../../study/indicators.ts';
import type { Study } from '../../study/study.ts';
import { ampsText, rounded } from '../../text/numbers.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { COMMON_PRACTICE, found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { ampsFigure } from './amps-figure.ts';

const entry: FindingEntry = {
  id: 'indicator-volts',
  title: 'a lamp or indicator gets other volts than it is made for',
  severity: 'caution',
  question: 5,
  base: 'dc-chain',
  meaning:
    'A lamp gets more volts than are printed on it and burns out early, or so few that nobody sees it lit. A bare light-emitting diode, which states its forward volts, has no resistor in line and burns through at once; or the resistor in line is too small for the current that the diode states. Then it tells nothing of the loop.',
  wrong: '  pilot: {kind: lamp, rated: 6 V DC 2 W}',
  right: '  pilot: {kind: lamp, rated: 12 V DC 2 W}',
  basis: COMMON_PRACTICE,
  followsFrom: [
    'coil-in-series',
    'coil-holds-in',
    'supply-shorted',
    'supplies-joined',
    'mains-meets-low-voltage',
  ],
};

export const indicatorVolts: Check = { entry, find };

/** Shares of its rated volts between which a lamp lives as long as it should and is seen; common practice. */
const SHARES = { least: 0.7, most: 1.15 } as const;
/** Share below which it is out, whatever leaks through it. */
const LIT = 0.05;
/** Times its forward volts that a bare indicator without a resistor can never see for long. */
const BARE = 1.5;

/** One that is judged, with its two nets. */
interface Judged {
  readonly part: ResistorPart | LedPart;
  readonly ends: Passive | DiodeEdge;
  readonly made: number;
}

function find(study: Study): Finding[] {
  const own = study.electrics;
  if (!own) return [];
  const judged = judgedIn(study, own);
  if (judged.length === 0) return [];
  const flows = flowsOf(own);
  return judged.flatMap((one) => {
    const volts = Math.max(0, ...flows.map((f) => voltsAt(f, one)));
    const behind = one.part.kind === 'led' && hasResistor(study.plan, one.part.name);
    return behind ? overfed(study, one, volts) : misfit(study, one, volts);
  });
}

/** An indicator behind a resistor that lets more through than it states. */
function overfed(study: Study, { part, ends }: Judged, volts: number): Finding[] {
  if (part.kind !== 'led' || part.current === undefined || !('anode' in ends)) return [];
  const { drop, ohms } = indicator(study.plan, ends);
  const amps = (volts - drop) / ohms;
  if (amps <= part.current * SHARES.most) return [];
  return [
    found(study.plan, entry, {
      parts: [part.name],
      at: part.where.get('current') ?? part.at,
      message: `${part.name} carries ${ampsText(amps)} and is made for ${ampsText(part.current)}`,
      why: 'The resistor in line is too small; it burns out early, and then tells nothing.',
      fix: `The resistor in line with ${part.name} has to be ${rounded(amps / part.current)} times as large.`,
      figures: [ampsFigure('gets', amps), ampsFigure('made for', part.current)],
      basis: entry.basis,
      twin: { alike: `${rounded(amps)} ${part.current}` },
    }),
  ];
}

/** Lamps that state their volts, bare indicators that state their forward volts, and those behind a resistor that state their current. */
function judgedIn({ plan }: Study, own: Electrics): Judged[] {
  const lamps = own.circuit.passives.flatMap((ends): Judged[] => {
    const part = plan.parts.get(ends.part);
    return part?.kind === 'lamp' && part.rated ? [{ part, ends, made: part.rated.volts }] : [];
  });
  const leds = own.circuit.diodes.flatMap((ends): Judged[] => {
    const part = plan.parts.get(ends.part);
    if (part?.kind !== 'led') return [];
    const judged = hasResistor(plan, part.name) ? part.current : part.forward;
    return judged === undefined ? [] : [{ part, ends, made: part.forward ?? ends.drop }];
  });
  return [...lamps, ...leds];
}

/** Every source as printed, at rest, with each input by itself and with all gates open. */
function flowsOf(own: Electrics): Flows[] {
  const { circuit } = own.v;
  const all = circuit.inputs.filter((i) => i.kind === 'gate').map((i) => i.index);
  const tries = [[], all, ...circuit.inputs.slice(0, FEW).map((i) => [i.index])];
  return own.circuit.sources
    .filter((s) => !s.mains)
    .flatMap((source) =>
      tries.flatMap((moved) => {
        const standing = own.situations.at(moved);
        return standing?.alive[source.index] ? [own.solveSource(source, standing, 'nominal')] : [];
      }),
    );
}

/** Single inputs that are tried; more of them feed a lamp by as much. */
const FEW = 24;

function voltsAt(flows: Flows, { ends }: Judged): number {
  const [a, b] = 'anode' in ends ? [ends.anode, ends.cathode] : [ends.a, ends.b];
  const v = flows.volts(a, b);
  if (v === undefined) return 0;
  return 'anode' in ends ? v.re : Math.hypot(v.re, v.im);
}

function misfit(study: Study, { part, made }: Judged, volts: number): Finding[] {
  const bare = part.kind === 'led';
  const share = volts / made;
  if (bare ? share <= BARE : share < LIT || (share >= SHARES.least && share <= SHARES.most)) return [];
  const [gets, of] = [rounded(volts), rounded(made)];
  const more = share > 1;
  return [
    found(study.plan, entry, {
      parts: [part.name],
      at: part.where.get(bare ? 'forward' : 'rated') ?? part.at,
      message: bare
        ? `${part.name} lies on ${gets} V with no resistor in line and drops ${of} V`
        : `${part.name} gets ${gets} V and is made for ${of} V`,
      why: more ? 'It burns out early, and then tells nothing.' : 'It stays too dim to be seen.',
      fix: bare
        ? `Nothing in line takes the ${rounded(volts - made)} V that are left over.`
        : `It gets ${rounded(Math.abs(volts - made))} V ${more ? 'more' : 'less'} than it is made for.`,
      figures: [
        { name: 'gets', value: gets, unit: 'V' },
        { name: 'made for', value: of, unit: 'V' },
      ],
      basis: entry.basis,
      twin: { alike: bare ? 'bare' : `${gets} ${of}` },
    }),
  ];
}
