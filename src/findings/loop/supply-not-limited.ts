import type { Wire } from '../../circuit/nets.ts';
import { netAt } from '../../circuit/terminals.ts';
import { isMainsOutput } from '../../circuit/thresholds.ts';
import type { BatteryPart, SupplyPart } from '../../plan/part-types.ts';
import { shortCircuitAmps } from '../../ratings/battery.ts';
import { class2Plausible } from '../../ratings/class2.ts';
import { SLACK } from '../../ratings/judgement.ts';
import { ratedAmps } from '../../ratings/supply.ts';
import { controlWireAmps, mostAheadOfFuse } from '../../ratings/wire.ts';
import type { Study } from '../../study/study.ts';
import { metresOf, unfused } from '../../study/unfused-wire.ts';
import { ampsText, rounded } from '../../text/numbers.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import { deviceWords, guardedSources } from '../mains/mains-guards.ts';
import type { Finding } from '../report-model.ts';
import { ampsFigure } from './amps-figure.ts';
import { lowSupplies } from './low-supplies.ts';
import { fuseGuards } from './pinch-limits.ts';

const entry: FindingEntry = {
  id: 'supply-not-limited',
  title: 'nothing limits the current into a pinched cable',
  severity: 'warning',
  question: 5,
  base: 'battery',
  meaning:
    'The supply can drive far more current than thin wire stands, and no fuse sits next to it. A cable pinched by a machine then glows. A battery needs a fuse at its post, and without one it is a warning where it can push more than the wire bears; an adapter marked Class 2 or limited needs none, and one without the mark is a caution. So is a plan that claims the Class 2 mark for a supply stronger than such a one can be.',
  wrong: '  - {cable: twin, length: 2 m, cores: {red: [BAT.+, barA], black: [BAT.-, minus]}}',
  right: extract(
    '  - {cable: twin, length: 15 cm, cores: {red: [BAT.+, F1.1]}}',
    '  - {cable: twin, length: 2 m, cores: {red: [F1.2, barA], black: [BAT.-, minus]}}',
  ),
  basis: 'NEC 725.121(A) (2020; 725.60 in 2023), Chapter 9 Tables 11(A), 11(B); IEC 60364-4-41 clause 414.3',
  followsFrom: ['wire-overloaded'],
};

export const supplyNotLimited: Check = { entry, find };

function find(study: Study): Finding[] {
  const { plan } = study;
  return lowSupplies(plan).flatMap((s) => {
    if (s.kind === 'supply' && s.class2) return plan.practice === 'nec' ? tooStrong(study, s) : [];
    if (!isFused(study, s)) return isLimitedAhead(study, s) ? [] : [unlimited(study, s)];
    const metres = s.kind === 'battery' ? metresAhead(study, s) : 0;
    return s.kind === 'battery' && metres > mostAheadOfFuse(plan.practice) * SLACK
      ? unfusedBattery(study, s, metres)
      : [];
  });
}

/** Whether one of its poles reaches nothing but fuses; what is larger than the wire of a battery's loop is told elsewhere. */
function isFused(study: Study, s: SupplyPart | BatteryPart): boolean {
  return fusedPoles(study, s).some((pole) => s.kind === 'battery' || tooLarge(study, pole) === undefined);
}

/** m of wire on the fused pole that has least ahead of its fuse. */
function metresAhead(study: Study, battery: BatteryPart): number {
  const { plan, wired } = study;
  const metres = fusedPoles(study, battery).map((pole) => {
    return metresOf(wired, unfused(plan, wired, pole));
  });
  return Math.min(...metres);
}

/** Nets, cores apart, of the poles that reach nothing but fuses. */
function fusedPoles({ plan, wired }: Study, s: SupplyPart | BatteryPart): number[] {
  return (s.output.kind === 'dc' ? ['+', '-'] : ['~1', '~2']).flatMap((t) => {
    const net = netAt(wired, s.name, t);
    const reach = net === undefined ? undefined : unfused(plan, wired, net);
    return reach !== undefined && reach.fuses.length > 0 && !reach.reachesSwitch ? [net!] : [];
  });
}

