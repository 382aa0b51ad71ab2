import { sayMoved } from '../../circuit/input-words.ts';
import { netAt } from '../../circuit/terminals.ts';
import { type Bdd, FALSE, type Fn } from '../../logic/bdd.ts';
import { everIn, runsFromRest } from '../../logic/entry-states.ts';
import { findMemory, Settler } from '../../logic/memory.ts';
import { buildModel } from '../../logic/model.ts';
import { movedIn, running, stateOf, type Verified } from '../../logic/verify.ts';
import type { BatteryPart, SupplyPart } from '../../plan/plan.ts';
import { class2Plausible } from '../../ratings/class2.ts';
import { extraLowLimit } from '../../ratings/limits.ts';
import type { Study } from '../../study/study.ts';
import { unfused } from '../../study/unfused-wire.ts';
import { highestVolts } from '../../study/working-volts.ts';
import { rounded } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import { oneTouch } from '../apart/one-touch.ts';
import { finding } from '../finding.ts';
import type { Finding } from '../report-model.ts';

/** What the low-voltage sources themselves do: limits, joining, earthing, and what happens when they die. */
export function checkSupplies(study: Study): Finding[] {
  const { plan } = study;
  const supplies = [...plan.parts.values()].filter(
    (p): p is SupplyPart | BatteryPart => p.kind === 'supply' || p.kind === 'battery',
  );
  const found: Finding[] = [];
  for (const s of supplies) found.push(...overLimits(study, s), ...notLimited(study, s));
  found.push(...earthed(study));
  if (study.verified)
    found.push(
      ...oneTouch(study, study.verified),
      ...joined(study, study.verified),
      ...deadSupply(study, study.verified),
    );
  return found;
}

function overLimits(study: Study, s: SupplyPart | BatteryPart): Finding[] {
  const highest = highestVolts(study, s);
  const { volts: limit, basis } = extraLowLimit(s.output.kind, study.plan.practice);
  if (highest <= limit) return [];
  return [
    finding(study.plan, {
      id: 'supply-over-limits',
      severity: 'danger',
      question: 1,
      parts: [s.name],
      at: s.where.get('output'),
      message: `${s.name} gives ${highest} V ${s.output.kind.toUpperCase()}: that is no low-voltage loop`,
      why: `Bare gate switches and bell wire belong on at most ${limit} V ${s.output.kind.toUpperCase()}, with no load on the supply.`,
      fix: 'Choose a coil and a supply of 24 V or less.',
      figures: [
        { name: 'highest output', value: highest, unit: 'V' },
        { name: 'limit', value: limit, unit: 'V' },
      ],
      basis: `${basis} (partly from memory)`,
    }),
  ];
}

function notLimited(study: Study, s: SupplyPart | BatteryPart): Finding[] {
  const { plan, circuit } = study;
  if (s.kind === 'supply' && s.class2) return plan.practice === 'nec' ? tooStrong(study, s) : [];
  const fused = (s.output.kind === 'dc' ? ['+', '-'] : ['~1', '~2']).some((t) => {
    const net = netAt(circuit, s.name, t);
    const reach = net === undefined ? undefined : unfused(plan, circuit, net);
    return reach !== undefined && reach.fuses.length > 0 && !reach.reachesSwitch;
  });
  if (fused) return [];
  return [
    finding(plan, {
      id: 'supply-not-limited',
      severity: 'caution',
      question: 5,
      parts: [s.name],
      message: `nothing limits the current of ${s.name} into a pinched cable`,
      why:
        s.kind === 'battery'
          ? 'A battery has no limit of its own and no fuse is next to it.'
          : `${s.name} is not stated to be power-limited (class-2) and no fuse is next to it.`,
      fix:
        s.kind === 'battery'
          ? 'Put a fuse at the battery post.'
          : 'Use a supply marked Class 2 (or SELV, limited), or put a fuse next to it.',
      basis:
        'NEC 725.121(A) (2020; 725.60 in 2023), Chapter 9 Tables 11(A), 11(B); IEC 60364-4-41 clause 414.3',
    }),
  ];
}

