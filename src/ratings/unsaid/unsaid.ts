/** Everything that a plan leaves out and that can be bounded. */
import type { Part } from '../../plan/part-types.ts';
import type { Plan } from '../../plan/plan.ts';
import { defaults } from '../defaults.ts';
import { unsaidOfCoil } from './coil-fields.ts';
import { unsaidOfContacts, unsaidOfIsolator } from './contact-fields.ts';
import { ends, putting, type Unsaid } from './ends.ts';
import { unsaidOfFuse, unsaidOfMotor, unsaidOfPlug } from './mains-fields.ts';
import { unsaidOfBattery, unsaidOfSupply } from './supply-fields.ts';

/** Figures that the plan leaves out, each with its ends. */
export function unsaidIn(plan: Plan): Unsaid[] {
  return [
    ...(plan.ambient === undefined ? [ambient()] : []),
    ...[...plan.parts.values()].flatMap((part) => unsaidOf(part, plan)),
    ...contactOhms(plan),
  ];
}

function unsaidOf(part: Part, { practice }: Plan): Unsaid[] {
  switch (part.kind) {
    case 'supply':
      return unsaidOfSupply(part, practice);
    case 'battery':
      return unsaidOfBattery(part);
    case 'relay':
    case 'timer':
    case 'board':
      return [...unsaidOfCoil(part), ...unsaidOfContacts(part)];
    case 'switch':
      return unsaidOfIsolator(part);
    case 'fuse':
      return unsaidOfFuse(part);
    case 'motor':
      return unsaidOfMotor(part, practice);
    case 'plug':
      return unsaidOfPlug(part, practice);
    default:
      return [];
  }
}

function ambient(): Unsaid {
  const row = defaults.ambient;
  return {
    ...{ parts: [], field: 'ambient', row, unit: row.unit, bears: [4, 5, 7] },
    at: ends(row.high, row.high, row.low, row.low),
    put: (draft, value) => {
      draft.ambient = Number(value);
    },
  };
}

/** Switches age more than what `corner-figures` allows a contact for its tolerance; all of them alike. */
function contactOhms(plan: Plan): Unsaid[] {
  const row = defaults.contactResistance;
  const aged = defaults.contactResistanceSwitch;
  const parts = [...plan.parts.values()].filter(isSwitch).filter((p) => p.contact.resistance === undefined);
  if (parts.length === 0) return [];
  return [
    {
      ...{
        parts: parts.map((p) => p.name),
        field: 'contact.resistance',
        row: aged,
        unit: aged.unit,
        bears: [4],
      },
      at: { few: aged.high, sag: aged.high, ample: row.low, mild: row.low },
      put: putting<SwitchLike>(
        parts.map((p) => p.name),
        (p, value) => ({ ...p, contact: { ...p.contact, resistance: Number(value) } }),
      ),
    },
  ];
}

type SwitchLike = Extract<Part, { kind: 'gate' | 'switch' | 'button' | 'cutout' | 'selector' }>;

const isSwitch = (part: Part): part is SwitchLike =>
  ['gate', 'switch', 'button', 'cutout', 'selector'].includes(part.kind);
