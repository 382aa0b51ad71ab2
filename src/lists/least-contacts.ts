/** The least ratings of contacts: of relays and switches in a motor's line, before a coil, and in the loop. */

import { reachOf } from '../circuit/sides.ts';
import { checkContacts } from '../findings/contacts/contacts.ts';
import { checkLoop } from '../findings/loop/loop.ts';
import type { Contact, CurrentKind, LoadPart, MotorPart, Part, PilotCode, Plan } from '../plan/plan.ts';
import { combineLoads } from '../ratings/load.ts';
import { WATTS_PER_HORSEPOWER } from '../ratings/motor.ts';
import { tables } from '../ratings/tables.ts';
import type { Study } from '../study/study.ts';
import { rounded } from '../text/numbers.ts';
import {
  type Figure,
  type Least,
  leastOf,
  ratingOf,
  sizesWith,
  type Trouble,
  withParts,
} from './least-rating.ts';
import type { LeastRating, LeastRatings } from './materials-model.ts';

/** A, usual sizes; common practice. */
export const AC3_AMPS = [6, 7, 9, 12, 16, 18, 20, 25, 32, 38, 40, 50, 65, 80, 95, 115, 150] as const;
export const PLAIN_AMPS = [1, 2, 3, 5, 6, 8, 10, 12, 15, 16, 20, 25, 30, 32, 40, 50, 63, 80, 100] as const;
export const COIL_AMPS = [0.1, 0.2, 0.25, 0.5, 1, 1.5, 2, 3, 4, 5, 6, 10] as const;
export const LOOP_AMPS = [0.01, 0.05, 0.1, 0.25, 0.5, 1, 2, 3, 5, 6, 10, 15, 16, 20] as const;
/** A, least currents from the hardest to keep to the easiest. */
const LEAST_AMPS = [0.1, 0.05, 0.02, 0.01, 0.005, 0.001, 0.0001] as const;
const MOST_MAKE = 2000;

const PILOTS: Readonly<Record<CurrentKind, readonly PilotCode[]>> = {
  ac: ['E150', 'D300', 'C300', 'B300', 'A300'],
  dc: ['R300', 'Q300'],
};

const num = (x: number): string => `${rounded(x, 4)}`;
const place = (volts: number, kind: CurrentKind): string => `${num(volts)} V ${kind.toUpperCase()}`;

/** The part with another contact on every pole that `poles` names; a switch has one contact. */
export function withContact(part: Part, contact: Contact, poles?: ReadonlySet<number>): Part {
  if ('poles' in part) {
    const changed = part.poles.map((p) =>
      poles === undefined || poles.has(p.index) ? { ...p, contact } : p,
    );
    return { ...part, poles: changed };
  }
  return 'contact' in part ? { ...part, contact } : part;
}

/** What some contacts of a group of equal parts switch. */
interface Duty {
  readonly names: readonly string[];
  readonly poles: ReadonlySet<number>;
  readonly loads: readonly Part[];
}

const isLoad = (p: Part): p is MotorPart | LoadPart => p.kind === 'motor' || p.kind === 'load';

function dutiesOf(study: Study, names: readonly string[]): { mains: Duty; coils: Duty } {
  const rows = checkContacts(study).contacts.filter((c) => names.includes(c.relay));
  const duty = (wanted: (p: Part) => boolean): Duty => {
    const own = rows.flatMap((row) => {
      const loads = (row.load ?? '').split(', ').flatMap((l) => study.plan.parts.get(l) ?? []);
      return loads.some(wanted) ? [{ row, loads }] : [];
    });
    return {
      names: [...new Set(own.map((o) => o.row.relay))],
      poles: new Set(own.map((o) => o.row.pole)),
      loads: [...new Set(own.flatMap((o) => o.loads))],
    };
  };
  return { mains: duty(isLoad), coils: duty((p) => !isLoad(p)) };
}

/** Question 6 for the contacts of a duty. */
function judgeDuty({ names, poles, loads }: Duty): (study: Study) => Trouble[] {
  const own = new Set(loads.map((l) => l.name));
  return (study) =>
    checkContacts(study)
      .contacts.filter(
        (c) =>
          names.includes(c.relay) && poles.has(c.pole) && (c.load ?? '').split(', ').some((l) => own.has(l)),
      )
      .filter((c) => c.verdict !== 'yes')
      .map((c) => ({
        id: 'contact',
        severity: c.verdict === 'no' ? 'fault' : 'doubt',
        message: `the contact of ${c.relay} for ${c.load} cannot be sized: ${c.basis}`,
      }));
}

function ladder<T>(study: Study, duty: Duty, sizes: readonly T[], contact: (size: T) => Contact): Least<T> {
  const plan = (size: T): Plan =>
    withParts(study.plan, duty.names, (p) => withContact(p, contact(size), duty.poles));
  return leastOf(study, { sizes, plan, judge: judgeDuty(duty) });
}