/** Called Class 2, but beyond what such a supply may give. */
function tooStrong(study: Study, s: SupplyPart): Finding[] {
  const highest = Math.max(s.output.volts, s.noLoad ?? 0);
  const verdict = class2Plausible(s, highest);
  if (verdict.ok || verdict.limitAmps === undefined) return [];
  return [
    finding(study.plan, {
      id: 'supply-not-limited',
      severity: 'caution',
      question: 5,
      parts: [s.name],
      at: s.where.get('class-2') ?? s.at,
      message: `${s.name} is called Class 2, but ${rounded(s.limit.amps)} A at ${highest} V is more than such a supply gives`,
      why: `At ${highest} V a Class 2 supply is marked with ${rounded(verdict.limitAmps)} A at most.`,
      fix: 'Read the label again; without the Class 2 mark put a fuse next to the supply.',
      figures: [
        { name: 'stated', value: rounded(s.limit.amps), unit: 'A' },
        { name: 'Class 2', value: rounded(verdict.limitAmps), unit: 'A' },
      ],
      basis: verdict.basis,
    }),
  ];
}

function earthed(study: Study): Finding[] {
  const { plan, circuit, sides, verified: v } = study;
  return circuit.sources
    .filter((s) => !s.mains)
    .flatMap((s) => {
      const pole = s.rails.find((r) => sides.earth.has(r.net));
      if (!pole) return [];
      const between = v
        ? circuit.relays.filter((r) =>
            r.senses.some((x) => {
              if (x.by !== 'volts') return false;
              const onPole = v.model.railReach[s.index]![s.rails.indexOf(pole)]!;
              const ends = [x.a, x.b].filter((n) => sides.low.has(n));
              return (
                ends.length === 2 &&
                ends.every((n) => (onPole.get(n) ?? FALSE) !== 1) &&
                ends.some((n) => (onPole.get(n) ?? FALSE) !== FALSE)
              );
            }),
          )
        : [];
      return [
        finding(plan, {
          id: 'low-voltage-earthed',
          severity: between.length > 0 ? 'warning' : 'notice',
          question: 1,
          parts: [s.part, ...between.map((r) => r.part)],
          terminals: [`${s.part}.${pole.terminal}`],
          message:
            between.length > 0
              ? `${s.part}.${pole.terminal} is earthed and the gate switches sit between the coil and the earthed side`
              : `${s.part}.${pole.terminal} is earthed`,
          why:
            between.length > 0
              ? 'One touch of the switched wire on metal starts the motor.'
              : 'Common on machines; then the switches belong on the other side, as here.',
          fix:
            between.length > 0
              ? 'Join the coil straight to the earthed side and put the switches in the other conductor.'
              : 'Nothing, if it is meant. An earthed loop is PELV, not SELV.',
          basis: 'NEC 430.74; IEC 60204-1 clause 9.4.3; NFPA 79 clause 9.1.4',
        }),
      ];
    });
}

function joined(study: Study, v: Verified): Finding[] {
  const { plan, circuit } = study;
  const { bdd } = v.model;
  const found: Finding[] = [];
  const low = circuit.sources.filter((s) => !s.mains);
  low.forEach((s, i) => {
    for (const t of low.slice(i + 1)) {
      const reach = v.model.railReach[s.index]!;
      const at = (x: number, y: number) => reach[x]!.get(t.rails[y]!.net) ?? FALSE;
      const f: Fn = bdd.or(bdd.and(at(0, 0), at(1, 1)), bdd.and(at(0, 1), at(1, 0)));
      const moved = everIn(v, f);
      if (!moved) continue;
      found.push(
        finding(plan, {
          id: 'supplies-joined',
          severity: 'warning',
          question: 5,
          parts: [s.part, t.part],
          terminals: [
            ...s.rails.map((r) => `${s.part}.${r.terminal}`),
            ...t.rails.map((r) => `${t.part}.${r.terminal}`),
          ],
          message: `${s.part} and ${t.part} feed one loop together`,
          why: `With ${sayMoved(circuit, moved)} both poles of the one are joined to both poles of the other.`,
          fix: 'Use one supply that is big enough, or keep the two loops apart but for one common pole.',
          basis: 'NEC 725.121(B) (2020)',
        }),
      );
    }
  });
  return found;
}

