/**
 * The plan as the rest of the program sees it: validated, merged with its stock, and in SI units.
 * Everything a person left out is `undefined` here; defaults are chosen later, where they are used,
 * so that a report can list them.
 */

/** A place in the plan file; both numbers count from one. */
export interface Position {
  readonly line: number;
  readonly column: number;
}

export type Practice = 'nec' | 'iec';
export type CurrentKind = 'dc' | 'ac';

/** A voltage and its kind, V (RMS for AC). */
export interface Volts {
  readonly volts: number;
  readonly kind: CurrentKind;
}

/** `5 A 250 V AC`: a current (A) at a voltage and kind. */
export interface Rating extends Volts {
  readonly amps: number;
}

/** `1.5 hp 240 V AC 3-phase`: motor power (W; 1 hp = 745.7 W), the same in horsepower, and the voltage. */
export interface MotorRating extends Volts {
  readonly watts: number;
  readonly horsepower: number;
  readonly phases: 1 | 3;
}

/** A limit given as a share of the rated value (0.75 for 75 %) or in volts. */
export type Limit = { readonly fraction: number } | { readonly volts: number };

/** Power as printed: W or VA, with the unit it was printed in. Horsepower is kept beside its watts. */
export interface Power {
  readonly watts: number;
  readonly unit: 'W' | 'VA' | 'hp';
  readonly horsepower?: number;
}

/** Codes of NEMA ICS 5 and IEC 60947-5-1 Table A.1: a letter for the current, the volts it goes up to. Q and R are DC. */
export const PILOT_CODES = [
  ...(['A150', 'A300', 'A600', 'B150', 'B300', 'B600', 'C150', 'C300', 'C600'] as const),
  ...(['D150', 'D300', 'E150', 'Q300', 'R300'] as const),
] as const;
export type PilotCode = (typeof PILOT_CODES)[number];

export interface Contact {
  readonly ratings: readonly Rating[];
  readonly motor: readonly MotorRating[];
  /** A, category AC-3 */
  readonly ac3?: number;
  /** code of a pilot-duty rating, for coils */
  readonly pilot?: PilotCode;
  /** A, category AC-15: coils of contactors and relays on AC */
  readonly ac15?: number;
  /** A, category DC-13: coils on DC */
  readonly dc13?: number;
  /** A, locked-rotor current the contact can make */
  readonly lockedRotor?: number;
  /** A, making capacity */
  readonly make?: number;
  /** ohm */
  readonly resistance?: number;
  readonly least?: Rating;
  /** metal of the contact faces, where stated */
  readonly metal?: 'silver' | 'gold';
}

export type Suppressor = 'none' | 'diode' | 'zener' | 'rc' | 'varistor';

export interface Coil {
  readonly rated: Volts;
  /** Hz, where the coil states one */
  readonly frequency?: number;
  /** ohm */
  readonly resistance?: number;
  /** A */
  readonly current?: number;
  readonly power?: Power;
  readonly powerFactor?: number;
  readonly inrushPowerFactor?: number;
  readonly pullIn?: Limit;
  readonly dropOut?: Limit;
  readonly most?: Limit;
  /** VA */
  readonly inrush?: number;
  /** K */
  readonly hotRise?: number;
  readonly suppressor?: Suppressor;
  /** share of the resistance, 0.1 for 10 % */
  readonly tolerance?: number;
}

interface PartBase {
  readonly name: string;
  /** position of the part's name in the file */
  readonly at: Position;
  /** positions of the fields that were typed, by dotted path such as `coil.rated` (stock positions included) */
  readonly where: ReadonlyMap<string, Position>;
  /** currency amount, for the shopping list */
  readonly price?: number;
}

