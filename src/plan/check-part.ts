/** What a schema cannot say of a part: fields that need each other, or contradict each other. */

import { ampsText } from '../text/numbers.ts';
import type { Errors, Span } from './errors.ts';
import { found, type Subject } from './issues.ts';
import { nameProblem } from './names.ts';
import type { Limit } from './plan.ts';
import type { AnyFields, Fields } from './schema.ts';
import type { Spots, Tree, TreeMap } from './tree.ts';

type CoilFields = Fields['relay']['coil'];
type ContactFields = NonNullable<Fields['relay']['contact']>;
type Add = (path: readonly (string | number)[], text: string) => void;

/** Two figures of one coil may differ by this before they contradict each other. */
const COIL_DISAGREEMENT = 1.1;

/** Adds the errors of a part whose fields each are well; returns the keys they stand in. */
export function checkPart(
  errors: Errors,
  spots: Spots,
  tree: TreeMap,
  fields: AnyFields,
  subject: Subject,
  skip: ReadonlySet<string> = new Set(),
): Set<string> {
  const broken = new Set<string>();
  const add: Add = (path, text) => {
    if (skip.has(String(path[0]))) return;
    broken.add(String(path[0] ?? 'kind'));
    errors.add(spanAt(tree, path, spots, subject.at), text, subject.name);
  };
  const has = (key: string): boolean => key in tree;
  switch (fields.kind) {
    case 'relay':
    case 'timer':
      if (fields.coil !== undefined) checkCoil(fields.coil, add);
      checkPoles(fields, add);
      break;
    case 'board':
      if (fields.coil !== undefined) checkCoil(fields.coil, add);
      if (fields.contact !== undefined) checkContact(fields.contact, ['contact'], add);
      break;
    case 'gate':
    case 'switch':
    case 'button':
    case 'cutout':
      if (fields.contact !== undefined) checkContact(fields.contact, ['contact'], add);
      if (fields.terminals !== undefined) checkTabs(fields.terminals, add);
      break;
    case 'selector':
      if (fields.contact !== undefined) checkContact(fields.contact, ['contact'], add);
      checkPositions(fields, add);
      break;
    case 'battery':
      if (fields.lowest !== undefined && fields.highest !== undefined && fields.lowest > fields.highest) {
        add(['lowest'], 'lowest is above highest; expected the lower voltage here');
      }
      break;
    case 'motor':
      if (!has('power') && !has('amps')) add([], 'a motor needs power or amps');
      checkFeed(fields, add);
      if (fields.type === 'three-phase' && fields.phases === 1) {
        add(['phases'], 'phases: found 1, but type is three-phase; expected 3');
      }
      break;
    case 'load':
    case 'plug':
    case 'outlet':
      checkFeed(fields, add);
      break;
    default:
  }
  return broken;
}

function spanAt(tree: Tree, path: readonly (string | number)[], spots: Spots, at: Span): Span {
  let node: Tree | undefined = tree;
  let span = at;
  for (const step of path) {
    if (typeof node !== 'object' || node === null) break;
    const spot = spots.of(node).get(String(step));
    if (spot === undefined) break;
    const next: Tree | undefined = (node as TreeMap)[String(step)];
    span = typeof next === 'object' ? spot.key : spot.value;
    node = next;
  }
  return span;
}

function checkFeed(fields: { phases?: 1 | 3 | undefined; legs?: 1 | 2 | undefined }, add: Add): void {
  if (fields.phases === 3 && fields.legs !== undefined)
    add(['legs'], 'legs: not with phases: 3; leave one of them out');
}

function inVolts(limit: Limit, rated: number): number {
  return 'volts' in limit ? limit.volts : limit.fraction * rated;
}

function checkCoil(coil: CoilFields, add: Add): void {
  const { rated } = coil;
  if (rated === undefined) return;
  const { resistance, current, power } = coil;
  if (resistance === undefined && current === undefined && power === undefined) {
    add(['coil'], 'coil: needs resistance, current or power');
  }
  const draws: [key: string, amps: number][] = [];
  if (rated.kind === 'dc') {
    if (resistance !== undefined) draws.push(['resistance', rated.volts / resistance]);
    if (current !== undefined) draws.push(['current', current]);
    if (power !== undefined) draws.push(['power', power.watts / rated.volts]);
    const sorted = [...draws].sort((a, b) => a[1] - b[1]);
    const least = sorted[0];
    const most = sorted.at(-1);
    if (least !== undefined && most !== undefined && most[1] > least[1] * COIL_DISAGREEMENT) {
      const second = draws.findLast(([key]) => key === least[0] || key === most[0])!;
      const list = draws.map(([key, value]) => `${key} gives ${ampsText(value)}`).join(', ');
      add(['coil', second[0]], `coil: the figures disagree by more than 10 % at ${rated.volts} V: ${list}`);
    }
    if (coil.frequency !== undefined) add(['coil', 'frequency'], 'coil.frequency: not with a DC coil');
    if (coil.inrush !== undefined)
      add(['coil', 'inrush'], 'coil.inrush: a DC coil has no inrush; leave it out');
  }
  checkLimits(coil, rated.volts, add);
}