/** The contacts that the plan has on some poles of equal parts; no figure above theirs is called the least. */
function ownContacts(study: Study, names: readonly string[], poles?: ReadonlySet<number>): Contact[] {
  const part = study.plan.parts.get(names[0] ?? '');
  if (part === undefined) return [];
  if ('poles' in part)
    return part.poles.flatMap((p) =>
      p.contact !== undefined && (poles === undefined || poles.has(p.index)) ? [p.contact] : [],
    );
  return 'contact' in part && part.contact !== undefined ? [part.contact] : [];
}

const ratedAmps = (contacts: readonly Contact[], kind: CurrentKind): number[] =>
  contacts.flatMap((c) => c.ratings.filter((r) => r.kind === kind).map((r) => r.amps));

class Collected {
  readonly least: LeastRating[] = [];
  readonly untold: string[] = [];

  add<T>(found: Least<T>, of: Figure<T>): void {
    if ('untold' in found) this.untold.push(found.untold);
    else this.least.push(ratingOf(found, of));
  }

  done(): LeastRatings {
    // One way of rating is enough; what the others lack is not told beside it.
    return { least: this.least, untold: this.least.length > 0 ? [] : [...new Set(this.untold)] };
  }
}

interface Mark {
  readonly horsepower: number;
  readonly label: string;
}

function marksWith(listed: readonly Mark[], own: readonly number[]): Mark[] {
  const labels = new Map(listed.map((m) => [m.horsepower, m.label]));
  return sizesWith([...labels.keys()], own).map((horsepower) => ({
    horsepower,
    label: labels.get(horsepower) ?? num(horsepower),
  }));
}

/** Motor rating, AC-3, and making current for motors; plain amperes for other loads. */
function mainsContact(study: Study, duty: Duty): LeastRatings {
  const loads = duty.loads.filter(isLoad);
  const { practice } = study.plan;
  const { nature, phases, currents } = combineLoads(loads, practice);
  const { volts, kind } = loads.reduce((a, b) => (b.volts.volts > a.volts.volts ? b : a)).volts;
  const own = ownContacts(study, duty.names, duty.poles);
  const found = new Collected();
  const plain = (amps: number): Contact => ({ ratings: [{ amps, volts, kind }], motor: [] });
  if (nature !== 'motor' || kind === 'dc') {
    found.add(ladder(study, duty, sizesWith(PLAIN_AMPS, ratedAmps(own, kind)), plain), {
      ...{ what: 'contact', unit: 'A', value: (amps) => amps },
      words: (amps) => `contact rated ${num(amps)} A at ${place(volts, kind)}`,
    });
    return found.done();
  }
  const suffix = phases === 3 ? ' 3-phase' : '';
  if (practice === 'nec') {
    const listed: readonly Mark[] =
      phases === 3 ? tables.motorFlcThree().rows : tables.horsepowerRatings().rows;
    const marks = marksWith(
      listed,
      own.flatMap((c) => c.motor.filter((m) => m.phases === phases).map((m) => m.horsepower)),
    );
    const contact = ({ horsepower }: Mark): Contact => ({
      ratings: [],
      motor: [{ horsepower, watts: horsepower * WATTS_PER_HORSEPOWER, volts, kind, phases }],
    });
    found.add(ladder(study, duty, marks, contact), {
      ...{ what: 'motor rating', unit: 'hp', value: (mark) => mark.horsepower },
      words: ({ label }) => `contact marked ${label} hp at ${place(volts, kind)}${suffix}`,
    });
  }
  found.add(
    ladder(
      study,
      duty,
      sizesWith(
        AC3_AMPS,
        own.map((c) => c.ac3),
      ),
      (amps) => ({ ...plain(amps), ac3: amps }),
    ),
    {
      ...{ what: 'AC-3', unit: 'A', value: (amps) => amps },
      words: (amps) => `AC-3 ${num(amps)} A at ${place(volts, kind)}${suffix}`,
    },
  );
  const running = Math.ceil(currents.running?.amps ?? 0);
  if (running > 0) {
    const sizes = Array.from({ length: MOST_MAKE }, (_, i) => i + 1);
    found.add(
      ladder(study, duty, sizes, (make) => ({ ...plain(running), make })),
      {
        ...{ what: 'making current', unit: 'A', value: (make) => make },
        words: (make) => `contact rated ${running} A that states it makes ${make} A at ${place(volts, kind)}`,
      },
    );
  }
  return found.done();
}

