/** Every kind of part with what can be said of it. */

import type { Coil, Contact, CurrentKind, Position, Power, Volts } from './device-figures.ts';
import type { Likely } from './kinds/failure-modes.ts';

interface PartBase {
  readonly name: string;
  /** position of the part's name in the file */
  readonly at: Position;
  /** positions of the fields that were typed, by dotted path such as `coil.rated` (stock positions included) */
  readonly where: ReadonlyMap<string, Position>;
  /** currency amount, for the shopping list */
  readonly price?: number;
  /** times as likely to fail as such parts in general, by the way to fail */
  readonly likely?: Likely;
}

/** Supply or control transformer, of any output. */
export interface SupplyPart extends PartBase {
  readonly kind: 'supply';
  readonly output: Volts;
  /** what its mains side is made for */
  readonly input?: Volts;
  /** V of the taps of its primary winding, the lowest first; its terminals are named by them */
  readonly taps?: readonly number[];
  readonly frequency?: number;
  /** A at the rated output, where stated; VA and W are converted with the rated voltage */
  readonly limit?: { readonly amps: number; readonly printed: 'A' | 'W' | 'VA'; readonly value: number };
  readonly regulation?: 'regulated' | 'unregulated' | 'transformer';
  readonly tolerance?: number;
  /** V */
  readonly noLoad?: number;
  readonly class2?: boolean;
  /** name of an outlet or plug, or 'always-live' */
  readonly fedFrom?: string;
}

export interface BatteryPart extends PartBase {
  readonly kind: 'battery';
  readonly output: Volts;
  /** A·h */
  readonly capacity?: number;
  /** ohm */
  readonly internalResistance?: number;
  /** V */
  readonly lowest?: number;
  /** V */
  readonly highest?: number;
}

/** Tabs a snap switch has; all three unless the plan says otherwise. */
export type Tab = 'COM' | 'NO' | 'NC';

interface SwitchLike extends PartBase {
  readonly contact: Contact;
  readonly tabs: readonly Tab[];
}
export interface GatePart extends SwitchLike {
  readonly kind: 'gate';
  readonly pressedWhen: 'open' | 'shut';
}
/** Several contacts on one handle: then it has no tabs of its own. */
interface Thrown {
  readonly throws?: readonly Pole[];
}
export interface SwitchPart extends SwitchLike, Thrown {
  readonly kind: 'switch';
}
export interface ButtonPart extends SwitchLike {
  readonly kind: 'button';
}
/** Terminals are COM/NO/NC, and for an overload relay 95, 96 (break) and 97, 98 (make). */
export interface CutoutPart extends SwitchLike, Thrown {
  readonly kind: 'cutout';
  /** A of an overload relay's dial */
  readonly setting?: number;
  /** how an overload relay goes back after a trip */
  readonly reset?: 'manual' | 'automatic';
}
export interface SelectorPart extends PartBase {
  readonly kind: 'selector';
  readonly positions: readonly string[];
  readonly rest: string;
  readonly contact: Contact;
}

/** One pole of a relay with the canonical names of its terminals. */
export interface Pole {
  /** 1-based */
  readonly index: number;
  readonly common: string;
  /** terminal joined to `common` when pulled in */
  readonly make?: string;
  /** terminal joined to `common` when released */
  readonly break?: string;
  readonly contact: Contact;
}

interface CoilDevice extends PartBase {
  readonly coil: Coil;
  readonly poles: readonly Pole[];
  readonly technology: 'contact' | 'solid-state';
  /** as typed; undefined means: polarised if and only if it has a built-in diode */
  readonly polarised?: boolean;
  readonly off_leakage?: number;
  /** insulation between coil and contacts, where the data state it */
  readonly isolation?: 'reinforced' | 'basic' | 'functional';
  /** carries the mark of a testing laboratory */
  readonly listed?: boolean;
}
export interface RelayPart extends CoilDevice {
  readonly kind: 'relay';
  /** stays put after a pulse; `set-reset` has a second coil, B1 B2 */
  readonly bistable?: 'toggle' | 'set-reset';
  /** s that its coil may stay fed; infinite where it may for good */
  readonly pulse?: number;
}
export interface TimerPart extends CoilDevice {
  readonly kind: 'timer';
  readonly function: 'off-delay' | 'on-delay';
  /** s */
  readonly time?: number;
  /** as typed; undefined means: permanent where T1 or T2 is used */
  readonly supplied?: 'permanent' | 'none';
  /** A through a dry contact on T1 T2 */
  readonly triggerCurrent?: number;
  /** ohm of the loop on T1 T2 up to which it counts as closed */
  readonly triggerResistance?: number;
}
export interface BoardPart extends PartBase {
  readonly kind: 'board';
  readonly supply: Volts;
  readonly input: 'low' | 'high';
  /** A */
  readonly inputCurrent?: number;
  /** V */
  readonly threshold?: number;
  readonly coil?: Coil;
  readonly poles: readonly Pole[];
  readonly technology: 'contact' | 'solid-state';
  readonly isolation?: 'reinforced' | 'basic' | 'functional';
  readonly listed?: boolean;
}

