/** Contacts that switch mains loads, each judged for all loads behind it. */

import { difference } from '../../circuit/rail-volts.ts';
import { switchedBy } from '../../logic/intent.ts';
import type { Contact } from '../../plan/device-figures.ts';
import type { LoadPart, MotorPart, Part } from '../../plan/part-types.ts';
import { judgeContact } from '../../ratings/contact.ts';
import type { ContactDuty } from '../../ratings/judgement.ts';
import { combineLoads } from '../../ratings/load.ts';
import type { Study } from '../../study/study.ts';
import { fedPlugs } from '../mains/plug-loads.ts';
import { startsInTurn } from '../mains/starts-in-turn.ts';
import type { JudgedContact } from './judged-contact.ts';

/** Loads behind one switching part. */
interface Group {
  readonly part: Part;
  readonly contact: Contact;
  readonly pole: number;
  readonly loads: (MotorPart | LoadPart)[];
}

export function loadContacts(study: Study): JudgedContact[] {
  return groups(study).map((group) => judgeGroup(study, group));
}

function groups(study: Study): Group[] {
  const { plan, circuit } = study;
  const byPart = new Map<string, (MotorPart | LoadPart)[]>();
  for (const load of plan.parts.values()) {
    if (load.kind !== 'motor' && load.kind !== 'load') continue;
    for (const name of switchedBy(circuit, load.name)) byPart.set(name, [...(byPart.get(name) ?? []), load]);
  }
  const found: Group[] = [];
  for (const [name, loads] of byPart) {
    const part = plan.parts.get(name)!;
    if ('poles' in part) {
      const side = loads.every((l) => l.volts.kind === 'dc') ? study.sides.low : study.sides.mains;
      const live = part.poles.filter((p) =>
        circuit.contacts.some(
          (c) =>
            c.part === name &&
            c.pole === p.index &&
            side.has(c.a) &&
            side.has(c.b) &&
            c.terminals.every((t) => circuit.landed.has(`${name}.${t}`)),
        ),
      );
      for (const pole of live.length > 0 ? live : part.poles.slice(0, 1))
        found.push({ part, contact: pole.contact, pole: pole.index, loads });
    } else if ('contact' in part) found.push({ part, contact: part.contact, pole: 1, loads });
  }
  return found;
}

function judgeGroup(study: Study, group: Group): JudgedContact {
  const { plan } = study;
  const { part, loads } = group;
  const combined = combineLoads(loads, plan.practice);
  // Motors that timers hold apart start one after the other on this contact as well.
  const turn = startsInTurn(study, loads);
  const currents =
    turn.starts.length > 1 && turn.most ? { ...combined.currents, starting: turn.most } : combined.currents;
  const volts = Math.max(...loads.map((l) => appliedVolts(study, l)));
  const device = deviceOf(part, loads);
  const duty: ContactDuty = {
    contact: group.contact,
    currents,
    volts,
    kind: loads.some((l) => l.volts.kind === 'dc') ? 'dc' : 'ac',
    phases: combined.phases,
    nature: combined.nature,
    ...(combined.horsepower === undefined ? {} : { horsepower: combined.horsepower }),
    ...(device === undefined ? {} : { device }),
    practice: plan.practice,
  };
  return {
    part,
    pole: group.pole,
    loads: loads.map((l) => l.name),
    feeds: 'load',
    currents,
    volts: duty.volts,
    kind: duty.kind,
    ...(device === undefined ? {} : { device }),
    judged: judgeContact(duty),
  };
}

/**
 * V between two conductors of the circuit that feeds a load, NEC 430.83(A)(1): what a contact is asked to switch is the
 * voltage applied, whatever the plate says. The plate's own where no circuit of about that voltage feeds it.
 */
function appliedVolts(study: Study, load: MotorPart | LoadPart): number {
  const own = load.volts.volts;
  if (load.volts.kind === 'dc') return own;
  const offers = study.circuit.sources
    .filter(
      (s) => s.kind === 'ac' && fedPlugs(study).some((f) => f.plug.name === s.part && f.loads.includes(load)),
    )
    .flatMap(({ rails }) => rails.flatMap((p) => rails.map((q) => difference(p, q))))
    .filter((v) => own <= v * 1.15 && own >= v * 0.8);
  const off = (v: number) => Math.abs(Math.log(v / own));
  return offers.length === 0
    ? own
    : Number(offers.reduce((a, b) => (off(b) < off(a) ? b : a)).toPrecision(5));
}

/** A hand switch counts as one only in the line of a single motor. */
function deviceOf(part: Part, loads: Group['loads']): JudgedContact['device'] {
  if ('technology' in part && part.technology === 'solid-state') return 'solid-state';
  const hand = part.kind === 'switch' || part.kind === 'selector';
  return hand && loads.length === 1 && loads[0]!.kind === 'motor' ? 'hand-switch' : undefined;
}
