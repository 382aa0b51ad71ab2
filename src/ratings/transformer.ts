/** The largest breaker or fuse ahead of a transformer, NEC 430.72(C) and 450.3(B). */
import { nextStandardRating } from './branch.ts';
import { branchRule } from './tables.ts';

export interface TransformerPlace {
  /** A of its primary winding at the rated output */
  readonly primary: number;
  /** VA */
  readonly rated: number;
  /** it feeds the control circuit of a motor that is on the same circuit */
  readonly ofMotor: boolean;
  /** it lies in an enclosure with what it controls */
  readonly inBox: boolean;
  /** A of the device next to its secondary, where there is one, and of that winding at the rated output */
  readonly secondary: { readonly device: number; readonly amps: number } | undefined;
}

export interface TransformerLimit {
  /** A */
  readonly amps: number;
  readonly basis: string;
}

const by = (names: readonly string[]): string =>
  `NEC ${[...new Set(names.map((n) => branchRule(n).clause))].join(', ')}`;

/** A of the largest device on one side alone by 450.3(B): the next standard size only from 9 A on (note 1). */
function alone(amps: number): number {
  if (amps < branchRule('transformer-least').value) return amps * branchRule('transformer-small').value;
  if (amps < branchRule('transformer-most').value) return amps * branchRule('transformer-middle').value;
  const exact = amps * branchRule('transformer-large').value;
  return nextStandardRating(exact) ?? exact;
}

/** A secondary device of up to 167 %, 125 % from 9 A on. */
function protects({ device, amps }: { readonly device: number; readonly amps: number }): boolean {
  const small = amps < branchRule('transformer-most').value;
  return device <= (small ? amps * branchRule('transformer-middle').value : alone(amps)) * (1 + 1e-9);
}

/** Of all rules that may serve the one that lets most through; undefined where none sets a limit. */
export function largestAheadOfTransformer(place: TransformerPlace): TransformerLimit | undefined {
  const { primary, rated, ofMotor, inBox, secondary } = place;
  if (ofMotor && inBox && rated < branchRule('transformer-of-controller').value) return undefined;
  const limits: TransformerLimit[] = [{ amps: alone(primary), basis: by(['transformer-small']) }];
  if (ofMotor && primary < branchRule('transformer-least').value)
    limits.push({
      amps: primary * branchRule('control-transformer').value,
      basis: by(['control-transformer']),
    });
  if (secondary && protects(secondary))
    limits.push({
      amps: primary * branchRule('transformer-both-sides').value,
      basis: by(['transformer-both-sides']),
    });
  return limits.reduce((a, b) => (b.amps > a.amps ? b : a));
}
