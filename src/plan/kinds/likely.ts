/** `likely:` of a part, which weighs the ways it can fail. */
import * as z from 'zod/mini';
import type { PartKind } from '../part-types.ts';
import * as q from '../quantity.ts';
import { described, number } from '../schema-fields.ts';
import type { FailureMode, Likely } from './failure-modes.ts';

/** Of whatever a core ends on. */
const CORES = ['core-open', 'core-poor', 'cores-touch', 'wrong-terminal', 'changed-over'] as const;
const WIRED = [...CORES, 'tab-loose'] as const;
const CONTACTS = [...WIRED, 'never-makes', 'never-breaks', 'poor-contact'] as const;
const COILS = [...CONTACTS, 'stays-out', 'stays-in', 'coil-open', 'coil-shorted', 'meets-mains'] as const;
const DIODES = [...WIRED, 'reversed', 'diode-open', 'diode-shorted'] as const;
const SUPPLIES = [...WIRED, 'supply-dead', 'supply-weak', 'poles-changed', 'wrong-volts'] as const;

/** The ways in which each kind of part can fail, its terminals and the cores on them included. */
const FAILURES: { readonly [K in PartKind]: readonly FailureMode[] } = {
  supply: [...SUPPLIES, 'wrong-kind', 'feed-dead'],
  battery: SUPPLIES,
  gate: [...CONTACTS, 'lever-not-reached', 'blade-not-home', 'wrong-way-round'],
  switch: [...CONTACTS, 'wrong-way-round'],
  button: [...CONTACTS, 'wrong-way-round'],
  selector: CONTACTS,
  cutout: [...CONTACTS, 'wrong-way-round', 'tripped'],
  relay: [...COILS, 'coil-part-shorted'],
  timer: [...COILS, 'mistimed'],
  board: COILS.filter((mode) => mode !== 'poor-contact'),
  diode: DIODES,
  led: [...DIODES, 'dark'],
  resistor: [...WIRED, 'dark'],
  lamp: [...WIRED, 'dark'],
  fuse: [...WIRED, 'blown'],
  joint: CORES,
  plug: [...WIRED, 'blown', 'feed-dead', 'unplugged'],
  outlet: WIRED,
  motor: [...WIRED, 'does-not-turn'],
  load: WIRED.filter((mode) => mode !== 'core-poor'),
  box: [...CORES.filter((mode) => mode !== 'core-poor'), 'meets-mains', 'meets-earth'],
};

/** `likely:` of a kind of part: it can only fail in the ways that its kind does. */
export const likely = (of: PartKind): z.ZodMiniType<Likely> =>
  described(
    z.partialRecord(z.enum(FAILURES[of]), number(q.times, 'Times as likely as with such parts in general.')),
    'How much likelier than with such parts in general this one fails, by the way to fail: {never-makes: 5}. It orders "pullin faults" and the suspects of "pullin hunt".',
  );
