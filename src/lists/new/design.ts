/** A plan in figures, before it is text: which parts, which sizes, joined in which way. */
import type { SwitchRow } from '../../ratings/part-rows.ts';
import type { Answers, RelayAtHand } from './answers.ts';

/** The low-voltage supply of a design. */
export interface DesignSupply {
  readonly volts: number;
  readonly kind: 'dc' | 'ac';
  /** A or VA as printed: `0.5 A` */
  readonly limit: string;
  readonly regulation: 'regulated' | 'unregulated' | 'transformer' | undefined;
  readonly class2: boolean;
  readonly 'no-load'?: string | undefined;
  readonly tolerance?: string | undefined;
  /** chosen, so that its figures are to be looked for; else as at hand */
  readonly chosen: boolean;
}

/** What switches the collector: a row of the table of parts, or what is at hand. */
export type Switching =
  | { readonly row: SwitchRow; readonly hand?: undefined }
  | { readonly hand: RelayAtHand; readonly row?: undefined };

/** What the gates work: the switch's own coil, or a small relay or a timer whose contact feeds that coil. */
export type Between = 'none' | 'relay' | 'relay-at-hand' | 'timer';

/** Where the collector gets its mains. */
export interface DesignCircuit {
  /** `fixed` where it is wired in */
  readonly pattern: string;
  /** `20 A`, `16 A C` */
  readonly breaker: string;
  /** the fuse in the plug, where its kind has one */
  readonly fuse?: string;
  /** gauge of cord or wire */
  readonly gauge: string;
}

export interface Design {
  readonly answers: Answers;
  readonly supply: DesignSupply;
  readonly switching: Switching;
  readonly between: Between;
  readonly circuit: DesignCircuit;
  /** rating of the fuse beside a supply that limits nothing by itself; undefined where it does */
  readonly fuse: string | undefined;
  /** gauge of the gate cable */
  readonly gauge: string;
  /** with its unit */
  readonly volume: string;
}

/** How many conductors of the mains a switch that is chosen breaks. */
export function polesNeeded({ mains, practice }: Answers): 1 | 2 | 3 {
  if (mains.phases === 3) return 3;
  return practice === 'nec' && mains.volts < 200 ? 1 : 2;
}

/** Volts of a supply or a coil, and their kind. */
export interface Kind {
  readonly volts: number;
  readonly kind: 'dc' | 'ac';
}

/** Coils that the larger switches of the table are all sold with. */
const COMMON_COILS: readonly Kind[] = [
  { volts: 24, kind: 'dc' },
  { volts: 24, kind: 'ac' },
];

/** Whether a switch is sold with a coil for these volts. */
export const coilFits = (row: SwitchRow, { volts, kind }: Kind): boolean =>
  kind === 'dc' ? row.dcVolts.includes(volts) : row.acHeld !== null && volts === 24;

/** The coil to take for a supply: that of its volts, or the nearest in kind that the switch is sold with. */
export const coilFor = (row: SwitchRow, supply: Kind): Kind =>
  [supply, ...COMMON_COILS.filter((c) => c.kind === supply.kind), ...COMMON_COILS].find((c) =>
    coilFits(row, c),
  ) ?? supply;

/** The fewest poles that leave nothing live but a neutral, and join nothing. */
export function fewestPoles({ mains, practice }: Answers): 1 | 2 | 3 {
  if (mains.phases === 3) return 3;
  return practice === 'nec' && mains.volts > 200 ? 2 : 1;
}

/** Horsepower marks to look for on a switch: outside North America a contactor is marked by its category alone. */
export const motorMarks = (row: SwitchRow, { practice }: Answers): SwitchRow['motor'] =>
  practice === 'iec' && row.ac3 !== null ? [] : row.motor;

/** Whether an overload relay stands in for a protector that the motor lacks. */
export const needsOverload = ({ protector }: Answers): boolean => protector === 'none';