function checkLimits(coil: CoilFields, rated: number, add: Add): void {
  const pull = coil['pull-in'];
  const drop = coil['drop-out'];
  const { most } = coil;
  if (pull !== undefined && inVolts(pull, rated) > rated * 1.0001) {
    add(['coil', 'pull-in'], 'coil.pull-in: above the rated voltage; expected 100 % or less');
  }
  if (pull !== undefined && drop !== undefined && inVolts(drop, rated) >= inVolts(pull, rated)) {
    add(
      ['coil', 'drop-out'],
      'coil.drop-out: not below pull-in; a relay lets go at a lower voltage than it pulls in',
    );
  }
  if (most !== undefined && inVolts(most, rated) < rated * 0.9999) {
    add(['coil', 'most'], 'coil.most: below the rated voltage; expected 100 % or more');
  }
}

function rated(contact: ContactFields): boolean {
  return (
    contact.ratings !== undefined ||
    contact.motor !== undefined ||
    contact['ac-3'] !== undefined ||
    contact.pilot !== undefined ||
    contact['ac-15'] !== undefined ||
    contact['dc-13'] !== undefined ||
    contact['locked-rotor'] !== undefined ||
    contact.make !== undefined
  );
}

function checkContact(contact: ContactFields, path: readonly (string | number)[], add: Add): void {
  if (!rated(contact)) add(path, `${path.join('.')}: needs ratings, such as [5 A 250 V AC]`);
}

function checkPoles(fields: Fields['relay'] | Fields['timer'], add: Add): void {
  const { contact, poles } = fields;
  if (poles !== undefined && poles.length === 0)
    add(['poles'], 'poles: found an empty list, expected one entry a contact');
  const own = poles !== undefined && poles.length > 0 && poles.every((pole) => pole.contact !== undefined);
  if (contact === undefined) {
    if (!own) {
      add(
        [],
        `${fields.kind === 'relay' ? 'a relay' : 'a timer'} needs contact, unless each of its poles has one`,
      );
      return;
    }
  } else if (poles === undefined || rated(contact) || !own) checkContact(contact, ['contact'], add);
  for (const [index, pole] of (poles ?? []).entries()) {
    if (pole.contact !== undefined && !rated({ ...contact, ...pole.contact })) {
      checkContact(pole.contact, ['poles', index, 'contact'], add);
    }
    const count = pole.form === 'changeover' ? 3 : 2;
    if (pole.marks !== undefined && pole.marks.length !== count) {
      const such = { make: '[13, 14]', break: '[21, 22]', changeover: '[11, 12, 14] (common, break, make)' }[
        pole.form
      ];
      add(
        ['poles', index, 'marks'],
        `poles.${index}.marks: found ${pole.marks.length}, expected ${count} for ${pole.form}, such as ${such}`,
      );
    }
  }
}

function checkTabs(tabs: readonly string[], add: Add): void {
  for (const [index, tab] of tabs.entries()) {
    if (tabs.indexOf(tab) !== index) add(['terminals', index], `terminals: ${tab} stands twice`);
  }
  if (!tabs.includes('COM') || tabs.length < 2) {
    add(['terminals'], 'terminals: expected COM with NO, NC or both, such as [COM, NO]');
  }
}

function checkPositions(fields: Fields['selector'], add: Add): void {
  const { positions, rest } = fields;
  if (positions === undefined) return;
  if (positions.length < 2)
    add(['positions'], 'positions: expected three or more, such as [auto, off, hand]');
  const seen = new Map<string, string>();
  for (const [index, position] of positions.entries()) {
    const problem = nameProblem(position);
    if (problem !== undefined) add(['positions', index], `positions: ${problem}`);
    const other = seen.get(position.toLowerCase());
    if (other !== undefined) {
      const twins =
        other === position ? `${position} stands twice` : `${position} and ${other} differ only in case`;
      add(['positions', index], `positions: ${twins}`);
    }
    if (position === 'COM')
      add(['positions', index], 'positions: COM is the common terminal; choose another name');
    seen.set(position.toLowerCase(), position);
  }
  if (rest !== undefined && !positions.includes(rest)) {
    add(
      ['rest'],
      `rest: found ${found(rest)}, expected one of its positions: ${positions.slice(0, 12).join(', ')}`,
    );
  }
}
