import { sayMoved } from '../../circuit/input-words.ts';
import { isContactor } from '../../circuit/thresholds.ts';
import { baseState } from '../../logic/entry-states.ts';
import type { Moved } from '../../logic/verify.ts';
import { lengthUnit } from '../../plan/length-unit.ts';
import { type Coiled, modelOf } from '../../study/coil-models.ts';
import { coilNets, type Electrics } from '../../study/electrics.ts';
import type { Study } from '../../study/study.ts';
import { figureOfLength } from '../../text/lengths.ts';
import { rounded } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'coil-holds-in',
  title: 'leakage keeps the relay in',
  severity: 'fault',
  question: 4,
  ofWiring: true,
  base: 'dc-chain',
  meaning:
    'With all gates shut some current still passes through the coil: by a lamp across a switch, through a solid-state output that is off, or from core to core along a long cable at mains voltage. It is too little to pull the relay in and can be enough to keep it in, so the load does not stop. Put the lamp across the coil, a resistor beside the coil of a leaky output, and keep long cables at 24 V.',
  wrong: extract('  - {link: [pilot.1, feed]}', '  - {link: [pilot.2, call]}'),
  right: extract('  - {link: [pilot.1, K1.A1]}', '  - {link: [pilot.2, K1.A2]}'),
  basis: 'drop-out as printed, or the usual must-release figure; long cable from 90 m, common practice',
  followsFrom: ['coil-in-series', 'polarity-reversed', 'diode-backwards'],
  goneByOneMove: true,
};

export const coilHoldsIn: Check = { entry, find };

/** m of cable from which its capacitance is reported to hold a mains-voltage coil in; common practice, no source. */
const LONG_CABLE = 90;
/** V of a coil from which that counts */
const MAINS_COIL = 100;

function find(study: Study): Finding[] {
  const own = study.electrics;
  if (!own) return [];
  return own.circuit.relays.flatMap((relay) => {
    const part = study.plan.parts.get(relay.part) as Coiled;
    // A board switches its coil inside; what its supply terminals see tells nothing.
    // Nor does that of a timer which is always fed and told by its trigger.
    if (relay.senses.some((s) => s.by === 'volts' && s.what === 'supply')) return [];
    if (part.kind === 'board' || !coilNets(relay) || !own.islandOf(relay)) return [];
    const leaking = restStates(own).flatMap((moved) => leaks(study, own, relay.index, moved));
    return leaking.length > 0 ? leaking.slice(0, 1) : longCable(study, own, relay.index, part);
  });
}

/** Everything at rest; and with what unblocks each load moved, where that differs. */
function restStates(own: Electrics): Moved[] {
  const states = [[] as Moved, ...own.v.intents.wanted.map((w) => baseState(own.v, w))];
  return [...new Map(states.map((s) => [s.join(), s])).values()];
}

function leaks(study: Study, own: Electrics, index: number, moved: Moved): Finding[] {
  const relay = own.circuit.relays[index]!;
  const part = study.plan.parts.get(relay.part) as Coiled;
  const model = modelOf(part);
  const standing = own.situations.at(moved);
  // A relay that is in is a matter of logic; here it is out and must fall out when it was in.
  if (!standing || standing.relays[index]) return [];
  const v = own.coilVolts(relay, standing, 'high');
  const volts = Math.hypot(v.re, v.im);
  if (volts <= model.dropOutVolts + 1e-9) return [];
  const others = bridging(study, own, index);
  return [
    found(study.plan, entry, {
      parts: [relay.part, ...others],
      at: part.where.get('coil.drop-out') ?? part.where.get('coil.rated') ?? part.at,
      message: `${relay.part} may stay in: ${rounded(volts)} V leaks through its coil with all gates shut`,
      why: `It lets go for certain only below ${rounded(model.dropOutVolts)} V. With ${sayMoved(study.circuit, moved)} current reaches it through ${listOf(others, 3) || 'another part'}.`,
      fix: others.some((o) => isOutput(study, o))
        ? 'Put a resistor across the coil that draws more than the output leaks, or use a contact instead.'
        : 'Connect the lamp or indicator across the coil, not across a switch.',
      figures: [
        { name: 'volts at the coil', value: rounded(volts, 4), unit: 'V' },
        { name: 'drop-out', value: rounded(model.dropOutVolts, 4), unit: 'V' },
      ],
      basis: `drop-out as printed, or the usual must-release figure${isContactor(part) ? ' (IEC 60947-4-1, from memory)' : ''}`,
    }),
  ];
}

const isOutput = (study: Study, name: string): boolean => {
  const part = study.plan.parts.get(name);
  return part !== undefined && 'technology' in part && part.technology === 'solid-state';
};

/** Parts through which a small current can reach the coil while its contacts are open. */
function bridging(study: Study, own: Electrics, index: number): string[] {
  const relay = own.circuit.relays[index]!;
  const island = own.islandOf(relay)!;
  const names = [
    ...island.contacts.map((c) => c.part).filter((name) => isOutput(study, name)),
    ...island.passives.filter((p) => p.part !== relay.part).map((p) => p.part),
    ...island.diodes.filter((d) => d.load).map((d) => d.part),
  ];
  return [...new Set(names)].filter((name) => name !== relay.part);
}

function longCable(study: Study, own: Electrics, index: number, part: Coiled): Finding[] {
  const model = modelOf(part);
  if (model.kind !== 'ac' || model.rated < MAINS_COIL) return [];
  const island = own.islandOf(own.circuit.relays[index]!)!;
  if (!island.contacts.some((c) => c.when.by !== 'always')) return [];
  const runs = new Set(island.wires.map((w) => w.run));
  const metres = [...runs].reduce((sum, r) => sum + (study.plan.runs[r]!.length ?? 0), 0);
  if (metres <= LONG_CABLE) return [];
  return [
    found(study.plan, entry, {
      severity: 'caution',
      parts: [part.name],
      at: part.where.get('coil.rated') ?? part.at,
      message: `${part.name} may stay in: ${figureOfLength(metres, lengthUnit(study.plan))} of cable feed a ${model.rated} V AC coil`,
      why: 'The cores beside each other pass a little AC, which can be enough to hold a mains-voltage coil.',
      fix: 'Keep the long cable at 24 V, with a small relay next to the contactor.',
      figures: [
        { name: 'cable', value: rounded(metres), unit: 'm' },
        { name: 'from', value: LONG_CABLE, unit: 'm' },
      ],
      basis: 'common practice, no source',
    }),
  ];
}
