/** What the loop's wires and fuses carry, and what is lost in them. */
import type { Source } from '../../circuit/circuit.ts';
import type { Figures } from '../../electric/island.ts';
import type { Cable, SupplyPart } from '../../plan/plan.ts';
import { controlWireAmps, thickerSizes } from '../../ratings/wire.ts';
import { coilImpedance } from '../../study/coil-models.ts';
import type { CoilRow } from '../../study/coil-rows.ts';
import type { CoilState } from '../../study/coil-states.ts';
import { figuresFor } from '../../study/corner-figures.ts';
import type { Electrics } from '../../study/electrics.ts';
import { loopOf, ohmsWith } from '../../study/loop-path.ts';
import type { Study } from '../../study/study.ts';
import { unfused } from '../../study/unfused-wire.ts';
import { ampsText, rounded } from '../../text/numbers.ts';
import { finding } from '../finding.ts';
import type { Finding } from '../report-model.ts';

/** Share of the supply's volts that may be lost in the wire. */
const MOST_LOST = 0.1;

export function checkWires(
  study: Study,
  own: Electrics | undefined,
  states: readonly CoilState[],
): Finding[] {
  if (!own) return [];
  return [
    ...own.circuit.sources.filter((s) => !s.mains).flatMap((s) => overloadedWires(study, own, s)),
    ...states.flatMap((s) => dropLarge(study, own, s)),
  ];
}

/** Current in every wire and fuse with everything in, against what it carries; and what stands behind a short. */
function overloadedWires(study: Study, own: Electrics, source: Source): Finding[] {
  const part = study.plan.parts.get(source.part)!;
  const behind = limits(study, own, source);
  const busiest = busiestFlows(own, source);
  const found: Finding[] = [];
  const judged = new Map<
    string,
    { amps: number; basis: string; limit: number; by: string; runs: number[]; carries: number }
  >();
  for (const w of busiest.flows.island.wires) {
    const cable = study.plan.runs[w.run]!.cable;
    const carries = cable && controlWireAmps(cable);
    if (!cable || !carries) continue;
    const i = busiest.flows.amps(w);
    const amps = i ? Math.hypot(i.re, i.im) : 0;
    const limit = behind(w.a, w.b);
    const worst = amps > carries.amps + 1e-9 ? amps : (limit?.amps ?? 0);
    if (worst <= carries.amps + 1e-9) continue;
    const by = amps > carries.amps + 1e-9 ? '' : limit!.by;
    const key = `${cable.gauge}/${by}`;
    const known = judged.get(key);
    if (known) known.runs.push(w.run);
    else judged.set(key, { ...carries, limit: worst, by, runs: [w.run], carries: carries.amps });
  }
  for (const [key, j] of judged) {
    const gauge = key.split('/')[0]!;
    const run = study.plan.runs[j.runs[0]!]!;
    const fuse = study.plan.parts.get(j.by);
    const names = [
      ...new Set(j.runs.flatMap((r) => study.plan.runs[r]!.cores.flatMap((c) => [c.a.part, c.b.part]))),
    ];
    found.push(
      finding(study.plan, {
        id: 'wire-overloaded',
        severity: 'fault',
        question: 5,
        parts: j.by === '' ? [source.part, ...names] : [j.by, ...names],
        at: fuse?.where.get('rating') ?? run.at,
        message:
          j.by === ''
            ? `${gauge} wire carries ${ampsText(j.limit)}; it is good for ${ampsText(j.carries)}`
            : fuse?.kind === 'fuse'
              ? `fuse ${j.by} of ${ampsText(j.limit)} lets a pinched ${gauge} wire carry more than its ${ampsText(j.carries)}`
              : `${j.by} can push ${ampsText(j.limit)} through a pinched ${gauge} wire, which is good for ${ampsText(j.carries)}`,
        why:
          j.by === ''
            ? `With every coil in that can be in together, from ${source.part}.`
            : 'The wire gets hot before anything stops the current.',
        fix: wireFix(study, j, gauge, part.name),
        figures: [
          { name: 'current', value: rounded(j.limit), unit: 'A' },
          { name: 'wire', value: j.carries, unit: 'A' },
        ],
        basis: j.basis,
      }),
    );
  }
  return [...found, ...smallFuses(study, source, busiest)];
}

