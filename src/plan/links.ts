/** Parts that name other parts: what is plugged in, fed, or held in a box; and a part's own marks. */

import { article } from '../text/article.ts';
import { type Errors, quoted, type Span } from './errors.ts';
import type { Written } from './feeds.ts';
import type { FedBy } from './kinds/kind-row.ts';
import { rowOf } from './kinds/kinds.ts';
import { push } from './map-entries.ts';
import type { Feed, PartKind } from './part-types.ts';
import { type Named, type RawPart, shown, some } from './parts.ts';
import type { Terminals } from './terminals.ts';
import type { Spots, TreeList } from './tree.ts';

function valueAt(part: RawPart, key: string, spots: Spots): Span {
  return spots.of(part.tree).get(key)?.value ?? part.at;
}

function checkName(
  errors: Errors,
  named: Named,
  part: RawPart,
  key: string,
  name: string,
  at: Span,
  kinds: readonly PartKind[] | undefined,
): void {
  const target = named.parts.get(name);
  const words = kinds === undefined ? 'a part' : kinds.map(article).join(' or ');
  if (target === undefined) {
    if (named.parts.has(name)) return;
    if (errors.crowded) {
      errors.add(at, `${key}: no part is called ${quoted(name)}`, shown(part.name));
      return;
    }
    const fit = [...named.parts].filter(
      ([, item]) => item !== undefined && (kinds?.includes(item.kind) ?? true),
    );
    const names = fit.map(([fitting]) => fitting);
    const near = errors.hint(name, names);
    const list =
      names.length === 0 ? `; the plan has no ${kinds?.join(' or ')}` : `; expected ${words}: ${some(names)}`;
    errors.add(at, `${key}: no part is called ${quoted(name)}${near || list}`, shown(part.name));
  } else if (kinds !== undefined && !kinds.includes(target.kind)) {
    errors.add(at, `${key}: ${shown(name)} is ${article(target.kind)}, expected ${words}`, shown(part.name));
  }
}

/** Checks the names that parts give of other parts. */
export function checkLinks(
  errors: Errors,
  spots: Spots,
  named: Named,
  joins: readonly (readonly [Written, Written])[],
): void {
  const used = new Map<string, string[]>();
  for (const { part, terminal } of joins.flat()) push(used, part, terminal);
  const boxes = new Map<string, string>();
  for (const part of named.parts.values()) {
    if (part === undefined) continue;
    const { fields } = part;
    const feeder = rowOf(part.kind).fedBy?.(fields);
    if (feeder !== undefined) checkFeeder(errors, spots, named, part, feeder, used.get(part.name));
    if (fields.kind === 'box') checkBox(errors, spots, named, part, fields.holds ?? [], boxes);
  }
}

function checkFeeder(
  errors: Errors,
  spots: Spots,
  named: Named,
  part: RawPart,
  { key, name, kinds, marks, clash }: FedBy,
  used: readonly string[] | undefined,
): void {
  const at = valueAt(part, key, spots);
  if (name !== undefined) checkName(errors, named, part, key, name, at, kinds);
  if (used?.some((mark) => marks?.has(part.fields.marks?.[mark] ?? mark) ?? true))
    errors.add(at, clash(shown(part.name)), shown(part.name));
}

function checkBox(
  errors: Errors,
  spots: Spots,
  named: Named,
  part: RawPart,
  holds: readonly string[],
  boxes: Map<string, string>,
): void {
  const list = part.tree.holds;
  const places = Array.isArray(list) ? spots.of(list as TreeList) : undefined;
  for (const [index, name] of holds.entries()) {
    const at = places?.get(`${index}`)?.value ?? part.at;
    if (name === part.name) errors.add(at, 'holds: a box cannot hold itself', shown(part.name));
    else checkName(errors, named, part, 'holds', name, at, undefined);
    const other = boxes.get(name);
    if (other !== undefined) {
      const text =
        other === part.name
          ? `${shown(name)} stands twice`
          : `${shown(name)} is in the box ${shown(other)} already`;
      errors.add(at, `holds: ${text}`, shown(part.name));
    }
    boxes.set(name, part.name);
  }
}

/** Keys that decide which terminals a part has. */
const SHAPING = [
  'volts',
  'poles',
  'bistable',
  'positions',
  'terminals',
  'marks',
  'output',
  'taps',
  'phases',
  'legs',
  'pattern',
  'type',
];

/** The terminals of every part whose terminals can be told. */
export function readTerminals(
  errors: Errors,
  spots: Spots,
  named: Named,
  feeds: ReadonlyMap<string, Feed>,
): Map<string, Terminals> {
  const all = new Map<string, Terminals>();
  for (const part of named.parts.values()) {
    if (part === undefined || SHAPING.some((key) => part.broken.has(key))) continue;
    const { terminals, terminalsFrom } = rowOf(part.kind);
    if (terminalsFrom !== undefined && !(terminalsFrom in part.tree)) continue;
    const standard = terminals(part.fields, feeds.get(part.name) ?? 'single');
    checkPoleMarks(errors, spots, part);
    all.set(part.name, marked(errors, spots, part, standard));
  }
  return all;
}

function marked(errors: Errors, spots: Spots, part: RawPart, standard: Terminals): Terminals {
  const { marks } = part.fields;
  if (marks === undefined) return standard;
  const places = spots.of(part.tree.marks as TreeList);
  const own: [string, string][] = [];
  for (const [mark, plain] of Object.entries(marks)) {
    const spot = places.get(mark);
    const terminal = standard.find(plain);
    if (terminal === undefined) {
      const near = errors.hint(plain, standard.marks(), ';');
      const text = `marks: found ${quoted(plain)}, expected a terminal of ${article(part.kind)}${near} ${some(standard.names)}`;
      errors.add(spot?.value ?? part.at, text, shown(part.name));
    } else if (standard.find(mark) === mark && mark !== terminal) {
      const text = `marks: ${mark} is the plain name of another terminal; plain names stay valid, so it cannot mean ${terminal}`;
      errors.add(spot?.key ?? part.at, text, shown(part.name));
    } else own.push([mark, terminal]);
  }
  return standard.marked(own);
}

/** Marks of a relay's poles must differ, also from those of its coil. */
function checkPoleMarks(errors: Errors, spots: Spots, part: RawPart): void {
  const { fields } = part;
  if ((fields.kind !== 'relay' && fields.kind !== 'timer') || fields.poles === undefined) return;
  const seen = new Set(['A1', 'A2', ...(fields.kind === 'timer' ? ['T1', 'T2'] : ['B1', 'B2'])]);
  const poles = part.tree.poles as TreeList;
  for (const [index, pole] of fields.poles.entries()) {
    const list = (poles[index] as { marks?: TreeList } | undefined)?.marks;
    for (const [place, mark] of (pole.marks ?? []).entries()) {
      const at = list === undefined ? part.at : (spots.of(list).get(`${place}`)?.value ?? part.at);
      if (seen.has(mark))
        errors.add(at, `poles.${index}.marks: ${quoted(mark)} stands twice on this part`, shown(part.name));
      seen.add(mark);
    }
  }
}