export interface DiodePart extends PartBase {
  readonly kind: 'diode';
  readonly current?: number;
  readonly reverse?: number;
  readonly zener?: number;
}
export interface ResistorPart extends PartBase {
  readonly kind: 'resistor' | 'lamp';
  readonly resistance?: number;
  readonly rated?: {
    readonly volts: number;
    readonly kind: CurrentKind;
    readonly watts?: number;
    readonly amps?: number;
  };
  /** what its light tells, as typed; of a lamp */
  readonly shows?: string;
}
export interface LedPart extends PartBase {
  readonly kind: 'led';
  /** V */
  readonly forward?: number;
  /** A */
  readonly current?: number;
  /** what its light tells, as typed */
  readonly shows?: string;
}
/** How a fuse opens: gG and aM of IEC 60269, time-delay and fast as printed on others. */
export type FuseClass = 'gG' | 'aM' | 'time-delay' | 'fast';
export interface FusePart extends PartBase {
  readonly kind: 'fuse';
  /** A */
  readonly rating?: number;
  readonly class?: FuseClass;
}
/** A fuse whose rating is stated. */
export type RatedFuse = FusePart & { readonly rating: number };
export const isRatedFuse = (fuse: FusePart): fuse is RatedFuse => fuse.rating !== undefined;
export interface JointPart extends PartBase {
  readonly kind: 'joint';
}

/** How a mains part is fed: which terminals it has. Resolved by the rules of reading. */
export type Feed = 'single' | 'two-leg' | 'three-phase' | 'dc';

interface MainsBase extends PartBase {
  readonly feed: Feed;
  /** phases, legs as typed */
  readonly phases?: 1 | 3;
  readonly legs?: 1 | 2;
  /** what lies at earth potential between two legs, of a plug or outlet; undefined where nobody says */
  readonly midpoint?: Midpoint;
}
/** `earthed`: each leg lies half the volts away from earth, or of two phases of a star the star's own. */
export type Midpoint = 'earthed' | 'none';
export interface PlugPart extends MainsBase {
  readonly kind: 'plug';
  readonly volts: Volts;
  readonly pattern?: string;
  /** A */
  readonly breaker?: number;
  /** letter of the breaker's curve where typed (`16 A C`) */
  readonly curve?: string;
  readonly frequency?: number;
  /** A */
  readonly fuse?: number;
  /** class of that fuse where typed (`10 A gG`) */
  readonly fuseClass?: FuseClass;
  /** °C the terminals of its circuit are marked for */
  readonly terminalRating?: number;
}
export interface OutletPart extends MainsBase {
  readonly kind: 'outlet';
  readonly pattern?: string;
  /** °C its terminals are marked for */
  readonly terminalRating?: number;
}
export interface MotorPart extends MainsBase {
  readonly kind: 'motor';
  readonly volts: Volts;
  readonly power?: Power;
  readonly amps?: number;
  /** A */
  readonly lockedRotor?: number;
  /** code letter */
  readonly code?: string;
  readonly type?: 'capacitor-start' | 'split-phase' | 'permanent-split' | 'universal' | 'three-phase';
  readonly protector?: 'none' | 'manual' | 'automatic';
  readonly class2Insulated: boolean;
  /** as on the plate, 1 or more */
  readonly serviceFactor?: number;
  readonly startsPerHour?: number;
  readonly efficiency?: number;
  readonly powerFactor?: number;
  readonly pluggedInto?: string;
  /** name of the joint that the metal it sits on is, where its minus goes there */
  readonly returnsThrough?: string;
}
export interface LoadPart extends MainsBase {
  readonly kind: 'load';
  readonly volts: Volts;
  readonly power?: Power;
  readonly amps?: number;
  readonly type?: 'lamp' | 'heater' | 'transformer' | 'electronic';
  readonly class2Insulated: boolean;
  readonly pluggedInto?: string;
  /** name of the joint that the metal it sits on is, where its minus goes there */
  readonly returnsThrough?: string;
}
export interface BoxPart extends PartBase {
  readonly kind: 'box';
  readonly holds: readonly string[];
  /** m³ */
  readonly volume?: number;
  readonly metal: boolean;
  readonly divider?: boolean;
  /** degree of protection as typed */
  readonly enclosure?: string;
}

export type Part =
  | SupplyPart
  | BatteryPart
  | GatePart
  | SwitchPart
  | ButtonPart
  | CutoutPart
  | SelectorPart
  | RelayPart
  | TimerPart
  | BoardPart
  | DiodePart
  | ResistorPart
  | LedPart
  | FusePart
  | JointPart
  | PlugPart
  | OutletPart
  | MotorPart
  | LoadPart
  | BoxPart;
export type PartKind = Part['kind'];
/** The part of each kind. */
export type PartByKind = { [P in Part as P['kind']]: P };
