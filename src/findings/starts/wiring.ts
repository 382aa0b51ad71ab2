import { sayMoved } from '../../circuit/input-words.ts';
import { isLanded } from '../../circuit/terminals.ts';
import { FALSE, type Fn } from '../../logic/bdd.ts';
import { everIn } from '../../logic/entry-states.ts';
import type { Verified } from '../../logic/verify.ts';
import type { Part } from '../../plan/plan.ts';
import { partOfKey } from '../../plan/terminal-key.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { COMMON_PRACTICE, finding } from '../finding.ts';
import type { Finding } from '../report-model.ts';

/** Mistakes at one part of the loop: shorts, polarity, suppressors, loose ends. */
export function checkWiring(study: Study): Finding[] {
  const found: Finding[] = [...coilShorted(study), ...looseEnds(study)];
  const v = study.verified;
  if (!v) return found;
  const diodes = diodesBackwards(study, v);
  const reversed = polarityReversed(study, v);
  found.push(...diodes, ...reversed);
  if (diodes.length === 0 && reversed.length === 0) found.push(...supplyShorted(study, v));
  return found;
}

function supplyShorted(study: Study, v: Verified): Finding[] {
  const { plan, circuit } = study;
  return circuit.sources
    .filter((s) => !s.mains)
    .flatMap((s) => {
      const moved = everIn(v, v.model.shorted[s.index]!);
      if (!moved) return [];
      const who = moved.map((i) => circuit.inputs[i]!.part);
      const poles = s.rails.map((r) => `${s.part}.${r.terminal}`);
      return [
        finding(plan, {
          id: 'supply-shorted',
          severity: 'warning',
          question: 5,
          parts: [...who, s.part],
          terminals: poles,
          message: `${listOf(poles)} are joined with ${sayMoved(circuit, moved)}: the supply or its fuse gives up`,
          why: 'There is a path from one pole of the supply to the other with no coil in it.',
          fix:
            who.length > 0
              ? `Wire ${listOf(who)} in one conductor only; the coil belongs between the switches and the other pole.`
              : 'Take away the core that joins the two poles.',
          basis: COMMON_PRACTICE,
        }),
      ];
    });
}

function coilShorted(study: Study): Finding[] {
  const { plan, circuit } = study;
  return circuit.relays.flatMap((relay) => {
    const sense = relay.senses.find((s) => s.by === 'volts' && s.what !== 'input');
    if (sense?.a !== sense?.b || sense === undefined) return [];
    const part = plan.parts.get(relay.part)!;
    const ends = part.kind === 'board' ? ['VCC', 'GND'] : ['A1', 'A2'];
    return [
      finding(plan, {
        id: 'coil-shorted',
        severity: 'warning',
        question: 5,
        parts: [relay.part],
        terminals: ends.map((e) => `${relay.part}.${e}`),
        message: `both coil ends of ${relay.part} are on one conductor: it never pulls in`,
        why: `${listOf(ends.map((e) => `${relay.part}.${e}`))} are joined by wire.`,
        fix: `Lead one end of the coil to the switches and the other to the supply.`,
        basis: COMMON_PRACTICE,
      }),
    ];
  });
}

/** States in which a DC source drives current from net `a` to net `b` when the two are looked at as its poles. */
function fedFrom(v: Verified, a: number, b: number): Fn {
  const { bdd } = v.model;
  return bdd.any(
    v.circuit.sources
      .filter((s) => !s.mains && s.kind === 'dc')
      .map((s) => {
        const [plus, minus] = v.model.railReach[s.index]!;
        // Where contacts join the poles, every net reaches both; that is a short, not a polarity.
        const apart = bdd.not(plus!.get(s.rails[1]!.net) ?? FALSE);
        return bdd.every([apart, plus!.get(a) ?? FALSE, minus!.get(b) ?? FALSE]);
      }),
  );
}

function diodesBackwards(study: Study, v: Verified): Finding[] {
  const { plan, circuit } = study;
  return circuit.diodes.flatMap((d) => {
    if (d.load || d.builtIn) return [];
    const moved = everIn(v, fedFrom(v, d.anode, d.cathode));
    const ac = moved ? undefined : everIn(v, onAc(v, d.anode, d.cathode));
    if (!moved && !ac) return [];
    const coil = circuit.relays.find((r) =>
      r.senses.some((s) => (s.a === d.anode && s.b === d.cathode) || (s.b === d.anode && s.a === d.cathode)),
    );
    return [
      finding(plan, {
        id: 'diode-backwards',
        severity: 'warning',
        question: 5,
        parts: [d.part, ...(coil ? [coil.part] : [])],
        terminals: [`${d.part}.A`, `${d.part}.K`],
        message: ac
          ? `${d.part} lies across an AC supply: it is a short in every other half wave`
          : `${d.part} conducts when ${coil ? `the coil of ${coil.part}` : 'the loop'} is fed: it shorts the supply`,
        why: `With ${sayMoved(circuit, (moved ?? ac)!)} its anode (A) is joined to + and its band (K) to -.`,
        fix: ac
          ? 'Take the diode off; an AC coil takes an RC member or a varistor.'
          : `Turn ${d.part} round: the band (K) to the + side of the coil.`,
        basis: 'relay makers’ application guidance, several agree',
      }),
    ];
  });
}

