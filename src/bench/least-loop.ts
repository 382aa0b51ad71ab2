/** The least supply, fuse and cable, by the checks of the loop and of the mains side. */
import { checkBranch } from '../checks/branch.ts';
import { checkCoils, electricsOf } from '../checks/coil.ts';
import { checkCords } from '../checks/cords.ts';
import { checkLoop } from '../checks/loop.ts';
import type { Study } from '../checks/study.ts';
import { checkWires } from '../checks/wires.ts';
import type { Cable, FusePart, Plan, SupplyPart } from '../plan/plan.ts';
import { thickerSizes } from '../ratings/wire.ts';
import type { Finding } from '../report/model.ts';
import type { CableGroup } from './cuts.ts';
import { leastOf, withParts } from './least.ts';
import type { LeastRating, LeastRatings } from './materials-model.ts';

/** Usual sizes of adapters (A), of transformers (VA) and of fuses (A); common practice. */
export const SUPPLY_AMPS = [
  0.1, 0.2, 0.3, 0.5, 0.6, 0.8, 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 15, 20,
] as const;
export const SUPPLY_VA = [5, 10, 15, 20, 30, 40, 50, 75, 100, 150, 200, 250, 300, 500] as const;
export const FUSE_AMPS = [
  ...[0.1, 0.125, 0.16, 0.2, 0.25, 0.315, 0.4, 0.5, 0.63, 0.8, 1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8, 10],
  ...[12.5, 16, 20],
] as const;

const COIL_IDS = ['coil-too-low', 'coil-thin-margin', 'coil-drops-at-start'];
const num = (x: number): string => `${Number(x.toPrecision(4))}`;

/** Findings of the coils and of the loop, each once worked out. */
function coilFindings(s: Study) {
  const electrics = electricsOf(s);
  const coils = checkCoils(s, electrics);
  const low = coils.findings.filter((f) => COIL_IDS.includes(f.id));
  return { electrics, coils, low };
}

/** The supply with another limit, in A or in VA as it is sold. */
export function withLimit(part: SupplyPart, size: number): SupplyPart {
  const ac = part.output.kind === 'ac';
  const amps = ac ? size / part.output.volts : size;
  return { ...part, limit: { amps, printed: ac ? 'VA' : 'A', value: size } };
}

function judgeSupply(names: readonly string[]): (s: Study) => Finding[] {
  return (s) => {
    const { coils, low } = coilFindings(s);
    const fed = coils.states.filter((x) => names.includes(x.fed.source.part)).map((x) => x.fed.part.name);
    const load = checkLoop(s, coils.states).filter(
      (f) => f.id === 'supply-overloaded' && names.includes(f.parts[0] ?? ''),
    );
    return [...load, ...low.filter((f) => f.parts.some((p) => fed.includes(p)))];
  };
}

/** Undecided circuits are not judged at all; nothing found in them means nothing. */
const UNDECIDED: LeastRatings = {
  least: [],
  untold: ['which states feed the coils was not decided'],
};

/** The least output of equal supplies. */
export function leastSupply(study: Study, names: readonly string[], part: SupplyPart): LeastRatings {
  if (study.verified === undefined) return UNDECIDED;
  const ac = part.output.kind === 'ac';
  const found = leastOf<number>(study, {
    sizes: ac ? SUPPLY_VA : SUPPLY_AMPS,
    plan: (size) => withParts(study.plan, names, (p) => (p.kind === 'supply' ? withLimit(p, size) : p)),
    judge: judgeSupply(names),
  });
  if ('untold' in found) return { least: [], untold: [found.untold] };
  const unit = ac ? 'VA' : 'A';
  const words = `${num(found.size)} ${unit} at ${num(part.output.volts)} V ${part.output.kind.toUpperCase()}`;
  return { least: [{ what: 'output', value: found.size, unit, words }], untold: [] };
}

/** From the least fuse that its loop does not blow to the largest that the wire bears. */
export function leastFuse(study: Study, names: readonly string[]): LeastRatings {
  if (study.verified === undefined) return UNDECIDED;
  const judge = (id: string) => (s: Study) => {
    const { electrics, coils } = coilFindings(s);
    return checkWires(s, electrics, coils.states).filter(
      (f) => f.id === id && names.includes(f.parts[0] ?? ''),
    );
  };
  const plan = (rating: number) =>
    withParts(study.plan, names, (p): FusePart | typeof p => (p.kind === 'fuse' ? { ...p, rating } : p));
  const least = leastOf<number>(study, { sizes: FUSE_AMPS, plan, judge: judge('fuse-too-small') });
  const most = leastOf<number>(study, {
    sizes: [...FUSE_AMPS].reverse(),
    plan,
    judge: judge('wire-overloaded'),
  });
  const rating = (what: string, value: number): LeastRating => ({
    ...{ what, value, unit: 'A' },
    words: `${what === 'most' ? 'at most ' : ''}${num(value)} A`,
  });
  return {
    least: [
      ...('size' in least ? [rating('rating', least.size)] : []),
      ...('size' in most && most.index > 0 ? [rating('most', most.size)] : []),
    ],
    untold: [least, most].flatMap((l) => ('untold' in l ? [l.untold] : [])),
  };
}

/** The plan with the runs of one cable in another. */
export function withCable(plan: Plan, runs: ReadonlySet<number>, cable: Cable): Plan {
  return { ...plan, runs: plan.runs.map((r) => (runs.has(r.index) ? { ...r, cable } : r)) };
}

/** All sizes of the cable's own system, thinnest first. */
export function sizesOf(cable: Cable): readonly Cable[] {
  return thickerSizes({ ...cable, area: 0 });
}

/** The thinnest size of one cable; `sides` says what its runs carry. */
export function leastCable(
  study: Study,
  group: CableGroup,
  sides: { readonly mains: boolean; readonly low: boolean },
): LeastRatings {
  if (study.verified === undefined) return UNDECIDED;
  const runs = new Set(group.runs.map((r) => r.index));
  const judge = (s: Study): Finding[] => {
    const { electrics, coils, low } = coilFindings(s);
    return [
      ...(sides.low
        ? [...low, ...checkWires(s, electrics, coils.states).filter((f) => f.id !== 'fuse-too-small')]
        : []),
      ...(sides.mains
        ? [...checkBranch(s), ...checkCords(s, electrics)].filter((f) => f.id === 'cord-too-thin')
        : []),
    ];
  };
  const found = leastOf(study, {
    sizes: sizesOf(group.cable),
    // The checks tell one cable from another by its gauge, so the one that is tried has a gauge of its own.
    plan: (c) => withCable(study.plan, runs, { ...c, gauge: `${c.gauge} as ${group.name}` }),
    judge,
  });
  if ('untold' in found) return { least: [], untold: [found.untold] };
  if (found.index === 0 && sides.mains)
    return { least: [], untold: ['nothing that the checks look at limits how thin it may be'] };
  const { gauge, area, awg } = found.size;
  const [value, unit] = awg === undefined ? [Number((area * 1e6).toPrecision(4)), 'mm2'] : [awg, 'AWG'];
  const thinnest = found.index === 0 ? ', the thinnest in the tables' : ' or thicker';
  // No check sets a flexible cord against the breaker ahead of it, so this figure is no leave to go that thin.
  const end = sides.mains ? `${thinnest} for the load; the breaker ahead of it may ask for more` : thinnest;
  return { least: [{ what: 'gauge', value, unit, words: `${gauge}${end}` }], untold: [] };
}
