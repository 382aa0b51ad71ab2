/** What a person says of a shop that has no plan yet, read into figures. */
import type { Practice } from '../../plan/device-figures.ts';

/** A length as it was typed, with its unit, and in m. */
export interface Distance {
  readonly text: string;
  readonly metres: number;
}

/** A switch and how far its cable is. */
export interface Placed {
  readonly name: string;
  readonly length: Distance;
}

/** Mains between the conductors of the collector: V, and how many phases. */
export interface Mains {
  readonly volts: number;
  readonly phases: 1 | 3;
}

/** The nameplate; every figure as the plan has it, such as `1.5 hp`. */
export interface Nameplate {
  /** undefined where the plate has amperes alone, as that of a shop vacuum */
  readonly power: string | undefined;
  readonly amps: string;
  readonly code: string | undefined;
  readonly 'locked-rotor': string | undefined;
}

/** Where the collector gets its mains; what is undefined is to be chosen. */
export interface Circuit {
  /** `fixed` where it is wired in */
  readonly pattern: string | undefined;
  /** A, with the letter of its curve where it has one: `20 A`, `16 A C` */
  readonly breaker: string | undefined;
}

/** A low-voltage supply; with `limit` it is at hand, else only its volts are wanted. */
export interface SupplyAtHand {
  readonly volts: number;
  readonly kind: 'dc' | 'ac';
  /** `1 A`, `40 VA` */
  readonly limit: string | undefined;
  readonly regulation: 'regulated' | 'unregulated' | 'transformer' | undefined;
  /** marked Class 2, or as one that limits itself */
  readonly class2: boolean;
  readonly 'no-load': string | undefined;
  readonly tolerance: string | undefined;
}

/** A relay or contactor at hand, each figure as printed. */
export interface RelayAtHand {
  readonly volts: number;
  readonly kind: 'dc' | 'ac';
  readonly coil: Readonly<Record<string, string>>;
  readonly ratings: readonly string[];
  readonly motor: readonly string[];
  readonly ac3: string | undefined;
  readonly poles: number;
}

export const MOTOR_KINDS = [
  'capacitor-start',
  'permanent-split',
  'split-phase',
  'universal',
  'three-phase',
] as const;
export type MotorKind = (typeof MOTOR_KINDS)[number];

export interface Answers {
  readonly title: string;
  readonly practice: Practice;
  readonly mains: Mains;
  readonly motor: Nameplate;
  readonly type: MotorKind;
  readonly protector: 'manual' | 'automatic' | 'none';
  readonly circuit: Circuit;
  readonly layout: 'chain' | 'star' | 'ring';
  /** in the order of the duct; of a chain or ring each from the one before, of a star each from the box */
  readonly gates: readonly Placed[];
  /** of a ring: from the last gate to the box */
  readonly return: Distance | undefined;
  readonly lever: 'open' | 'shut';
  readonly supply: SupplyAtHand | undefined;
  readonly relay: RelayAtHand | undefined;
  readonly cutouts: readonly Placed[];
  readonly hand: Distance | undefined;
  /** s; 0 for none */
  readonly 'run-on': number;
}

/** What each answer is called; the compiler holds the list to `Answers`. */
export type Key =
  | 'title'
  | 'practice'
  | 'mains'
  | 'motor'
  | 'type'
  | 'protector'
  | 'circuit'
  | 'layout'
  | 'gates'
  | 'return'
  | 'lever'
  | 'supply'
  | 'relay'
  | 'cutouts'
  | 'hand'
  | 'run-on';
