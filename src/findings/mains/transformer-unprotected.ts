import { netAt } from '../../circuit/terminals.ts';
import type { SupplyPart } from '../../plan/part-types.ts';
import { SLACK } from '../../ratings/judgement.ts';
import { isTransformer, ratedAmps } from '../../ratings/supply.ts';
import {
  largestAheadOfTransformer,
  type TransformerLimit,
  type TransformerPlace,
} from '../../ratings/transformer.ts';
import type { Study } from '../../study/study.ts';
import { unfused } from '../../study/unfused-wire.ts';
import { ampsText, rounded } from '../../text/numbers.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { deviceWords, type GuardedSource, guardedSources, type MainsGuard } from './mains-guards.ts';

const entry: FindingEntry = {
  id: 'transformer-unprotected',
  title: 'the breaker or fuse ahead is too large for the transformer',
  severity: 'warning',
  question: 7,
  base: 'control-transformer',
  meaning:
    'A small transformer takes a fraction of an ampere, so that the breaker of a motor does not see it when its winding fails or its secondary is overloaded: it cooks until something catches fire. It needs fuses of its own in every line conductor of its primary, sized by its primary current. One marked Class 2, and one below 50 VA within the box of the contactor, need none. Where practice is iec this is not judged: go by the label of the transformer.',
  wrong: extract(
    '  F1: {kind: fuse, rating: 3 A, class: time-delay}',
    '  F2: {kind: fuse, rating: 3 A, class: time-delay}',
  ),
  right: extract(
    '  F1: {kind: fuse, rating: 1 A, class: time-delay}',
    '  F2: {kind: fuse, rating: 1 A, class: time-delay}',
  ),
  basis: 'NEC 430.72(C), 450.3(B)',
  followsBeside: {},
  followsFrom: ['mains-meets-low-voltage', 'mains-through-gate', 'mains-shorted', 'two-feeds'],
};

export const transformerUnprotected: Check = { entry, find };

function find(study: Study): Finding[] {
  const { plan } = study;
  if (plan.practice !== 'nec') return [];
  const transformers = [...plan.parts.values()].filter(
    (p): p is SupplyPart => p.kind === 'supply' && isTransformer(p) && p.class2 !== true,
  );
  return transformers.flatMap((t) => guardedSources(study).flatMap((from) => judged(study, t, from)));
}

function judged(study: Study, transformer: SupplyPart, from: GuardedSource): Finding[] {
  const feed = study.wired.sources.find((s) => s.part === transformer.name)?.feed;
  if (feed?.by !== 'nets') return [];
  const ahead = new Set([feed.a, feed.b].flatMap((net) => from.live.get(net) ?? []));
  if (ahead.size === 0) return [];
  const place = placeOf(study, transformer, from);
  const limit = largestAheadOfTransformer(place);
  if (limit === undefined) return [];
  // Where what stands ahead is not stated, circuit-overloaded asks for it.
  const large = [...ahead].filter((g) => g.device !== undefined && g.device.amps > limit.amps * SLACK);
  return large.map((guard) => tooLarge(study, transformer, { guard, place, limit }));
}

/** V of the winding that is wired: as printed on the tap or the input, else those of the plug. */
function primaryVolts(study: Study, { name, input, taps }: SupplyPart, from: GuardedSource): number {
  const landed = taps?.filter((volts) => {
    const net = netAt(study.wired, name, String(volts));
    return net !== undefined && (from.live.has(net) || from.neutral.has(net));
  });
  return landed?.[0] ?? input?.volts ?? from.plug.volts.volts;
}

function placeOf(study: Study, transformer: SupplyPart, from: GuardedSource): TransformerPlace {
  const { name, output } = transformer;
  const rated = ratedAmps(transformer) * output.volts;
  return {
    primary: rated / primaryVolts(study, transformer, from),
    rated,
    ofMotor: from.ofMotors.size > 0,
    inBox: [...study.plan.parts.values()].some((p) => p.kind === 'box' && p.holds.includes(name)),
    secondary: secondaryOf(study, transformer),
  };
}

/** The fuses that a pole of the secondary reaches before anything else. */
function secondaryOf({ plan, wired }: Study, transformer: SupplyPart): TransformerPlace['secondary'] {
  const { name, output } = transformer;
  const [own] = ['~1', '~2'].flatMap((t) => {
    const net = netAt(wired, name, t);
    const reach = net === undefined ? undefined : unfused(plan, wired, net);
    const ratings = reach?.fuses.map((f) => f.rating) ?? [];
    const all = ratings.every((r) => r !== undefined) ? ratings : [];
    return output.kind === 'ac' && all.length > 0 && !reach!.reachesSwitch ? [Math.max(...all)] : [];
  });
  return own === undefined ? undefined : { device: own, amps: ratedAmps(transformer) };
}

interface TooLarge {
  readonly guard: MainsGuard;
  readonly place: TransformerPlace;
  readonly limit: TransformerLimit;
}

function tooLarge({ plan }: Study, { name, at }: SupplyPart, { guard, place, limit }: TooLarge): Finding {
  const most = rounded(limit.amps);
  return found(plan, entry, {
    parts: [guard.part.name, name],
    at: guard.part.kind === 'fuse' ? (guard.part.where.get('rating') ?? guard.part.at) : at,
    message: `${deviceWords(guard)} is too large for transformer ${name}: ${ampsText(most)} at most`,
    why: `With all its ${rounded(place.rated)} VA ${name} takes ${ampsText(rounded(place.primary))}; a winding that fails burns long before this opens.`,
    fix: `A fuse of at most ${ampsText(most)} is needed in each line conductor to ${name}, or a transformer marked Class 2.`,
    figures: [
      { name: 'ahead', value: rounded(guard.device!.amps, 4), unit: 'A' },
      { name: 'most', value: most, unit: 'A' },
    ],
    basis: limit.basis,
    twin: { name: guard.part.name, alike: `${name}/${most}/${guard.device!.amps}` },
  });
}
