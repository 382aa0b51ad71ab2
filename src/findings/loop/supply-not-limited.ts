import { netAt } from '../../circuit/terminals.ts';
import type { BatteryPart, SupplyPart } from '../../plan/part-types.ts';
import { class2Plausible } from '../../ratings/class2.ts';
import type { Study } from '../../study/study.ts';
import { unfused } from '../../study/unfused-wire.ts';
import { rounded } from '../../text/numbers.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { ampsFigure } from './amps-figure.ts';
import { lowSupplies } from './low-supplies.ts';

const entry: FindingEntry = {
  id: 'supply-not-limited',
  title: 'nothing limits the current into a pinched cable',
  severity: 'caution',
  question: 5,
  base: 'battery',
  meaning:
    'The supply can drive far more current than thin wire stands, and no fuse sits next to it. A cable pinched by a machine then glows. A battery always needs a fuse at its post; an adapter marked Class 2 or limited needs none. A plan that claims the Class 2 mark for a supply stronger than such a one can be gets this caution too.',
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
    return isFused(study, s) ? [] : [unlimited(study, s)];
  });
}

/** Whether one of its poles reaches nothing but fuses. */
function isFused({ plan, circuit }: Study, s: SupplyPart | BatteryPart): boolean {
  return (s.output.kind === 'dc' ? ['+', '-'] : ['~1', '~2']).some((t) => {
    const net = netAt(circuit, s.name, t);
    const reach = net === undefined ? undefined : unfused(plan, circuit, net);
    return reach !== undefined && reach.fuses.length > 0 && !reach.reachesSwitch;
  });
}

function unlimited({ plan }: Study, s: SupplyPart | BatteryPart): Finding {
  const battery = s.kind === 'battery';
  return found(plan, entry, {
    parts: [s.name],
    message: `nothing limits the current of ${s.name} into a pinched cable`,
    why: battery
      ? 'A battery has no limit of its own and no fuse is next to it.'
      : `${s.name} is not stated to be power-limited (class-2) and no fuse is next to it.`,
    fix: battery
      ? `${s.name} has to have a fuse at its post.`
      : `${s.name} has to be marked as limited (Class 2, SELV) or to have a fuse next to it.`,
    basis: entry.basis,
  });
}

/** Called Class 2, but beyond what such a supply may give. */
function tooStrong({ plan }: Study, s: SupplyPart): Finding[] {
  const highest = Math.max(s.output.volts, s.noLoad ?? 0);
  const verdict = class2Plausible(s, highest);
  if (verdict.ok || verdict.limitAmps === undefined) return [];
  return [
    found(plan, entry, {
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
