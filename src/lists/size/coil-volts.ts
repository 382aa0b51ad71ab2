/** The same loop with coils and supply for other volts and the other kind of current, side by side. */

import type { FindingId } from '../../findings/finding-ids.ts';
import { supplyDraw } from '../../findings/loop/supply-draws.ts';
import type { Finding } from '../../findings/report-model.ts';
import type { Coil, CurrentKind } from '../../plan/device-figures.ts';
import type { RelayPart, SupplyPart } from '../../plan/part-types.ts';
import type { Plan } from '../../plan/plan.ts';
import { withoutUndefined } from '../../plan/without-undefined.ts';
import { ratedAmps } from '../../ratings/supply.ts';
import { completed } from '../../ratings/unsaid/ends.ts';
import { unsaidIn } from '../../ratings/unsaid/unsaid.ts';
import { version } from '../../repair/remedies/coil-remedy.ts';
import { outputAs, withoutDiodes } from '../../repair/remedies/other-kind.ts';
import { withCoil, withLimit, withParts } from '../../repair/remedies/put.ts';
import { SUPPLY_AMPS, SUPPLY_VA } from '../../repair/remedies/series.ts';
import { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { loopGauges, loopRuns, tightestCoil } from './loop-way.ts';
import type { CoilChoice, Limit, Size } from './size-model.ts';
import { firstGood } from './tight.ts';
import { type Questions, Trial } from './trial.ts';
import { withGauge } from './wires.ts';

/** V of coils as relays are sold with them for loops; common practice. */
const VOLTS = [12, 24, 48] as const;
const KINDS: readonly CurrentKind[] = ['dc', 'ac'];
/** Share of its limit that a supply is chosen to give at pull-in; above it a caution says so. */
const EASY = 0.8;
/** Findings told against one choice. */
const MOST_TOLD = 3;

const LOOP: Questions = [4, 5];
/** What thicker wire may do away with. */
const OF_WIRE: ReadonlySet<string> = new Set<FindingId>([
  'coil-too-low',
  'coil-drops-at-start',
  'not-as-joined',
  'wire-overloaded',
]);

/** What is exchanged: a supply and the relays it feeds. */
interface Loop {
  readonly supply: SupplyPart;
  readonly relays: readonly RelayPart[];
}

interface Rated {
  readonly volts: number;
  readonly kind: CurrentKind;
}

function loopOfCoil({ study }: Trial): Loop | { readonly untold: string } {
  const state = tightestCoil(study);
  const supply = state && study.plan.parts.get(state.fed.source.part);
  if (state === undefined || supply === undefined) return { untold: 'no coil is fed by a loop of its own' };
  if (supply.kind !== 'supply')
    return { untold: `${supply.name} is a ${supply.kind}, whose volts cannot be chosen so` };
  const fed = study.fedCoils.filter((c) => c.source.part === supply.name).map((c) => c.part);
  const others = [...new Set(fed)].filter((p) => p.kind !== 'relay' || p.coil.upTo !== undefined);
  if (others.length > 0)
    return {
      untold: `${listOf(others.map((p) => p.name))} would have to be another part, not the same with another coil`,
    };
  return { supply, relays: [...new Set(fed)] as RelayPart[] };
}

/** A coil of which only the volts are known, for the other kind of current. */
function otherCoil(rated: Rated): Coil {
  return { rated, suppressor: rated.kind === 'dc' ? 'varistor' : 'none' };
}

/** The plan with the supply's output on terminals of the other kind, and without diodes across coils on AC. */
function onKind(study: Study, { supply, relays }: Loop, kind: CurrentKind): Plan {
  const names = relays.map((r) => r.name);
  return outputAs(kind === 'dc' ? study.plan : withoutDiodes(study, names), supply.name, kind);
}

/** A supply of those volts and of at least the power of the plan's: like it, or regulated on DC and a transformer on AC. */
function supplyOf(own: SupplyPart, rated: Rated): SupplyPart {
  const { noLoad, tolerance, regulation: kept, frequency: _f, limit: _l, ...rest } = own;
  const ac = rated.kind === 'ac';
  const same = rated.kind === own.output.kind;
  const power = own.output.volts * ratedAmps(own);
  const wanted = ac ? power : power / rated.volts;
  const sizes: readonly number[] = ac ? SUPPLY_VA : SUPPLY_AMPS;
  const size = sizes.find((s) => s >= wanted * (1 - 1e-9)) ?? sizes.at(-1)!;
  const usual = ac ? ('transformer' as const) : ('regulated' as const);
  const like = withoutUndefined({
    regulation: same ? kept : usual,
    tolerance: same ? tolerance : undefined,
    noLoad: same && noLoad !== undefined ? (noLoad * rated.volts) / own.output.volts : undefined,
  });
  return withLimit({ ...rest, ...like, output: rated }, size);
}

/** The plan with coils and supply for these volts, what is not known of them at the worse end. */
function chosen(study: Study, loop: Loop, rated: Rated): Plan {
  const { supply, relays } = loop;
  const same = rated.kind === supply.output.kind;
  const base = same ? study.plan : onKind(study, loop, rated.kind);
  const names = new Set([supply.name, ...relays.map((r) => r.name)]);
  let plan = withParts(base, [supply.name], (p) => (p.kind === 'supply' ? supplyOf(p, rated) : p));
  for (const relay of relays)
    plan =
      same && relay.coil.rated.kind === rated.kind
        ? version(relay, rated.volts).apply(plan)
        : withParts(plan, [relay.name], (p) => (p.kind === 'relay' ? withCoil(p, otherCoil(rated)) : p));
  const own = (of: Plan) =>
    unsaidIn(of).filter((u) => u.parts.length > 0 && u.parts.every((p) => names.has(p)));
  const worse = completed(plan, own(plan), 'few');
  return withParts(worse, [supply.name], (p) => (p.kind === 'supply' ? strongEnough(worse, p) : p));
}

/** The next size that gives what its coils draw at pull-in without strain. */
function strongEnough(plan: Plan, part: SupplyPart): SupplyPart {
  const study = Study.of(plan);
  const source = study.circuit.sources.find((s) => s.part === part.name);
  const draw = source && supplyDraw(study, study.fedCoils, source);
  const ac = part.output.kind === 'ac';
  const wanted = ((draw?.amps ?? 0) / EASY) * (ac ? part.output.volts : 1);
  if ((part.limit?.value ?? 0) >= wanted) return part;
  const sizes: readonly number[] = ac ? SUPPLY_VA : SUPPLY_AMPS;
  return withLimit(part, sizes.find((s) => s >= wanted) ?? sizes.at(-1)!);
}

const isOwnRated = ({ supply, relays }: Loop, { volts, kind }: Rated): boolean =>
  [supply.output, ...relays.map((r) => r.coil.rated)].every((v) => v.volts === volts && v.kind === kind);

function choiceOf(trial: Trial, loop: Loop, rated: Rated): CoilChoice {
  const own = isOwnRated(loop, rated);
  const text = `${rated.volts} V ${rated.kind.toUpperCase()}`;
  const study = own ? trial.study : Study.of(chosen(trial.study, loop, rated));
  const state = study.verified && tightestCoil(study);
  const nothing = { least: null, pullIn: null, amps: null, gauge: null, against: [] };
  if (!state) return { ...rated, own, ...nothing, untold: study.undecided ?? 'no coil is fed then' };
  const row = state.rows.reduce((a, b) => (b.least < a.least ? b : a));
  const source = study.circuit.sources.find((s) => s.part === loop.supply.name)!;
  const sub = own ? trial : new Trial(study);
  const stood = new Set(trial.findings.map((f) => f.id));
  const told = (f: Finding): Limit => ({ check: f.id, at: text, message: f.message });
  const against = sub.open().filter((f) => own || !stood.has(f.id));
  return {
    ...rated,
    own,
    least: row.least,
    pullIn: state.pullIn,
    amps: supplyDraw(study, study.fedCoils, source)?.amps ?? null,
    gauge: gaugeFor(sub),
    against: against.slice(0, MOST_TOLD).map(told),
    untold: null,
  };
}

/** The thinnest wire of the loop with which the checks of questions 4 and 5 have nothing against it. */
function gaugeFor(sub: Trial): string | null {
  const runs = new Set(loopRuns(sub.study).map((r) => r.index));
  const sizes = loopGauges(sub.study);
  if (sizes.length === 0) return null;
  // What stands with its own wire and is not about wire stands with any.
  const first = sub.first(sub.study, LOOP);
  const all = first === undefined || OF_WIRE.has(first.id) ? [] : sub.quick(sub.study, LOOP);
  const stood = new Set(all.map((f) => f.id).filter((id) => !OF_WIRE.has(id)));
  const passes = (i: number) => {
    const study = sub.with(withGauge(sub.study.plan, runs, sizes[i]!));
    if (stood.size === 0) return sub.first(study, LOOP) === undefined;
    return sub.quick(study, LOOP).every((f) => stood.has(f.id));
  };
  return sizes[firstGood(sizes.length, passes, 0)]?.gauge ?? null;
}

/** Coils of 12, 24 and 48 V, DC and AC, in the loop as it is laid. */
export function sizeCoils(trial: Trial): Size['coils'] {
  const loop = loopOfCoil(trial);
  if ('untold' in loop) return { rows: [], taken: [], untold: [loop.untold] };
  const listed = KINDS.flatMap((kind) => VOLTS.map((volts) => ({ volts, kind })));
  const own = loop.supply.output;
  const all = listed.some((r) => isOwnRated(loop, r)) || !isOwnRated(loop, own) ? listed : [own, ...listed];
  const rows = all.map((rated) => choiceOf(trial, loop, rated));
  const { kind } = own;
  const other = kind === 'dc' ? 'AC' : 'DC';
  const taken = [
    `coils of ${listOf(loop.relays.map((r) => r.name))} and the output of ${loop.supply.name} are exchanged together, all wire stays`,
    `on ${kind.toUpperCase()} each coil keeps its power and its shares of rated volts; of coils for ${other} the worse end of what such coils have is taken`,
    `a supply of ${kind.toUpperCase()} is taken as the one in the plan is, ${other === 'AC' ? 'one of AC as a transformer' : 'one of DC as regulated'}; each of at least its power and large enough for its coils at pull-in`,
    ...(kind === 'dc'
      ? ['for AC, diodes across coils are taken out: on AC they would be a short']
      : ['for DC, each coil is taken with a varistor built in']),
  ];
  return { rows, taken, untold: [] };
}