/** A fuse for more than the thinnest wire behind it bears, wherever it stands, leaves a pinched wire to glow. */
function tooLarge(study: Study, pole: number) {
  const { plan, wired } = study;
  const guards = fuseGuards(study, pole);
  const glowing = wired.wires.flatMap((w) => {
    const guard = guards.get(w.a) ?? guards.get(w.b);
    const wire = thinnestOf(study, [w]);
    const fuse = guard?.by === undefined ? undefined : plan.parts.get(guard.by);
    if (fuse?.kind !== 'fuse' || wire === undefined || guard!.need <= wire.amps) return [];
    return [{ fuse, wire }];
  });
  return glowing.length === 0 ? undefined : glowing.reduce((a, b) => (b.wire.amps < a.wire.amps ? b : a));
}

function unlimited(study: Study, s: SupplyPart | BatteryPart): Finding {
  if (s.kind === 'battery') return unfusedBattery(study, s)[0]!;
  const through = unfusedSecondary(study, s);
  if (through) return through;
  const large = fusedPoles(study, s).flatMap((pole) => tooLarge(study, pole) ?? [])[0];
  if (isMainsOutput(s.output) && !large) return openSecondary(study, s);
  const fused = large
    ? `${large.fuse.name} opens above ${ampsText(large.fuse.rating!)}, and the ${large.wire.gauge} wire of its loop is good for ${ampsText(large.wire.amps)}`
    : 'no fuse is next to it';
  return found(study.plan, entry, {
    severity: 'caution',
    parts: [s.name],
    message: `nothing limits the current of ${s.name} into a pinched cable`,
    why: `${s.name} is not stated to be power-limited (class-2) and ${fused}.`,
    fix: `${s.name} has to be marked as limited (Class 2, SELV) or to have a fuse next to it.`,
    basis: entry.basis,
  });
}

/** A secondary at mains volts is no loop that could be limited by its label. */
function openSecondary({ plan }: Study, { name }: SupplyPart): Finding {
  return found(plan, entry, {
    severity: 'caution',
    parts: [name],
    message: `no fuse stands in the secondary of ${name}`,
    why: 'A short behind it is opened by nothing but what stands ahead of its primary, which may be too large to see it.',
    fix: `Put a fuse next to ${name}, in the conductor that is not earthed.`,
    basis: 'NEC 430.72(C), 450.3(B); IEC 60204-1 clause 7.2.4 (from memory)',
  });
}

/** Whether it can push more through its thinnest wire than that bears; a battery of unsaid resistance may. `ahead`: m of wire before its fuse. */
function unfusedBattery(study: Study, battery: BatteryPart, ahead?: number): Finding[] {
  const wire = thinnestBehind(study, battery);
  const amps = shortCircuitAmps(battery);
  const fix = 'Put a fuse at the battery post, of at most what the thinnest wire behind it carries.';
  const no =
    ahead === undefined ? 'no fuse is next to it' : `its fuse stands behind ${rounded(ahead)} m of wire`;
  const about = { parts: [battery.name], basis: entry.basis };
  if (wire === undefined || (amps !== undefined && amps <= wire.amps))
    return [
      found(study.plan, entry, {
        ...about,
        severity: 'caution',
        message: `nothing limits the current of ${battery.name} into a pinched cable`,
        why: `A battery has no limit of its own and ${no}.`,
        fix: 'Put a fuse at the battery post.',
      }),
    ];
  if (amps === undefined)
    return [
      found(study.plan, entry, {
        ...about,
        severity: 'doubt',
        message: `what ${battery.name} can push through a pinched ${wire.gauge} wire cannot be told, and ${no}`,
        why: `A car battery pushes hundreds of amperes; this wire is good for ${ampsText(wire.amps)}.`,
        fix: `${fix} Or state internal-resistance: of ${battery.name}.`,
        figures: [{ name: 'wire', value: wire.amps, unit: 'A' }],
      }),
    ];
  return [
    found(study.plan, entry, {
      ...about,
      message: `${battery.name} can push ${ampsText(amps)} through a pinched ${wire.gauge} wire, and ${no}`,
      why: `The wire is good for ${ampsText(wire.amps)}; it glows along its whole length before anything stops the current.`,
      fix,
      figures: [ampsFigure('can flow', amps), { name: 'wire', value: wire.amps, unit: 'A' }],
      basis: `${entry.basis}; ${wire.basis}`,
    }),
  ];
}

