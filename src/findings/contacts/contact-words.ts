/** What is said of a contact: the figure that decides first, then what to look for. */

import type { Position } from '../../plan/device-figures.ts';
import type { Plan } from '../../plan/plan.ts';
import type { ContactJudgement } from '../../ratings/judgement.ts';
import { milliampsText, rounded, roundedOrNull } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import type { FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import type { Severity } from '../report-words.ts';
import { contactOf, type JudgedContact } from './judged-contact.ts';
import { type OpenJudgement, partsAtFault } from './judged-contacts.ts';

const quantity = (x: number, unit: string) =>
  unit === 'A' && x < 0.1 ? milliampsText(x) : `${rounded(x)} ${unit}`;

/** `collector`, or `the coil of Q1`. */
function loadName({ feeds, loads }: JudgedContact): string {
  const names = listOf(loads);
  if (feeds === 'load') return names;
  return loads.length === 1 ? `the coil of ${names}` : `the coils of ${names} together`;
}

function contactName({ part }: JudgedContact): string {
  return `the contact of ${part.name}`;
}

/** For one load and for several. */
const LOAD_VERBS = { runs: ['draws', 'draw'], starts: ['starts at', 'start at'] } as const;
const COIL_VERBS = { runs: ['holds at', 'hold at'], starts: ['pulls in at', 'pull in at'] } as const;

/** The half of a message that says what the load asks. */
function asks(g: JudgedContact, j: ContactJudgement): string {
  const load = loadName(g);
  const many = g.loads.length > 1 ? 1 : 0;
  if (j.aspect === 'voltage') return `the circuit has ${circuitWords(g)}`;
  const runs =
    j.aspect === 'kind' ||
    j.aspect === 'running' ||
    j.aspect === 'horsepower' ||
    (j.aspect === 'motor-rated' && drawsDecide(j));
  const verb = (g.feeds === 'coil' ? COIL_VERBS : LOAD_VERBS)[runs ? 'runs' : 'starts'][many];
  if (j.needed === undefined) return `what ${load} ${verb} is not stated`;
  const figure = quantity(j.needed, j.unit);
  if (j.unit === 'hp') return `${load} ${many ? 'have' : 'has'} ${figure}`;
  const { starting } = g.currents;
  const rough = !runs && starting?.rough === true && starting.least !== undefined;
  return `${load} ${verb} ${rough ? `${rounded(starting.least)} to ${figure}` : figure}`;
}

/** Rules for hand switches and solid-state outputs go by the running current and allow less than the rating. */
function drawsDecide(j: ContactJudgement): boolean {
  return j.multiple < 1;
}

/** The half that says what the contact gives. */
function gives(g: JudgedContact, j: ContactJudgement): string {
  const contact = contactName(g);
  const printed = j.ratingUsed;
  if (j.aspect === 'voltage') {
    if (printed === '') return `${contact} states ${voltless(g)}`;
    return j.found === 0 || j.found === undefined
      ? `${contact} is rated for ${g.kind === 'ac' ? 'DC' : 'AC'} only (${printed})`
      : `${contact} is made for ${rounded(j.found)} V (${printed})`;
  }
  if (j.aspect === 'kind')
    return `${contact} is rated for AC only (${printed})${j.found === undefined ? '' : j.verdict === 'fail' ? `, and such a contact breaks ${quantity(j.found, 'A')} of DC at ${rounded(g.volts)} V at most` : ''}`;
  if (j.found === undefined)
    return j.unit === 'hp'
      ? `${contact} is marked ${printed}, not for this voltage and number of phases (a mark for three ends in 3-phase)`
      : `${contact} has no rating for it${printed === '' ? '' : ` (${printed})`}`;
  const figure = quantity(j.found, j.unit);
  if (j.unit === 'hp') return `${contact} is marked ${figure} (${printed})`;
  if (j.aspect === 'motor-rated' && drawsDecide(j))
    return g.device === 'solid-state'
      ? `${g.part.name} carries ${figure} of motor, 1/6 of its ${printed}`
      : `${contact} may switch ${figure} of motor, 80 % of its ${printed}`;
  if (j.aspect === 'motor-rated' && j.verdict !== 'fail')
    return `${contact} states only ${printed}, which is for heaters`;
  if (j.aspect === 'motor-rated')
    return `${contact} can make ${figure}; its ${printed} is for heaters, not motors`;
  if (j.aspect === 'starting') return `${contact} can make ${figure} (${printed})`;
  if (j.aspect === 'horsepower') return `${contact} is tested for ${figure} (${printed})`;
  return `${contact} ${g.feeds === 'coil' ? 'can break' : 'carries'} ${figure} (${printed})`;
}

/** What is asked of a contact that stands it, and what it stands: `collector starts at 112 A, K1 is good for 120 A`. */
export function spareWords(g: JudgedContact, j: ContactJudgement, stands: number): string {
  return `${asks(g, j)}, ${g.part.name} is good for ${quantity(stands, j.unit)}`;
}

/** "collector starts at 112 A; the contact of K1 can make 45 A ...", for findings and for the answer line. */
function figureWords(g: JudgedContact, j: ContactJudgement): string {
  return `${asks(g, j)}; ${gives(g, j)}`;
}

/** Why a judgement that is left open is told at all. */
function whyOpen(g: JudgedContact, j: ContactJudgement): string {
  if (j.missing === 'contact.motor')
    return missingWords(g, j.missing) === j.missing
      ? 'A rating for heaters says nothing of starting a motor.'
      : 'A mark for other volts or another number of phases says nothing of this motor.';
  return j.missing === 'contact.ratings' && (contactOf(g)?.ratings.length ?? 0) > 0
    ? 'A rating for other volts or the other kind of current says nothing of these.'
    : 'A rating that is not stated is never taken as enough.';
}

/** Where the field in question stands, as far as it was typed. */
function place(g: JudgedContact): Position {
  const { where, at } = g.part;
  const pole = `poles.${g.pole - 1}.contact`;
  return (
    where.get(`${pole}.ratings`) ??
    where.get(pole) ??
    where.get('contact.ratings') ??
    where.get('contact') ??
    at
  );
}

/** What a contact states whose figures name no voltage, or one for coils alone. */
function voltless(g: JudgedContact): string {
  const { pilot, ac15, dc13, ac3, lockedRotor, make } = contactOf(g) ?? {};
  const amps = (figure: number | undefined, category: string) =>
    figure === undefined ? [] : [`${rounded(figure, 4)} A ${category}`];
  const coils = [
    ...(pilot === undefined ? [] : [`pilot duty ${pilot}`]),
    ...amps(ac15, 'AC-15'),
    ...amps(dc13, 'DC-13'),
  ];
  const others = [...amps(ac3, 'AC-3'), ...amps(lockedRotor, 'locked rotor'), ...amps(make, 'to make')];
  if (coils.length + others.length === 0) return 'no voltage';
  const all = listOf([...coils, ...others]);
  return others.length === 0 && g.feeds === 'load'
    ? `${all}, which is for coils`
    : `${all} and no ${g.kind.toUpperCase()} voltage`;
}

const circuitWords = (g: JudgedContact): string => `${rounded(g.volts)} V ${g.kind.toUpperCase()}`;

/** A field that is there but says nothing of this circuit is not missing: a figure for this circuit is. */
function missingWords(g: JudgedContact, missing: string): string {
  if (missing === 'contact.ratings') return `a rating for ${circuitWords(g)}`;
  return missing === 'contact.motor' && (contactOf(g)?.motor.length ?? 0) > 0
    ? 'a mark for this motor'
    : missing;
}

/** By how much a contact falls short. */
function lacking(g: JudgedContact, j: ContactJudgement): string {
  const contact = contactName(g);
  if (j.needed === undefined || j.found === undefined || j.needed <= j.found || j.aspect === 'voltage')
    return `${capital(contact)} has no rating that serves here.`;
  return `${capital(contact)} is ${quantity(j.needed - j.found, j.unit)} short.`;
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

function fix(g: JudgedContact, j: ContactJudgement): string {
  if (j.verdict === 'fail' || j.missing === undefined) return lacking(g, j);
  if (j.missing === 'type')
    return `State what ${listOf(g.loads)} is, type: lamp, heater, transformer or electronic.`;
  if (!j.missing.startsWith('contact.')) return `State ${j.missing} of ${listOf(g.loads)}, as on its plate.`;
  const forCircuit = missingWords(g, j.missing) === j.missing ? '' : ` for ${circuitWords(g)}`;
  return `State ${j.missing} of ${g.part.name}${forCircuit} as printed.`;
}

/** The basis with the editions the tables were taken from. */
export function withEditions(basis: string): string {
  const named = basis
    .replaceAll(/IEC 60947-4-1(?!:)/g, 'IEC 60947-4-1:2009')
    .replaceAll('UL 508 horsepower test', 'UL 508 Table 45.2, horsepower test')
    .replaceAll(/\bnameplate(?!,)/g, 'nameplate, stated');
  return /\bNEC\b/.test(named) && !named.includes('2008') ? `${named} (NEC 2008 to 2023)` : named;
}

/** What only the finding itself says of a contact that fails. */
interface Failure {
  readonly why: string;
  readonly severity?: Severity;
}

/** The finding on one judgement that is not a pass: as `failure` says where the contact fails, else a doubt. */
export function contactFound(
  plan: Plan,
  entry: FindingEntry,
  { contact, judgement }: OpenJudgement,
  failure: Failure,
): Finding {
  const fails = judgement.verdict === 'fail';
  const { missing } = judgement;
  const lacks = fails || missing === undefined ? '' : ` (${missingWords(contact, missing)} is missing)`;
  return found(plan, entry, {
    ...(fails ? failure : { severity: 'doubt', why: whyOpen(contact, judgement) }),
    parts: partsAtFault(contact),
    at: place(contact),
    message: `${figureWords(contact, judgement)}${lacks}`,
    fix: fix(contact, judgement),
    figures: [
      { name: 'needed', value: roundedOrNull(judgement.needed), unit: judgement.unit },
      { name: 'contact', value: roundedOrNull(judgement.found), unit: judgement.unit },
    ],
    basis: withEditions(judgement.basis) || 'a missing figure is never a pass',
    twin: {
      badness: judgement.needed !== undefined && judgement.found ? judgement.needed / judgement.found : 0,
    },
  });
}

/** Why a contact that closes on too much current is a fault. */
export const WELDS =
  'A contact that closes on more current than it is built for welds shut; then the motor runs on with every gate shut.';