function wireFix(
  study: Study,
  j: {
    readonly limit: number;
    readonly carries: number;
    readonly by: string;
    readonly runs: readonly number[];
  },
  gauge: string,
  supply: string,
): string {
  const cable = study.plan.runs[j.runs[0]!]!.cable!;
  const thicker = thickerSizes(cable).find((c) => (controlWireAmps(c)?.amps ?? 0) >= j.limit - 1e-9);
  const wire = thicker ? `use ${thicker.gauge} instead of ${gauge}` : 'split the loop over more wires';
  if (j.by === '') return `${wire.charAt(0).toUpperCase()}${wire.slice(1)}.`;
  const fuse = `Put a fuse of at most ${ampsText(j.carries)} next to ${supply}`;
  return study.plan.parts.get(j.by)?.kind === 'fuse'
    ? `Fit a fuse of at most ${ampsText(j.carries)} as ${j.by}; or ${wire}.`
    : `${fuse}; or ${wire}.`;
}

/**
 * The state in which the source gives most, pulled in. More closed contacts give more current (Rayleigh), so all gates
 * open, with and without what else a coil needs, and rest bound it; single states are tried for a few gates only.
 */
function busiestFlows(own: Electrics, source: Source) {
  const { circuit } = own.v;
  const all = circuit.inputs.filter((i) => i.kind === 'gate').map((i) => i.index);
  const single = circuit.relays.flatMap((r) => own.statesFor(r).slice(0, FEW));
  const tries = [[], all, ...single, ...single.map((moved) => union(all, moved))];
  let best: { flows: ReturnType<Electrics['solveSource']>; amps: number } | undefined;
  const seen = new Set<string>();
  for (const moved of tries) {
    if (seen.has(moved.join())) continue;
    seen.add(moved.join());
    const standing = own.situations.at(moved);
    if (!standing) continue;
    const flows = own.solveSource(source, standing, 'strong');
    const i = flows.sourceAmps(source);
    const amps = Math.hypot(i.re, i.im);
    if (!best || amps > best.amps) best = { flows, amps };
  }
  return best ?? { flows: own.solveSource(source, own.situations.atRest, 'strong'), amps: 0 };
}

/** Single states a relay that are tried beside all gates open. */
const FEW = 4;

const union = (a: readonly number[], b: readonly number[]): number[] =>
  [...new Set([...a, ...b])].sort((x, y) => x - y);

/** A fuse that its own loop blows. */
function smallFuses(study: Study, source: Source, busiest: ReturnType<typeof busiestFlows>): Finding[] {
  const found: Finding[] = [];
  for (const c of busiest.flows.island.contacts) {
    const fuse = study.plan.parts.get(c.part);
    if (fuse?.kind !== 'fuse') continue;
    const i = busiest.flows.amps(c);
    const amps = i ? Math.hypot(i.re, i.im) : 0;
    if (amps <= fuse.rating + 1e-9) continue;
    found.push(
      finding(study.plan, {
        id: 'fuse-too-small',
        severity: 'fault',
        question: 5,
        parts: [fuse.name, source.part],
        at: fuse.where.get('rating') ?? fuse.at,
        message: `fuse ${fuse.name} of ${ampsText(fuse.rating)} has to carry ${ampsText(amps)} and blows`,
        why: 'That is the current with every coil pulled in that can be in together.',
        fix: `Fit a slow fuse above ${ampsText(amps)}, but not above what the wire carries.`,
        figures: [
          { name: 'current', value: rounded(amps), unit: 'A' },
          { name: 'fuse', value: fuse.rating, unit: 'A' },
        ],
        basis: 'common practice: wire at least as good as the fuse, fuse above the holding current',
      }),
    );
  }
  return found;
}

interface Limit {
  readonly amps: number;
  /** fuse or supply */
  readonly by: string;
}

/**
 * What limits the current into a wire when it is pinched: a fuse, where one of the supply's poles reaches nothing but
 * fuses before it, else the supply's own limit. A power-limited (Class 2) supply needs no fuse; a battery has no limit
 * that is known, which is a finding of its own.
 */