/** Supply with an output at extra-low voltage (or a control transformer). */
export interface SupplyPart extends PartBase {
  readonly kind: 'supply';
  readonly output: Volts;
  readonly frequency?: number;
  /** A at the rated output; VA and W are converted with the rated voltage */
  readonly limit: { readonly amps: number; readonly printed: 'A' | 'W' | 'VA'; readonly value: number };
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
export interface SwitchPart extends SwitchLike {
  readonly kind: 'switch';
}
export interface ButtonPart extends SwitchLike {
  readonly kind: 'button';
}
/** Terminals are COM/NO/NC, and for an overload relay 95, 96 (break) and 97, 98 (make). */
export interface CutoutPart extends SwitchLike {
  readonly kind: 'cutout';
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
}
export interface TimerPart extends CoilDevice {
  readonly kind: 'timer';
  readonly function: 'off-delay' | 'on-delay';
  /** s */
  readonly time: number;
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
}
export interface LedPart extends PartBase {
  readonly kind: 'led';
  /** V */
  readonly forward?: number;
  /** A */
  readonly current?: number;
}
export interface FusePart extends PartBase {
  readonly kind: 'fuse';
  /** A */
  readonly rating: number;
}
export interface JointPart extends PartBase {
  readonly kind: 'joint';
}

/** How a mains part is fed: which terminals it has. Resolved by the rules of reading. */
export type Feed = 'single' | 'two-leg' | 'three-phase';

interface MainsBase extends PartBase {
  readonly feed: Feed;
  /** phases, legs as typed */
  readonly phases?: 1 | 3;
  readonly legs?: 1 | 2;
}
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
}
export interface OutletPart extends MainsBase {
  readonly kind: 'outlet';
  readonly pattern?: string;
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
  readonly startsPerHour?: number;
  readonly efficiency?: number;
  readonly powerFactor?: number;
  readonly pluggedInto?: string;
}
export interface LoadPart extends MainsBase {
  readonly kind: 'load';
  readonly volts: Volts;
  readonly power?: Power;
  readonly amps?: number;
  readonly type?: 'lamp' | 'heater' | 'transformer' | 'electronic';
  readonly class2Insulated: boolean;
  readonly pluggedInto?: string;
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

export interface Cable {
  /** stock name, when it has one */
  readonly stock?: string;
  /** as printed, `18 AWG` or `0.75 mm2` */
  readonly gauge: string;
  /** m² of copper */
  readonly area: number;
  /** AWG number where the gauge was given so */
  readonly awg?: number;
  readonly cores: number;
  /** V */
  readonly insulation?: number;
  readonly flexible: boolean;
  readonly strands: 'solid' | 'stranded' | 'fine';
  readonly sheathColours?: readonly string[];
  /** °C */
  readonly rated?: number;
  /** currency amount, for the shopping list */
  readonly price?: number;
}

/** A terminal by its canonical name; a joint's is the empty string. */
export interface TerminalRef {
  readonly part: string;
  readonly terminal: string;
  /** as typed in the plan, `K1.86` */
  readonly written: string;
  readonly at: Position;
}

export interface Core {
  /** index into `Plan.runs` */
  readonly run: number;
  readonly colour: string;
  readonly a: TerminalRef;
  readonly b: TerminalRef;
  /** position of the colour */
  readonly at: Position;
}

export interface Run {
  readonly index: number;
  readonly at: Position;
  readonly name?: string;
  readonly cable?: Cable;
  /** m, one way */
  readonly length?: number;
  readonly route?: string;
  /** share, 0.1 for 10 % */
  readonly slack?: number;
  readonly cores: readonly Core[];
  /** a short bare jumper with no resistance */
  readonly link: boolean;
}

/** An input, or one position of a selector. */
export interface InputRef {
  readonly part: string;
  readonly position?: string;
  readonly at: Position;
}

export interface Intent {
  /** load, motor, outlet, relay, timer or board */
  readonly target: string;
  readonly at: Position;
  /** the load runs when every member of at least one entry is in its working position */
  readonly runsOn: readonly (readonly InputRef[])[];
  readonly blockedBy: readonly InputRef[];
  readonly staysOnAfter: readonly InputRef[];
  readonly stoppedBy: readonly InputRef[];
  readonly ifSupplyFails: 'stopped' | 'running';
}

/** The terminals of one part: its own names, and the name that any mark stands for. */
export interface TerminalMarks {
  readonly names: readonly string[];
  find(mark: string): string | undefined;
  marks(): Iterable<string>;
}

export interface Plan {
  readonly format: 1;
  /** the name the file was given on the command line */
  readonly file: string;
  readonly title: string;
  readonly practice: Practice;
  /** °C, when typed */
  readonly ambient?: number;
  readonly parts: ReadonlyMap<string, Part>;
  readonly runs: readonly Run[];
  /** terminals of every part, by its name */
  readonly terminals: ReadonlyMap<string, TerminalMarks>;
  /** undefined when the plan has no intent at all */
  readonly intents?: readonly Intent[];
  /** defaults that reading itself had to choose, as sentences */
  readonly defaults: readonly string[];
}

/** One thing wrong with the input. Line and column count from one. */
export interface PlanError {
  readonly file: string;
  readonly position: Position;
  /** the offending line of the file, and the number of characters to underline */
  readonly source: string;
  readonly length: number;
  readonly message: string;
}

export type ReadResult =
  | { readonly ok: true; readonly plan: Plan }
  | { readonly ok: false; readonly errors: readonly PlanError[] };