function onAc(v: Verified, a: number, b: number): Fn {
  const { bdd } = v.model;
  return bdd.any(
    v.circuit.sources
      .filter((s) => s.kind === 'ac')
      .map((s) => {
        const reach = v.model.railReach[s.index]!;
        const at = (i: number, n: number) => reach[i]?.get(n) ?? FALSE;
        const apart = bdd.not(at(0, s.rails[1]?.net ?? -1));
        return bdd.and(apart, bdd.or(bdd.and(at(0, a), at(1, b)), bdd.and(at(1, a), at(0, b))));
      }),
  );
}

function polarityReversed(study: Study, v: Verified): Finding[] {
  const { plan, circuit } = study;
  const found: Finding[] = [];
  const report = (part: string, plus: string, minus: string, f: Fn, what: string) => {
    const moved = everIn(v, f);
    if (!moved || found.some((x) => x.parts[0] === part)) return;
    found.push(
      finding(plan, {
        id: 'polarity-reversed',
        severity: 'fault',
        question: 4,
        parts: [part],
        terminals: [`${part}.${plus}`, `${part}.${minus}`],
        message: `${part} is fed the wrong way round: ${what}`,
        why: `With ${sayMoved(circuit, moved)} ${part}.${minus} is joined to + and ${part}.${plus} to -.`,
        fix: `Exchange the cores at ${part}: ${plus} towards +, ${minus} towards -.`,
        basis: COMMON_PRACTICE,
      }),
    );
  };
  for (const relay of circuit.relays) {
    const part = plan.parts.get(relay.part)!;
    for (const s of relay.senses) {
      if (s.by !== 'volts' || !s.polarised || s.what === 'input') continue;
      const [plus, minus] = part.kind === 'board' ? ['VCC', 'GND'] : ['A1', 'A2'];
      const builtIn = circuit.diodes.some((d) => d.builtIn && d.part === relay.part);
      report(
        relay.part,
        plus!,
        minus!,
        fedFrom(v, s.b, s.a),
        builtIn ? 'its built-in diode shorts the supply' : 'it does not pull in',
      );
    }
  }
  for (const d of circuit.diodes)
    if (d.load) report(d.part, 'A', 'K', fedFrom(v, d.cathode, d.anode), 'it stays dark');
  return found;
}

/** Terminals that a part cannot do without. */
function neededTerminals(study: Study, part: Part): string[] {
  switch (part.kind) {
    case 'relay':
    case 'timer':
      return ['A1', 'A2'];
    case 'board':
      return ['VCC', 'GND', 'IN'];
    case 'diode':
    case 'led':
      return ['A', 'K'];
    case 'resistor':
    case 'lamp':
    case 'fuse':
      return ['1', '2'];
    case 'supply':
      return part.output.kind === 'dc' ? ['+', '-'] : ['~1', '~2'];
    case 'battery':
      return ['+', '-'];
    case 'gate':
      return ['COM'];
    case 'switch':
    case 'button':
    case 'selector':
      return ['COM'];
    case 'motor':
    case 'load':
      return part.pluggedInto === undefined
        ? [...(study.circuit.consumers.find((c) => c.part === part.name)?.nets.keys() ?? [])]
        : [];
    case 'outlet':
      return [...(study.circuit.consumers.find((c) => c.part === part.name)?.nets.keys() ?? [])];
    default:
      return [];
  }
}

function looseEnds(study: Study): Finding[] {
  const { plan, circuit } = study;
  const used = new Set([...circuit.landed.keys()].map((k) => partOfKey(k)));
  const named = new Set(
    plan.intents?.flatMap((i) => [...i.runsOn.flat(), ...i.blockedBy, ...i.stoppedBy].map((r) => r.part)),
  );
  const feeders = new Set(
    [...plan.parts.values()].flatMap((p) => ('fedFrom' in p && p.fedFrom ? [p.fedFrom] : [])),
  );
  const found: Finding[] = [];
  for (const part of plan.parts.values()) {
    if (part.kind === 'box') continue;
    const plugged = 'pluggedInto' in part && part.pluggedInto !== undefined;
    const feeds = feeders.has(part.name);
    if (!used.has(part.name) && !plugged && !(part.kind === 'plug' && feeds)) {
      found.push(
        finding(plan, {
          id: 'loose-end',
          severity: 'caution',
          question: 2,
          parts: [part.name],
          message: `${part.name} is joined to nothing`,
          why: `No run lands on ${part.name}${named.has(part.name) ? ', though the intent speaks of it' : ''}.`,
          fix: `Wire ${part.name} in, or take it out of the plan.`,
          basis: COMMON_PRACTICE,
        }),
      );
      continue;
    }
    if (plugged) continue;
    const empty = neededTerminals(study, part).filter((t) => !isLanded(circuit, part, t));
    const isSwitch = part.kind === 'gate' || part.kind === 'switch' || part.kind === 'button';
    if (isSwitch && !isLanded(circuit, part, 'NO') && !isLanded(circuit, part, 'NC')) empty.push('NO');
    if (empty.length === 0) continue;
    const names = empty.map((t) => `${part.name}.${t}`);
    found.push(
      finding(plan, {
        id: 'loose-end',
        severity: 'caution',
        question: 2,
        parts: [part.name],
        at: part.at,
        terminals: names,
        message: `${listOf(names)} ${names.length > 1 ? 'have' : 'has'} nothing on ${names.length > 1 ? 'them' : 'it'}`,
        why: `${part.name} cannot do its work without ${names.length > 1 ? 'these terminals' : 'this terminal'}.`,
        fix: `Land the missing core, or take ${part.name} out of the plan.`,
        basis: COMMON_PRACTICE,
      }),
    );
  }
  return found;
}
