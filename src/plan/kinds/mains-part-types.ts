/** The kinds of part on the mains side, and boxes. */

import type { Power, Volts } from '../device-figures.ts';
import type { FuseClass, PartBase } from './part-base.ts';

/** How a mains part is fed: which terminals it has. Resolved by the rules of reading. */
export type Feed = 'single' | 'two-leg' | 'three-phase' | 'dc';

/** What parts on the mains have. */
export interface MainsBase extends PartBase {
  /** which terminals it has */
  readonly feed: Feed;
  /** phases, legs as typed */
  readonly phases?: 1 | 3;
  /** live conductors of a single-phase part, as typed */
  readonly legs?: 1 | 2;
  /** what lies at earth potential between two legs, of a plug or outlet; undefined where nobody says */
  readonly midpoint?: Midpoint;
}

/** `earthed`: each leg lies half the volts away from earth, or of two phases of a star the star's own. */
export type Midpoint = 'earthed' | 'none';

/** A plug in an outlet of the building, or a fixed feed. */
export interface PlugPart extends MainsBase {
  /** kind of part */
  readonly kind: 'plug';
  /** V between its live conductors, or to neutral where it has one */
  readonly volts: Volts;
  /** pattern of the outlet it goes into, as typed */
  readonly pattern?: string;
  /** A */
  readonly breaker?: number;
  /** letter of the breaker's curve where typed (`16 A C`) */
  readonly curve?: string;
  /** Hz */
  readonly frequency?: number;
  /** A */
  readonly fuse?: number;
  /** class of that fuse where typed (`10 A gG`) */
  readonly fuseClass?: FuseClass;
  /** °C the terminals of its circuit are marked for */
  readonly terminalRating?: number;
}

/** An outlet that the circuit feeds. */
export interface OutletPart extends MainsBase {
  /** kind of part */
  readonly kind: 'outlet';
  /** as typed */
  readonly pattern?: string;
  /** °C its terminals are marked for */
  readonly terminalRating?: number;
}

/** A motor. */
export interface MotorPart extends MainsBase {
  /** kind of part */
  readonly kind: 'motor';
  /** V, rated */
  readonly volts: Volts;
  /** as on the plate */
  readonly power?: Power;
  /** A, as on the plate */
  readonly amps?: number;
  /** A */
  readonly lockedRotor?: number;
  /** code letter */
  readonly code?: string;
  /** how it starts */
  readonly type?: 'capacitor-start' | 'split-phase' | 'permanent-split' | 'universal' | 'three-phase';
  /** overload protection of its own */
  readonly protector?: 'none' | 'manual' | 'automatic';
  /** double insulated, so that it has no earth */
  readonly class2Insulated: boolean;
  /** as on the plate, 1 or more */
  readonly serviceFactor?: number;
  /** how often it is started */
  readonly startsPerHour?: number;
  /** share of one */
  readonly efficiency?: number;
  /** share of one */
  readonly powerFactor?: number;
  /** name of the outlet it is plugged into */
  readonly pluggedInto?: string;
  /** name of the joint that the metal it sits on is, where its minus goes there */
  readonly returnsThrough?: string;
}

/** A load that is no motor. */
export interface LoadPart extends MainsBase {
  /** kind of part */
  readonly kind: 'load';
  /** V, rated */
  readonly volts: Volts;
  /** as printed */
  readonly power?: Power;
  /** A, as printed */
  readonly amps?: number;
  /** what kind of load it is */
  readonly type?: 'lamp' | 'heater' | 'transformer' | 'electronic';
  /** double insulated, so that it has no earth */
  readonly class2Insulated: boolean;
  /** name of the outlet it is plugged into */
  readonly pluggedInto?: string;
  /** name of the joint that the metal it sits on is, where its minus goes there */
  readonly returnsThrough?: string;
}

/** A box that holds parts. */
export interface BoxPart extends PartBase {
  /** kind of part */
  readonly kind: 'box';
  /** names of the parts in it */
  readonly holds: readonly string[];
  /** m³ */
  readonly volume?: number;
  /** of metal */
  readonly metal: boolean;
  /** a wall parts mains from low voltage */
  readonly divider?: boolean;
  /** degree of protection as typed */
  readonly enclosure?: string;
}
