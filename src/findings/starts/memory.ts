/** What only shows after several moves, or never settles: relays that hold, chatter or race. */

import { sayMoved } from '../../circuit/input-words.ts';
import { FALSE } from '../../logic/bdd.ts';
import type { Wanted } from '../../logic/intent.ts';
import { type Deviation, movedIn, stateOf, type Verified } from '../../logic/verify.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { COMMON_PRACTICE, finding } from '../finding.ts';
import type { Finding } from '../report-model.ts';

/** Departures that only show after other moves: memory in the relays. */
export function afterwards(study: Study, v: Verified, w: Wanted, d: Deviation): Finding {
  const { bdd } = v.model;
  const { circuit } = study;
  const steps = d.steps.map((s) => sayMoved(circuit, s)).join('; then ');
  const last = d.steps.at(-1)!;
  const lastParts = d.steps.flat().map((i) => circuit.inputs[i]!.part);
  const blockedNow = bdd.and(d.states, w.blocked) !== FALSE && bdd.diff(d.states, w.blocked) === FALSE;
  if (!d.expected && blockedNow) {
    const ref = w.blockers.find((b) => bdd.and(b.blocks, stateOf(circuit, bdd, last)) !== FALSE)?.ref;
    return finding(study.plan, {
      id: 'block-ignored',
      severity: 'danger',
      question: 3,
      parts: [ref?.part ?? w.target, w.target],
      message: `once started, ${w.target} keeps running although ${ref?.part ?? 'an input'} ought to stop it`,
      why: `Steps: ${steps}.`,
      fix: `Wire the break contact of ${ref?.part ?? 'the stop'} outside the path that the holding contact closes.`,
      basis: 'IEC 60204-1 clause 9.2 (from memory); common practice',
    });
  }
  if (!d.expected)
    return finding(study.plan, {
      id: 'stays-on',
      severity: 'fault',
      question: 3,
      parts: [w.target, ...holders(v, lastParts)],
      message: `once started, ${w.target} does not stop`,
      why: `Steps: ${steps}. It ought to be off there and still runs: a relay holds itself in.${heldBy(study, v)}`,
      fix:
        w.latches.length > 0
          ? `Lead the holding contact so that ${listOf(w.blockers.map((b) => b.ref.part)) || 'the stop'} breaks it.`
          : 'Take the holding contact off, or lead it so that shutting the gates breaks it.',
      basis: COMMON_PRACTICE,
    });
  return finding(study.plan, {
    id: 'depends-on-order',
    severity: 'fault',
    question: 2,
    parts: [w.target, ...lastParts],
    message: `whether ${w.target} runs depends on the order in which things were moved`,
    why: `Steps: ${steps}. It ought to run there and does not, though the same positions reached otherwise may start it.`,
    fix: 'Take relay contacts out of the coil circuits that do not need them.',
    basis: COMMON_PRACTICE,
  });
}

function holders(v: Verified, fallback: readonly string[]): string[] {
  const names = v.settler.memory.relays.map((k) => v.circuit.relays[k]!.part);
  return names.length > 0 ? names : [...fallback];
}

/** The relays' own contacts that lie in their coil circuits, as a sentence. */
function heldBy(study: Study, v: Verified): string {
  const { circuit, sides } = study;
  const memory = new Set(v.settler.memory.relays);
  const contacts = circuit.contacts.filter(
    (c) =>
      c.when.by === 'relay' &&
      c.when.value &&
      memory.has(c.when.relay) &&
      sides.low.has(c.a) &&
      sides.low.has(c.b),
  );
  const names = [
    ...new Set(contacts.map((c) => `${c.part}.${c.terminals[0]} to ${c.part}.${c.terminals[1]}`)),
  ];
  return names.length === 0 ? '' : ` Holding contact: ${listOf(names, 3)}.`;
}

export function chatters(study: Study, v: Verified): Finding[] {
  if (v.chatter === FALSE) return [];
  const moved = movedIn(v.circuit, v.model.bdd, v.chatter)!;
  const relays = v.settler.memory.relays.map((k) => v.circuit.relays[k]!.part);
  return [
    finding(study.plan, {
      id: 'chatters',
      severity: 'fault',
      question: 2,
      parts: relays,
      message: `${listOf(relays)} never settles: it pulls in, breaks its own coil, drops out and starts again`,
      why: `It buzzes with ${sayMoved(v.circuit, moved)}, because a contact that opens when the relay pulls in lies in the path of its coil.`,
      fix: `Use the make contact (NO, 13-14) in place of the break contact in the coil circuit of ${listOf(relays)}.`,
      basis: COMMON_PRACTICE,
    }),
  ];
}

export function races(study: Study, v: Verified): Finding[] {
  return v.races.slice(0, 1).map((race) => {
    const moved = movedIn(v.circuit, v.model.bdd, race.states)!;
    const relays = v.settler.memory.relays.map((k) => v.circuit.relays[k]!.part);
    return finding(study.plan, {
      id: 'depends-on-order',
      severity: 'fault',
      question: 2,
      parts: [...relays, race.target],
      message: `whether ${race.target} runs depends on which relay moves first`,
      why: `With ${sayMoved(v.circuit, moved)} the relays ${listOf(relays)} race one another.`,
      fix: 'Arrange the contacts so that one relay waits for the other.',
      basis: COMMON_PRACTICE,
    });
  });
}
