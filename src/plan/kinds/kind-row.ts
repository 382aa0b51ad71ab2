/** What reading has to know of one kind of part. */
import * as z from 'zod/mini';
import type { Position, Volts } from '../device-figures.ts';
import type { Feed, Part, PartKind } from '../part-types.ts';
import * as q from '../quantity.ts';
import { described, marks, number, optional } from '../schema-fields.ts';
import type { Terminals } from '../terminals.ts';
import type { Likely } from './failure-modes.ts';
import { likely } from './likely.ts';

/** Adds an error at a path inside the part. */
export type Add = (path: readonly (string | number)[], text: string) => void;

/** What every part has besides the fields of its kind. */
export interface Base {
  readonly name: string;
  readonly at: Position;
  readonly where: ReadonlyMap<string, Position>;
  readonly price: number | undefined;
  readonly likely: Likely | undefined;
}

/** What a part takes from its surroundings: its own feed, and the voltage of the plan's mains. */
export interface Surroundings {
  readonly feed: Feed;
  readonly fedVolts: Volts;
}

/** A place in an intent where a part can stand: what is to run, or a key that takes inputs. */
export type IntentPlace = 'target' | 'lamp' | InputKey;
export type InputKey = 'runs-on' | 'blocked-by' | 'stays-on-after' | 'stopped-by' | 'lit-when';

/** A field by which a part names the part that feeds it. */
export interface FedBy {
  readonly key: 'plugged-into' | 'fed-from' | 'returns-through';
  /** undefined where it names no part */
  readonly name: string | undefined;
  readonly kinds: readonly PartKind[];
  /** marks that runs must not use besides, all where it is undefined */
  readonly marks?: ReadonlySet<string>;
  /** what is wrong where they do */
  readonly clash: (shown: string) => string;
}

/**
 * One kind of part: its schema, and functions of the values (in SI) that the schema reads. Where something else is wrong
 * with a part, all but `build` get what could be read, so that any field may be missing there.
 */
export interface KindRow<F, P extends Part, S extends z.ZodMiniObject = z.ZodMiniObject> {
  readonly schema: () => S;
  /** without the part's own `marks` */
  readonly terminals: (fields: F, feed: Feed) => Terminals;
  /** the field without which the terminals cannot be told */
  readonly terminalsFrom?: string;
  /** what a schema cannot say: fields that need each other, or contradict each other */
  readonly check?: (fields: F, add: Add, has: (key: string) => boolean) => void;
  readonly build: (fields: F, base: Base, around: Surroundings) => P;
  /** a default that reading chooses, as a sentence */
  readonly assumed?: (fields: F, shown: string, fedVolts: Volts) => string | undefined;
  /** for parts with mains terminals: the feed that its fields tell, or the marks that runs use on it */
  readonly feed?: (fields: F, marks: ReadonlySet<string>) => Feed | undefined;
  /** a mains conductor passes through it, so that what lies behind it takes after the plug */
  readonly passes: boolean;
  readonly intent: readonly IntentPlace[];
  readonly fedBy?: (fields: F) => FedBy | undefined;
}

/** A row, with its types taken from its schema. */
export const kindRow =
  <P extends Part>() =>
  <S extends z.ZodMiniObject>(row: KindRow<z.output<S>, P, S>): KindRow<z.output<S>, P, S> =>
    row;

export const kind = <const K extends string>(name: K, description: string) =>
  described(z.literal(name), description);

/** Fields every kind has. */
export const common = (of: PartKind) => ({
  marks: optional(marks()),
  price: optional(number(q.price, 'Price, for the shopping list.')),
  likely: optional(likely(of)),
});