function limits(study: Study, own: Electrics, source: Source): (a: number, b: number) => Limit | undefined {
  const part = study.plan.parts.get(source.part);
  const supply: Limit | undefined =
    part?.kind === 'supply' && part.class2 !== true ? { amps: part.limit.amps, by: part.name } : undefined;
  const poles = source.rails.map((r) => unfused(study.plan, own.circuit, r.net));
  const fused = poles.find((p) => p.fuses.length > 0 && !p.reachesSwitch);
  const fuse = fused?.fuses.reduce((x, y) => (y.rating > x.rating ? y : x));
  const behindFuse: Limit | undefined = fuse && { amps: fuse.rating, by: fuse.name };
  return (a, b) => {
    if (!fused || fused.nets.has(a) || fused.nets.has(b)) return supply;
    if (!behindFuse || !supply) return behindFuse;
    return behindFuse.amps < supply.amps ? behindFuse : supply;
  };
}

/** Over a tenth of the supply lost on the way at the farthest gate, at the current with which the coil pulls in. */
function dropLarge(study: Study, own: Electrics, state: CoilState): Finding[] {
  const { part, source, supply, model } = state.fed;
  if (!supply || (model.ohms === undefined && part.kind !== 'board')) return [];
  const owner = study.plan.parts.get(source.part) as SupplyPart;
  const rated = owner.output.volts;
  const z = coilImpedance(study.plan, part, 'nominal', false);
  const lost = (row: CoilRow, ohms: number) => (ohms * row.nominal) / Math.hypot(z!.re, z!.im);
  const rows = state.rows.flatMap((row) => {
    const { ohms, metres } = loopOf(own, state, row);
    return ohms === undefined || !z ? [] : [{ row, ohms, metres, volts: lost(row, ohms) }];
  });
  if (rows.length === 0) return [];
  const far = rows.reduce((x, y) => (y.volts > x.volts ? y : x));
  if (far.volts <= MOST_LOST * rated + 1e-9) return [];
  const thinnest = thinnestIn(study, own, state);
  const volts = (figures: Figures) => own.coilVoltsWith(state.relay, far.row.leastIn, figures);
  const better = thinnest
    ? thickerSizes(thinnest).find((c) => {
        const cableOf = (run: number) => {
          const cable = study.plan.runs[run]!.cable;
          return cable && cable.area < c.area ? c : undefined;
        };
        const figures = figuresFor(study.plan, 'nominal', { cableOf });
        const ohms = ohmsWith(own, state, far.row, figures);
        return ohms * (volts(figures) / Math.hypot(z!.re, z!.im)) <= MOST_LOST * rated;
      })
    : undefined;
  return [
    finding(study.plan, {
      id: 'drop-large',
      severity: 'caution',
      question: 5,
      parts: [far.row.gate ?? part.name, part.name],
      message: `${rounded(far.volts)} V of ${rated} V stay in the wire${far.row.gate ? ` when ${far.row.gate} starts ${part.name}` : ` to ${part.name}`}`,
      why: `${far.metres === undefined ? 'Its' : `${rounded(far.metres)} m of conductor, there and back, with contacts`} have ${rounded(far.ohms)} ohm at 20 °C; the coil takes ${ampsText(far.volts / far.ohms)}${model.kind === 'ac' ? ' while its armature is open' : ''}.`,
      fix: better
        ? `Use ${better.gauge} instead of ${thinnest!.gauge}, or a relay that draws less.`
        : 'Use thicker wire, a shorter run, or a relay that draws less.',
      figures: [
        { name: 'lost', value: rounded((far.volts / rated) * 100), unit: '%' },
        { name: 'most', value: MOST_LOST * 100, unit: '%' },
      ],
      basis: 'ASTM B258 or IEC 60228 resistance; 10 % is common practice',
    }),
  ];
}

function thinnestIn(study: Study, own: Electrics, state: CoilState): Cable | undefined {
  const cables = own.islandOf(state.relay)!.wires.flatMap((w) => study.plan.runs[w.run]!.cable ?? []);
  return cables.length === 0 ? undefined : cables.reduce((x, y) => (y.area < x.area ? y : x));
}
