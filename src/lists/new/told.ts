/** What the sides of a design have alike: how a part and a cable are told, and what ordinary ones have printed on them. */
import { unitTyped } from '../../plan/length-unit.ts';
import { ordinaryTables } from '../../ratings/ordinary.ts';
import type { Answers } from './answers.ts';
import { type Design, polesNeeded } from './design.ts';
import type { Value } from './yaml-lines.ts';

/** One thing of a plan, with the comment that goes above it. */
export interface Told {
  readonly comment: readonly string[];
  readonly name: string;
  readonly fields: Record<string, Value | undefined>;
}

/** A cable with the ends of its cores, or a bare link. */
export interface Laid {
  readonly cable?: string;
  readonly length?: string;
  readonly cores?: Record<string, readonly [string, string]>;
  readonly link?: readonly [string, string];
}

export type Fields = Record<string, Value | undefined>;

/** What ordinary parts of a kind have printed on them. */
export function ordinary(name: string): Fields {
  const row = ordinaryTables.fields().rows.find((r) => r.name === name);
  if (row === undefined) throw new Error(`the table of ordinary parts has no ${name}`);
  return { ...row.fields } as Fields;
}

export const isDc = ({ supply }: Design): boolean => supply.kind === 'dc';
export const supplyName = (d: Design): string => (isDc(d) ? 'PS1' : 'T1');
export const voltsText = (volts: number, kind: 'dc' | 'ac'): string => `${volts} V ${kind.toUpperCase()}`;

/** Lengths that nobody answers, in the unit of the answers; the plan calls them guesses. */
export const usualLengths = ({
  gates,
}: Answers): Readonly<Record<'supply' | 'cord' | 'tail' | 'feed' | 'machine', string>> =>
  ordinary(`lengths-${unitTyped(gates[0]?.length.text ?? 'm')}`) as Record<
    'supply' | 'cord' | 'tail' | 'feed' | 'machine',
    string
  >;

export const overloadName = 'OL1';

/** Coils on DC that a diode of their own quiets; a timer has an electronic input, which needs none. */
export function coilsWithDiode(d: Design): string[] {
  if (!isDc(d)) return [];
  return [...(d.between === 'relay' || d.between === 'relay-at-hand' ? ['K1'] : []), 'Q1'];
}

/** The switch's poles that are wired: all of a relay's, of a contactor as many as the mains has conductors. */
export function wiredPoles(d: Design): number {
  const needed = polesNeeded(d.answers);
  const has = d.switching.row?.poles ?? d.switching.hand?.poles ?? 1;
  return has === 1 ? 1 : Math.max(2, needed);
}