/** Pilot-duty code, and AC-15 or DC-13, of a contact before another relay's coil. */
function coilContact(study: Study, duty: Duty): LeastRatings {
  const coils = duty.loads.flatMap((p) =>
    'coil' in p && p.coil ? [p.coil.rated] : 'supply' in p ? [p.supply] : [],
  );
  if (coils.length === 0) return { least: [], untold: [] };
  const { volts, kind } = coils.reduce((a, b) => (b.volts > a.volts ? b : a));
  const found = new Collected();
  const rated = (amps: number): Contact => ({ ratings: [{ amps, volts, kind }], motor: [] });
  found.add(
    ladder(study, duty, PILOTS[kind], (pilot) => ({ ...rated(1), pilot })),
    {
      ...{ what: 'pilot duty', unit: '', value: () => null },
      words: (pilot) => `pilot duty ${pilot} (for the coil)`,
    },
  );
  const own = ownContacts(study, duty.names, duty.poles).map((c) => (kind === 'ac' ? c.ac15 : c.dc13));
  const category = kind === 'ac' ? 'AC-15' : 'DC-13';
  found.add(
    ladder(study, duty, sizesWith(COIL_AMPS, own), (amps) => ({
      ...rated(amps),
      ...(kind === 'ac' ? { ac15: amps } : { dc13: amps }),
    })),
    {
      ...{ what: category, unit: 'A', value: (amps) => amps },
      words: (amps) => `${category} ${num(amps)} A at ${place(volts, kind)} (for the coil)`,
    },
  );
  return found.done();
}

const LOOP_IDS = ['switch-overloaded', 'switch-kind-unrated', 'switch-underloaded'];

/** Volts of the loop a switch lies in, from the sources that reach its terminals. */
function loopVolts(study: Study, name: string): { volts: number; kind: CurrentKind } | undefined {
  const reach = reachOf(study.circuit, study.sides);
  const nets = [...study.circuit.landed.keys()]
    .filter((key) => key.startsWith(`${name}.`))
    .flatMap((key) => study.circuit.netOf.get(key) ?? []);
  const found = study.circuit.sources
    .filter((s) => !s.mains && nets.some((n) => reach(s).has(n)))
    .map((s) => ({ volts: s.rails[0]!.re, kind: s.kind }));
  return found.reduce<{ volts: number; kind: CurrentKind } | undefined>(
    (a, b) => (a && a.volts >= b.volts ? a : b),
    undefined,
  );
}

/** Amperes a switch of the loop has to be rated for, and the least current it may need. */
function loopContact(study: Study, names: readonly string[]): LeastRatings {
  const own = names.filter((n) => loopVolts(study, n) !== undefined);
  const at = own[0] === undefined ? undefined : loopVolts(study, own[0]);
  // A switch that carries no coil's current is not judged, so nothing limits it.
  if (at === undefined || study.fedCoils.length === 0 || !carriesCoil(study, own))
    return { least: [], untold: [] };
  const judge = (ids: readonly string[]) => (s: Study) =>
    checkLoop(s, []).filter((f) => ids.includes(f.id) && f.parts.some((p) => own.includes(p)));
  const { volts, kind } = at;
  const found = new Collected();
  const rating = (amps: number) => [{ amps, volts, kind }];
  const plan = (contact: Contact) => withParts(study.plan, own, (p) => withContact(p, contact));
  found.add(
    leastOf(study, {
      sizes: sizesWith(LOOP_AMPS, ratedAmps(ownContacts(study, own), kind)),
      plan: (amps) => plan({ ratings: rating(amps), motor: [] }),
      judge: judge(LOOP_IDS.slice(0, 2)),
    }),
    {
      ...{ what: 'contact', unit: 'A', value: (amps) => amps },
      words: (amps) => `contact rated ${num(amps)} A at ${place(volts, kind)}`,
    },
  );
  const least = ownContacts(study, own).map((c) => c.least?.amps);
  found.add(
    leastOf(study, {
      sizes: sizesWith(LEAST_AMPS, least).reverse(),
      plan: (amps) => plan({ ratings: rating(100), motor: [], least: { amps, volts, kind } }),
      judge: judge(LOOP_IDS.slice(2)),
    }),
    {
      ...{ what: 'least current', unit: 'A', value: (amps) => amps, more: '' },
      words: (amps) => `least current of ${num(amps * 1000)} mA or less`,
    },
  );
  return found.done();
}

/** Whether the check judges any of these switches: without a rating it has to say so. */
function carriesCoil(study: Study, names: readonly string[]): boolean {
  const plan = withParts(study.plan, names, (p) => withContact(p, { ratings: [], motor: [] }));
  return checkLoop(study.withFigures(plan), []).some(
    (f) => f.id === 'switch-kind-unrated' && f.parts.some((p) => names.includes(p)),
  );
}

/** The least contact of equal parts, in whatever circuits they switch. */
export function leastContacts(study: Study, names: readonly string[]): LeastRatings {
  const { mains, coils } = dutiesOf(study, names);
  const found = [
    ...(mains.names.length > 0 ? [mainsContact(study, mains)] : []),
    ...(coils.names.length > 0 ? [coilContact(study, coils)] : []),
    loopContact(study, names),
  ];
  return { least: found.flatMap((f) => f.least), untold: found.flatMap((f) => f.untold) };
}
