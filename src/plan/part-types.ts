/** Every kind of part with what can be said of it. */

import type { Coil, Contact, CurrentKind, Volts } from './device-figures.ts';
import type { BoxPart, LoadPart, MotorPart, OutletPart, PlugPart } from './kinds/mains-part-types.ts';
import type { FuseClass, PartBase } from './kinds/part-base.ts';

export type * from './kinds/mains-part-types.ts';
export type { FuseClass };

/** Supply or control transformer, of any output. */
export interface SupplyPart extends PartBase {
  /** kind of part */
  readonly kind: 'supply';
  /** V, rated */
  readonly output: Volts;
  /** what its mains side is made for */
  readonly input?: Volts;
  /** V of the taps of its primary winding, the lowest first; its terminals are named by them */
  readonly taps?: readonly number[];
  /** Hz of its mains */
  readonly frequency?: number;
  /** A at the rated output, where stated; VA and W are converted with the rated voltage */
  readonly limit?: {
    /** A */
    readonly amps: number;
    /** unit it was printed in */
    readonly printed: 'A' | 'W' | 'VA';
    /** number that was printed */
    readonly value: number;
  };
  /** how its volts go with the load */
  readonly regulation?: 'regulated' | 'unregulated' | 'transformer';
  /** share of the output volts, 0.05 for 5 % */
  readonly tolerance?: number;
  /** V */
  readonly noLoad?: number;
  /** marked Class 2, or as one that limits itself */
  readonly class2?: boolean;
  /** name of an outlet or plug, or 'always-live' */
  readonly fedFrom?: string;
}

/** A battery. */
export interface BatteryPart extends PartBase {
  /** kind of part */
  readonly kind: 'battery';
  /** V, rated */
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

/** What switches of every kind have. */
export interface SwitchLike extends PartBase {
  /** what its contact is rated for */
  readonly contact: Contact;
  /** which of the tabs it has */
  readonly tabs: readonly Tab[];
}

/** A blast gate with its snap switch. */
export interface GatePart extends SwitchLike {
  /** kind of part */
  readonly kind: 'gate';
  /** position of the gate in which it presses the lever */
  readonly pressedWhen: 'open' | 'shut';
}

/** Several contacts on one handle: then it has no tabs of its own. */
export interface Thrown {
  /** the contacts, each with its terminals */
  readonly throws?: readonly Pole[];
}

/** A switch that stays where it is put. */
export interface SwitchPart extends SwitchLike, Thrown {
  /** kind of part */
  readonly kind: 'switch';
}

/** A button that springs back. */
export interface ButtonPart extends SwitchLike {
  /** kind of part */
  readonly kind: 'button';
}

/** Terminals are COM/NO/NC, and for an overload relay 95, 96 (break) and 97, 98 (make). */
export interface CutoutPart extends SwitchLike, Thrown {
  /** kind of part */
  readonly kind: 'cutout';
  /** A of an overload relay's dial */
  readonly setting?: number;
  /** how an overload relay goes back after a trip */
  readonly reset?: 'manual' | 'automatic';
}

/** A switch of several positions. */
export interface SelectorPart extends PartBase {
  /** kind of part */
  readonly kind: 'selector';
  /** names of its positions */
  readonly positions: readonly string[];
  /** position in which it stands at rest */
  readonly rest: string;
  /** what its contacts are rated for */
  readonly contact: Contact;
}

/** One pole of a relay with the canonical names of its terminals. */
export interface Pole {
  /** 1-based */
  readonly index: number;
  /** terminal at which both ways begin */
  readonly common: string;
  /** terminal joined to `common` when pulled in */
  readonly make?: string;
  /** terminal joined to `common` when released */
  readonly break?: string;
  /** what it is rated for */
  readonly contact: Contact;
}

/** What relays and timers have. */
export interface CoilDevice extends PartBase {
  /** its coil */
  readonly coil: Coil;
  /** its contacts */
  readonly poles: readonly Pole[];
  /** metal that touches, or a semiconductor */
  readonly technology: 'contact' | 'solid-state';
  /** as typed; undefined means: polarised if and only if it has a built-in diode */
  readonly polarised?: boolean;
  /** A that a semiconductor lets through when it is off */
  readonly off_leakage?: number;
  /** insulation between coil and contacts, where the data state it */
  readonly isolation?: 'reinforced' | 'basic' | 'functional';
  /** carries the mark of a testing laboratory */
  readonly listed?: boolean;
}

/** A relay or contactor. */
export interface RelayPart extends CoilDevice {
  /** kind of part */
  readonly kind: 'relay';
  /** stays put after a pulse; `set-reset` has a second coil, B1 B2 */
  readonly bistable?: 'toggle' | 'set-reset';
  /** s that its coil may stay fed; infinite where it may for good */
  readonly pulse?: number;
}

/** A timer relay. */
export interface TimerPart extends CoilDevice {
  /** kind of part */
  readonly kind: 'timer';
  /** what is delayed: letting go, or pulling in */
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

/** A relay board with an input of its own. */
export interface BoardPart extends PartBase {
  /** kind of part */
  readonly kind: 'board';
  /** V between VCC and GND */
  readonly supply: Volts;
  /** level at IN with which its relay pulls in */
  readonly input: 'low' | 'high';
  /** A */
  readonly inputCurrent?: number;
  /** V */
  readonly threshold?: number;
  /** coil of its relay, where the data state it */
  readonly coil?: Coil;
  /** its contacts */
  readonly poles: readonly Pole[];
  /** metal that touches, or a semiconductor */
  readonly technology: 'contact' | 'solid-state';
  /** insulation between loop and contacts, where the data state it */
  readonly isolation?: 'reinforced' | 'basic' | 'functional';
  /** carries the mark of a testing laboratory */
  readonly listed?: boolean;
}

/** A diode. */
export interface DiodePart extends PartBase {
  /** kind of part */
  readonly kind: 'diode';
  /** A */
  readonly current?: number;
  /** V that it blocks */
  readonly reverse?: number;
  /** V at which it conducts backwards */
  readonly zener?: number;
}

/** A resistor, or a lamp with a filament. */
export interface ResistorPart extends PartBase {
  /** kind of part */
  readonly kind: 'resistor' | 'lamp';
  /** ohm */
  readonly resistance?: number;
  /** what is printed on it */
  readonly rated?: {
    /** V */
    readonly volts: number;
    /** direct or alternating */
    readonly kind: CurrentKind;
    /** W */
    readonly watts?: number;
    /** A */
    readonly amps?: number;
  };
  /** what its light tells, as typed; of a lamp */
  readonly shows?: string;
}

/** A light-emitting diode. */
export interface LedPart extends PartBase {
  /** kind of part */
  readonly kind: 'led';
  /** V */
  readonly forward?: number;
  /** A */
  readonly current?: number;
  /** what its light tells, as typed */
  readonly shows?: string;
}

/** A fuse. */
export interface FusePart extends PartBase {
  /** kind of part */
  readonly kind: 'fuse';
  /** A */
  readonly rating?: number;
  /** how it opens */
  readonly class?: FuseClass;
}

/** A fuse whose rating is stated. */
export type RatedFuse = FusePart & {
  /** A */
  readonly rating: number;
};
export const isRatedFuse = (fuse: FusePart): fuse is RatedFuse => fuse.rating !== undefined;

/** A joint of several wires. */
export interface JointPart extends PartBase {
  /** kind of part */
  readonly kind: 'joint';
}

/** A part of a plan. */
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

/** Kind of a part. */
export type PartKind = Part['kind'];

/** The part of each kind. */
export type PartByKind = { [P in Part as P['kind']]: P };
