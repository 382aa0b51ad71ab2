/** Contacts that feed the coils of other relays, each judged for what those coils draw. */

import type { ContactEdge } from '../../circuit/circuit.ts';
import { relayVariable } from '../../logic/conduction.ts';
import { fedWhere } from '../../logic/model.ts';
import type { Contact } from '../../plan/device-figures.ts';
import { type CoilModel, coilAt } from '../../ratings/coil.ts';
import { sumFigures } from '../../ratings/load.ts';
import type { Figure } from '../../ratings/motor.ts';
import { judgePilot, type PilotDuty } from '../../ratings/pilot.ts';
import { type Coiled, modelOf } from '../../study/coil-models.ts';
import type { Study } from '../../study/study.ts';
import { type CoilWay, coilWays } from './coil-ways.ts';
import { contactOf, type JudgedContact } from './judged-contact.ts';

const HAND = ['switch', 'selector', 'button', 'cutout'];

/** A relay's contact on which another's pull depends; or a switch worked by hand on mains. Gates stand elsewhere. */
function feeds(study: Study, way: CoilWay, edge: ContactEdge): boolean {
  const { circuit, plan, verified: v } = study;
  if (edge.part === way.part.name) return false;
  if (!edge.terminals.every((t) => circuit.landed.has(`${edge.part}.${t}`))) return false;
  if (edge.when.by === 'input')
    return way.source.mains && HAND.includes(plan.parts.get(edge.part)?.kind ?? '');
  if (edge.when.by !== 'relay') return false;
  if (!v) return true;
  const own = circuit.relays.find((r) => r.part === way.part.name)!;
  return v.model.bdd.support(fedWhere(v.model, own.index)).has(relayVariable(edge.when.relay));
}

/** A at the volts of the circuit, or at the coil's own where those are higher. */
function amps(way: CoilWay, ohms: number | undefined, basis: string): Figure | undefined {
  if (ohms === undefined) return undefined;
  const model = modelOf(way.part);
  const volts = Math.max(way.volts, model.rated);
  // Electronics draw the less current the more volts they get.
  const at = coilAt(model, volts);
  return { amps: volts / (ohms * ((at.ohms ?? 1) / (model.ohms ?? 1))), basis, status: 'stated' };
}

function dutyOf(study: Study, contact: Contact, fed: readonly CoilWay[]): PilotDuty {
  const holding = sumFigures(fed.map((w) => amps(w, modelOf(w.part).ohms, `coil of ${w.part.name}, stated`)));
  const inrush = sumFigures(
    fed.map((w) =>
      amps(
        w,
        startingOhms(modelOf(w.part)),
        `coil of ${w.part.name} with its armature open, ${statesInrush(w.part) ? 'stated' : 'from its holding VA'}`,
      ),
    ),
  );
  const volts = Math.max(...fed.map((w) => w.volts));
  return {
    contact,
    volts,
    kind: fed[0]!.source.kind,
    practice: study.plan.practice,
    ...(holding !== undefined && { holding, holdingVA: holding.amps * volts }),
    ...(inrush !== undefined && { inrush }),
  };
}

/** What electronics draw at once is over in a thousandth of a second, unless they pull a contactor in. */
const startingOhms = (model: CoilModel): number | undefined =>
  model.inrushOhms ?? (model.electronic ? model.ohms : undefined);

function statesInrush(part: Coiled): boolean {
  return part.coil?.inrush !== undefined;
}

/** A contact with the coils that it feeds. */
interface Feeding {
  readonly edge: ContactEdge;
  readonly fed: CoilWay[];
}

/** Every contact that feeds another relay's coil, judged for it. */
export function coilContacts(study: Study): JudgedContact[] {
  const byEdge = new Map<string, Feeding>();
  for (const way of coilWays(study))
    for (const edge of way.contacts) {
      if (!feeds(study, way, edge)) continue;
      const key = `${edge.part}/${edge.pole}/${edge.terminals.join('/')}`;
      const entry = byEdge.get(key);
      if (entry) entry.fed.push(way);
      else byEdge.set(key, { edge, fed: [way] });
    }
  return [...byEdge.values()].flatMap((feeding) => judgeFeeding(study, feeding) ?? []);
}

function judgeFeeding(study: Study, { edge, fed }: Feeding): JudgedContact | undefined {
  const part = study.plan.parts.get(edge.part)!;
  const contact = contactOf({ part, pole: edge.pole });
  if (contact === undefined) return undefined;
  const duty = dutyOf(study, contact, fed);
  return {
    part,
    pole: Math.max(1, edge.pole),
    loads: fed.map((w) => w.part.name),
    feeds: 'coil',
    currents: {
      ...(duty.holding && { running: duty.holding }),
      ...(duty.kind === 'ac' && duty.inrush && { starting: duty.inrush }),
    },
    volts: duty.volts,
    kind: duty.kind,
    judged: judgePilot(duty),
  };
}
