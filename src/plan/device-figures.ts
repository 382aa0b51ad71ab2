/**
 * The plan as the rest of the program sees it: validated, merged with its stock, and in SI units.
 * Everything a person left out is `undefined` here; defaults are chosen later, where they are used,
 * so that a report can list them.
 */

/** A place in the plan file; both numbers count from one. */
export interface Position {
  /** from one */
  readonly line: number;
  /** from one, in UTF-16 units */
  readonly column: number;
}

/** Which published tables a plan is judged by. */
export type Practice = 'nec' | 'iec';

/** Direct or alternating current. */
export type CurrentKind = 'dc' | 'ac';

/** A voltage and its kind, V (RMS for AC). */
export interface Volts {
  /** V (RMS for AC) */
  readonly volts: number;
  /** direct or alternating */
  readonly kind: CurrentKind;
}

/** `5 A 250 V AC`: a current (A) at a voltage and kind. */
export interface Rating extends Volts {
  /** A */
  readonly amps: number;
}

/** `1.5 hp 240 V AC 3-phase`: motor power (W; 1 hp = 745.7 W), the same in horsepower, and the voltage. */
export interface MotorRating extends Volts {
  /** W */
  readonly watts: number;
  /** hp of 745.7 W */
  readonly horsepower: number;
  /** of its mains */
  readonly phases: 1 | 3;
}

/** A limit given as a share of the rated value (0.75 for 75 %) or in volts. */
export type Limit =
  | {
      /** share of the rated value */
      readonly fraction: number;
    }
  | {
      /** V */
      readonly volts: number;
    };

/** Power as printed: W or VA, with the unit it was printed in. Horsepower is kept beside its watts. */
export interface Power {
  /** W or VA */
  readonly watts: number;
  /** as printed */
  readonly unit: 'W' | 'VA' | 'hp';
  /** hp, where it was printed so */
  readonly horsepower?: number;
}

/** Codes of NEMA ICS 5 and IEC 60947-5-1 Table A.1: a letter for the current, the volts it goes up to. Q and R are DC. */
export const PILOT_CODES = [
  ...(['A150', 'A300', 'A600', 'B150', 'B300', 'B600', 'C150', 'C300', 'C600'] as const),
  ...(['D150', 'D300', 'E150', 'Q300', 'R300'] as const),
] as const;

/** Code of a pilot-duty rating. */
export type PilotCode = (typeof PILOT_CODES)[number];

/** Categories of use of IEC 60947 that a contact may have a figure for, with the kind of current of each. */
export const CATEGORIES = [
  { field: 'ac3', key: 'ac-3', name: 'AC-3', kind: 'ac' },
  { field: 'ac15', key: 'ac-15', name: 'AC-15', kind: 'ac' },
  { field: 'dc13', key: 'dc-13', name: 'DC-13', kind: 'dc' },
] as const;

/** What a contact is rated for. */
export interface Contact {
  /** for loads that are no motor */
  readonly ratings: readonly Rating[];
  /** for motors */
  readonly motor: readonly MotorRating[];
  /** A, category AC-3 */
  readonly ac3?: number;
  /** code of a pilot-duty rating, for coils */
  readonly pilot?: PilotCode;
  /** A, category AC-15: coils of contactors and relays on AC */
  readonly ac15?: number;
  /** A, category DC-13: coils on DC */
  readonly dc13?: number;
  /** V printed beside the figure of a category, up to which it holds */
  readonly upTo?: { readonly [K in (typeof CATEGORIES)[number]['field']]?: number };
  /** A, locked-rotor current the contact can make */
  readonly lockedRotor?: number;
  /** A, making capacity */
  readonly make?: number;
  /** ohm */
  readonly resistance?: number;
  /** least current and volts that it switches surely */
  readonly least?: Rating;
  /** metal of the contact faces, where stated */
  readonly metal?: 'silver' | 'gold';
}

/** What quenches the coil when it is switched off. */
export type Suppressor = 'none' | 'diode' | 'zener' | 'rc' | 'varistor';

/** A coil, as printed; volts are V, RMS for AC. */
export interface Coil {
  /** of an electronic input made for a range, the lower end; `dc` where it takes either kind */
  readonly rated: Volts;
  /** V, upper end of the range that an electronic input is made for */
  readonly upTo?: number;
  /** true where it takes AC and DC alike */
  readonly either?: boolean;
  /** Hz, where the coil states one */
  readonly frequency?: number;
  /** ohm */
  readonly resistance?: number;
  /** A */
  readonly current?: number;
  /** W or VA, held in */
  readonly power?: Power;
  /** held in, a share of one */
  readonly powerFactor?: number;
  /** before it has closed, a share of one */
  readonly inrushPowerFactor?: number;
  /** at which it surely closes */
  readonly pullIn?: Limit;
  /** below which it surely lets go */
  readonly dropOut?: Limit;
  /** that it bears for good */
  readonly most?: Limit;
  /** VA */
  readonly inrush?: number;
  /** K */
  readonly hotRise?: number;
  /** built in */
  readonly suppressor?: Suppressor;
  /** share of the resistance, 0.1 for 10 % */
  readonly tolerance?: number;
}