/** The wire on the source's own loop that is good for least. */
function thinnestBehind({ plan, wired }: Study, { name }: SupplyPart | BatteryPart) {
  const source = wired.sources.find((s) => s.part === name);
  const poles = source?.rails.map((r) => unfused(plan, wired, r.net).nets) ?? [];
  return thinnestOf(
    { plan },
    wired.wires.filter((w) => poles.some((nets) => nets.has(w.a))),
  );
}

function thinnestOf({ plan }: Pick<Study, 'plan'>, wires: readonly Wire[]) {
  const rated = wires.flatMap((w) => {
    const cable = plan.runs[w.run]!.cable;
    const good = cable && controlWireAmps(cable);
    return cable && good ? [{ gauge: cable.gauge, ...good }] : [];
  });
  return rated.length === 0 ? undefined : rated.reduce((a, b) => (b.amps < a.amps ? b : a));
}

/** VA below which a control transformer counts as limited by itself, NEC 430.72(C)(3). */
const SMALL_VA = 50;

/** A transformer whose secondary wires have only what stands ahead of its primary: NEC 430.72(B) Exception 2. */
function unfusedSecondary(study: Study, s: SupplyPart): Finding | undefined {
  const wire = thinnestBehind(study, s);
  const guard = aheadOfPrimary(study, s);
  if (ratedAmps(s) * s.output.volts < SMALL_VA || !wire || !guard || guard.amps <= wire.amps)
    return undefined;
  return found(study.plan, entry, {
    parts: [s.name, guard.own.part.name],
    message: `behind ${s.name} nothing opens below ${ampsText(guard.amps)}, and its ${wire.gauge} wire is good for ${ampsText(wire.amps)}`,
    why: `Only ${deviceWords(guard.own)} protects it, which at ${rounded(s.output.volts)} V lets that many amperes through.`,
    fix: `A fuse of at most ${ampsText(wire.amps)} is needed next to ${s.name}, or a supply marked Class 2.`,
    figures: [ampsFigure('opens at', guard.amps), { name: 'wire', value: wire.amps, unit: 'A' }],
    basis: `NEC 430.72(B) Exception 2; IEC 60364-4-43 clause 433.1; ${wire.basis}`,
  });
}

/** What stands ahead of the primary of a transformer, and the A that it lets through on the other side. */
function aheadOfPrimary(study: Study, s: SupplyPart) {
  const feed = study.wired.sources.find((x) => x.part === s.name)?.feed;
  if (s.regulation !== 'transformer' || feed?.by !== 'nets') return undefined;
  const [guard] = guardedSources(study).flatMap(({ live, plug }) => {
    const own = live.get(feed.a) ?? live.get(feed.b);
    return own?.device ? [{ own, amps: (own.device.amps * plug.volts.volts) / s.output.volts }] : [];
  });
  return guard;
}

/** What stands ahead of its primary opens before any wire of its secondary glows: NEC 430.72(B) Exception 2. */
function isLimitedAhead(study: Study, s: SupplyPart | BatteryPart): boolean {
  const guard = s.kind === 'supply' ? aheadOfPrimary(study, s) : undefined;
  const source = guard && study.electrics?.circuit.sources.find((x) => x.part === s.name);
  if (!guard || !source) return false;
  const wire = thinnestOf(study, study.electrics!.islandRound(source).wires);
  return wire !== undefined && guard.amps <= wire.amps;
}

/** Called Class 2, but beyond what such a supply may give. */
function tooStrong({ plan }: Study, s: SupplyPart): Finding[] {
  const highest = Math.max(s.output.volts, s.noLoad ?? 0);
  const verdict = class2Plausible(s, highest);
  if (verdict.ok || verdict.limitAmps === undefined || s.limit === undefined) return [];
  return [
    found(plan, entry, {
      severity: 'caution',
      parts: [s.name],
      at: s.where.get('class-2') ?? s.at,
      message: `${s.name} is called Class 2, but ${rounded(s.limit.amps)} A at ${highest} V is more than such a supply gives`,
      why: `At ${highest} V a Class 2 supply is marked with ${rounded(verdict.limitAmps)} A at most.`,
      fix: `Read the label of ${s.name} again: without the Class 2 mark it has to have a fuse next to it.`,
      figures: [ampsFigure('stated', s.limit.amps), ampsFigure('Class 2', verdict.limitAmps)],
      basis: verdict.basis,
    }),
  ];
}
