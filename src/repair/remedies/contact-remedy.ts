/** Another contact in place of one that does not serve: by horsepower, AC-3, plain amperes, pilot duty. */
import type { JudgedContact } from '../../findings/contacts/judged-contact.ts';
import { judgedContacts } from '../../findings/contacts/judged-contacts.ts';
import type { Finding } from '../../findings/report-model.ts';
import { CATEGORIES, type Contact } from '../../plan/device-figures.ts';
import type { Part } from '../../plan/part-types.ts';
import { combineLoads } from '../../ratings/load.ts';
import { rounded } from '../../text/numbers.ts';
import type { Bench } from './bench.ts';
import { type Change, partChange } from './change.ts';
import {
  type ContactPlace,
  markContact,
  motorMarks,
  PILOTS,
  placeText,
  plainContact,
} from './contact-sizes.ts';
import { ratingText } from './loop-remedy.ts';
import { withContact } from './put.ts';
import type { Option } from './search.ts';
import { AC3_AMPS, COIL_AMPS, PLAIN_AMPS } from './series.ts';

/** One size of contact, with how it is asked for and how the plan writes it. */
interface Size {
  readonly contact: Contact;
  readonly words: string;
}

/** What one part's contacts have to switch. */
interface Duty {
  readonly part: Part;
  readonly judged: readonly JudgedContact[];
  readonly place: ContactPlace;
}

const num = (x: number): string => `${rounded(x, 6)}`;

/** `ac-3: 12 A 230 V AC` */
const categoryTexts = (c: Contact, fields: readonly string[]): string[] =>
  CATEGORIES.filter(({ field }) => fields.includes(field)).flatMap(({ field, key, kind }) => {
    const [amps, upTo] = [c[field], c.upTo?.[field]];
    if (amps === undefined) return [];
    return [`${key}: ${num(amps)} A${upTo === undefined ? '' : ` ${num(upTo)} V ${kind.toUpperCase()}`}`];
  });

/** The contact as a plan writes it. */
function contactText(c: Contact): string {
  const fields = [
    ...(c.ratings.length > 0 ? [`ratings: [${c.ratings.map(ratingText).join(', ')}]`] : []),
    ...(c.motor.length > 0
      ? [
          `motor: [${c.motor.map((m) => `${num(m.horsepower)} hp ${placeText(m)}${m.phases === 3 ? ' 3-phase' : ''}`).join(', ')}]`,
        ]
      : []),
    ...categoryTexts(c, ['ac3']),
    ...(c.pilot === undefined ? [] : [`pilot: ${c.pilot}`]),
    ...categoryTexts(c, ['ac15', 'dc13']),
    ...(c.make === undefined ? [] : [`make: ${num(c.make)} A`]),
  ];
  return `{${fields.join(', ')}}`;
}

/** Every way of rating a contact that switches what the finding's does. */
export function otherContact(bench: Bench, f: Finding): Option[] {
  const { study } = bench;
  const rows = judgedContacts(study).filter((g) => g.part.name === f.parts[0]);
  const failing = rows.filter((g) => g.judged.some((j) => j.verdict !== 'pass'));
  const [first] = failing.length > 0 ? failing : rows;
  if (!first) return [];
  const judged = rows.filter((g) => g.feeds === first.feeds);
  const duty = { part: first.part, judged, place: placeOf(bench, judged) };
  const ways = first.feeds === 'coil' ? coilWays(duty) : loadWays(bench, duty);
  return ways.map((sizes) => optionOf(bench, f, duty, sizes));
}

/** A that contacts for DC motors are sold to make. */
const DC_MAKES = [30, 60, 100, 150, 200, 300, 500];

function placeOf({ study: { plan } }: Bench, judged: readonly JudgedContact[]): ContactPlace {
  const { volts, kind } = judged.reduce((a, b) => (b.volts > a.volts ? b : a));
  const loads = judged.flatMap((g) => g.loads).flatMap((l) => plan.parts.get(l) ?? []);
  const own = loads.filter((p) => p.kind === 'motor' || p.kind === 'load');
  return { volts, kind, phases: own.length > 0 ? combineLoads(own, plan.practice).phases : 1 };
}

