/** The kinds of part that a plan can have, one row each: a kind without a row does not compile. */
import * as z from 'zod/mini';
import { kept } from '../map-entries.ts';
import type { Part, PartByKind, PartKind } from '../part-types.ts';
import { box } from './box.ts';
import type { KindRow } from './kind-row.ts';
import { diode, fuse, joint, lamp, led, resistor } from './loop-parts.ts';
import { load, motor, outlet, plug } from './mains.ts';
import { board, relay, timer } from './relays.ts';
import { battery, supply } from './sources.ts';
import { button, cutout, gate, handSwitch, selector } from './switches.ts';

const typed = {
  supply,
  battery,
  gate,
  switch: handSwitch,
  selector,
  button,
  cutout,
  relay,
  timer,
  board,
  diode,
  resistor,
  lamp,
  led,
  fuse,
  joint,
  plug,
  outlet,
  motor,
  load,
  box,
} as const satisfies Record<PartKind, object>;

type Schemas = { [K in PartKind]: ReturnType<(typeof typed)[K]['schema']> };
/** The values of one kind of part, in SI. */
export type Fields = { [K in PartKind]: z.output<Schemas[K]> };
export type AnyFields = Fields[PartKind];

type Rows = { readonly [K in PartKind]: KindRow<Fields[K], PartByKind[K], Schemas[K]> };
const rows: Rows = typed;

export const KINDS = Object.keys(rows) as PartKind[];
export const isKind = (name: string): name is PartKind => Object.hasOwn(rows, name);

/** The row of a kind. It takes the fields of that kind only, as `fields.kind` names it. */
export function rowOf(kind: PartKind): KindRow<AnyFields, Part> {
  return rows[kind] as unknown as KindRow<AnyFields, Part>;
}

/** The schema of each kind with every field optional, for stock and for parts with something wrong in them. */
const partials = new Map<PartKind, z.ZodMiniObject>();
export function partialSchema(kind: PartKind): z.ZodMiniObject {
  return kept(partials, kind, () => z.required(z.partial(rowOf(kind).schema()), { kind: true }));
}