/** Each low-voltage source dead alone, then all together, from every position the circuit can stand in. */
function deadSupply(study: Study, v: Verified): Finding[] {
  const { circuit, plan } = study;
  const low = circuit.sources.filter((s) => !s.mains).map((s) => s.index);
  if (low.length === 0 || v.intents.wanted.length === 0) return [];
  const sets = [...low.map((i) => [i]), ...(low.length > 1 ? [low] : [])];
  const found: Finding[] = [];
  for (const dead of sets) {
    const bdd = v.model.bdd as Bdd;
    const model = buildModel(circuit, bdd, new Set(dead));
    const settler = new Settler(model, findMemory(model));
    const starts = startModes(v, settler);
    for (const w of v.intents.wanted) {
      if (found.some((f) => f.parts.includes(w.target))) continue;
      const runs = bdd.any(
        starts.flatMap((m) =>
          [...settler.settle(m).to].map(([mode, set]) =>
            bdd.and(settler.at(running(model, w.target), mode), set),
          ),
        ),
      );
      const names = dead.map((i) => circuit.sources[i]!.part);
      // A way of running that does not need this supply is judged with the supply alive; here only what its death starts.
      const wrong =
        w.ifSupplyFails === 'stopped'
          ? bdd.diff(runs, runsFromRest(v, w.target))
          : bdd.diff(bdd.diff(model.valid, w.blocked), runs);
      if (wrong === FALSE) continue;
      const atRest = bdd.and(wrong, stateOf(circuit, bdd, [])) !== FALSE;
      const moved = atRest ? [] : movedIn(circuit, bdd, wrong)!;
      const runsOn = w.ifSupplyFails === 'stopped';
      found.push(
        finding(plan, {
          id: runsOn ? 'runs-on-dead-supply' : 'stops-on-dead-supply',
          severity: runsOn ? 'danger' : 'fault',
          question: 3,
          parts: [w.target, ...names],
          message: runsOn
            ? `${w.target} runs when ${listOf(names)} is dead`
            : `${w.target} stops when ${listOf(names)} is dead, though it is meant to run on`,
          why: `With no volts from ${listOf(names)} and ${sayMoved(circuit, moved)} the load is ${runsOn ? 'fed through a contact that is closed at rest' : 'off'}.`,
          fix: runsOn
            ? 'Feed the load through the make contact (NO), so that a dead supply stops it.'
            : 'Feed the load through a break contact, or give up if-supply-fails: running.',
          basis: 'IEC 60204-1 clause 9.4 (from memory); common practice',
        }),
      );
    }
  }
  return found;
}

/** Positions of the remembering relays of the dead circuit that the live one can leave behind. */
function startModes(v: Verified, settler: Settler): number[] {
  const { bdd } = v.model;
  let modes = new Set<number>();
  for (const place of v.places) {
    let here: number[] = [0];
    settler.memory.relays.forEach((k, bit) => {
      const f = bdd.and(v.settler.at(bdd.variable(k), place.mode), place.states);
      const off = bdd.diff(place.states, v.settler.at(bdd.variable(k), place.mode));
      here = here.flatMap((m) => [...(off !== FALSE ? [m] : []), ...(f !== FALSE ? [m | (1 << bit)] : [])]);
    });
    modes = new Set([...modes, ...here]);
  }
  return [...modes];
}