function loadWays({ study: { plan } }: Bench, { judged, place, part }: Duty): Size[][] {
  const loads = judged.flatMap((g) => g.loads).flatMap((l) => plan.parts.get(l) ?? []);
  const own = loads.filter((p) => p.kind === 'motor' || p.kind === 'load');
  const phase = place.phases === 3 ? ' 3-phase' : '';
  const noun =
    part.kind === 'relay' || part.kind === 'timer' || part.kind === 'board' ? 'a contact' : 'a switch';
  const plain = PLAIN_AMPS.map((amps) => ({
    contact: plainContact(amps, place),
    words: `${noun} rated at least ${ratingText({ amps, ...place })}`,
  }));
  const isMotor = combineLoads(own, plan.practice).nature === 'motor';
  if (isMotor && place.kind === 'dc') {
    const makes = PLAIN_AMPS.flatMap((amps) =>
      DC_MAKES.filter((make) => make >= amps).map((make) => ({
        contact: { ...plainContact(amps, place), make },
        words: `${noun} rated at least ${ratingText({ amps, ...place })} that can make at least ${make} A (make: ${make} A)`,
      })),
    );
    return [makes];
  }
  if (!isMotor || place.kind === 'dc') return [plain];
  const marks = motorMarks(place.phases).map((mark) => ({
    contact: markContact(mark, place),
    words: `${noun} marked at least ${mark.label} hp at ${placeText(place)}${phase}`,
  }));
  const ac3 = AC3_AMPS.map((amps) => ({
    contact: { ...plainContact(amps, place), ac3: amps },
    words: `a contactor with AC-3 of at least ${amps} A at ${placeText(place)}${phase}`,
  }));
  const hand = judged.some((g) => g.device === 'hand-switch') && place.phases === 1;
  const snap = plain.map((s) => ({ ...s, words: s.words.replace('a switch', 'an AC snap switch') }));
  return [...(plan.practice === 'nec' ? [marks] : []), ac3, ...(hand ? [snap] : [])];
}

function coilWays({ place }: Duty): Size[][] {
  const { kind } = place;
  const codes = PILOTS[kind].map((pilot) => ({
    contact: { ratings: [], motor: [], pilot },
    words: `a contact marked pilot duty ${pilot} or better`,
  }));
  const category = kind === 'ac' ? 'AC-15' : 'DC-13';
  const amps = COIL_AMPS.map((a) => ({
    contact: { ...plainContact(a, place), ...(kind === 'ac' ? { ac15: a } : { dc13: a }) },
    words: `a control contact with ${category} of at least ${a} A at ${placeText(place)}`,
  }));
  return [codes, amps];
}

function optionOf(bench: Bench, f: Finding, duty: Duty, sizes: readonly Size[]): Option {
  const changes = sizes.map((s) => [changeOf(duty, s)]);
  const loads = new Set(duty.judged.flatMap((g) => g.loads));
  const serves = (i: number): boolean => {
    if (bench.purse.single-- <= 0) return false;
    const own = judgedContacts(bench.after(changes[i]!)).filter(
      (g) =>
        g.part.name === duty.part.name &&
        g.feeds === duty.judged[0]!.feeds &&
        g.loads.some((l) => loads.has(l)),
    );
    return own.every((g) => g.judged.every((j) => j.verdict === 'pass')) && bench.isGone(f, changes[i]!);
  };
  return { sizes: changes, serves };
}

/** The contact on every pole that has to switch; those of other poles stay. A solid-state part gives way to a contact. */
function changeOf({ part, judged }: Duty, { contact, words }: Size): Change {
  const poles = new Set(judged.map((g) => g.pole));
  const whole = !('poles' in part) || part.poles.every((p) => poles.has(p.index));
  const solid = 'technology' in part && part.technology === 'solid-state';
  const value = contactText(contact);
  const keys = whole ? ['contact'] : [...poles].map((p) => `poles.${p - 1}.contact`);
  const fields = {
    ...Object.fromEntries(keys.map((k) => [k, value])),
    ...(solid && { technology: 'contact', 'off-leakage': null }),
  };
  const change = (p: Part): Part => {
    const to = withContact(p, contact, whole ? undefined : poles);
    return solid && 'technology' in to ? metallic(to) : to;
  };
  return partChange(part.name, fields, `use ${words} as ${part.name}`, change, solid);
}

function metallic(part: Extract<Part, { technology: unknown }>): Part {
  if (part.kind === 'board') return { ...part, technology: 'contact' };
  const { off_leakage: _, ...rest } = part;
  return { ...rest, technology: 'contact' };
}
