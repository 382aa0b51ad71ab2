/** The symbols that stand for a part, and the side and row in which each of their terminals leaves them by habit. */

import type { MotorPart, OutletPart, Pole, Tab } from '../plan/part-types.ts';
import type { Figure } from './drawing.ts';

/** What the wiring of a plan says of one part. */
export interface Wired {
  /** canonical names of all terminals it can have */
  readonly names: readonly string[];
  /** whether a core lands on a terminal */
  readonly lands: (name: string) => boolean;
}

/** `[terminal, terminal]` row by row; a row may hold one on either side. */
export type Rows = readonly (readonly [left?: string | undefined, right?: string | undefined])[];

export interface SymbolForm {
  readonly figure: Figure;
  readonly rows: Rows;
  /** what tells it from the part's other symbols: `1` of `K1/1` */
  readonly sub?: string;
}

/** Terminals one below the other, on the left or on the right. */
export function onLeft(names: readonly string[]): Rows {
  return names.map((name) => [name]);
}
export function onRight(names: readonly string[]): Rows {
  return names.map((name) => [undefined, name]);
}

/** A common terminal, and on the other side what it is joined to: make above break. */
function fromCommon(common: string | undefined, others: readonly (string | undefined)[]): Rows {
  const [first, ...more] = others.filter((name) => name !== undefined);
  return [[common, first], ...onRight(more)];
}

/** A snap switch: no more tabs than it has. */
export function snapSwitch(figure: Figure, tabs: readonly Tab[]): SymbolForm {
  const has = (tab: Tab) => (tabs.includes(tab) ? tab : undefined);
  return { figure, rows: fromCommon(has('COM'), [has('NO'), has('NC')]) };
}

/** A cut-out as an overload relay, as a snap switch, or as both where both are wired. */
export function cutoutSymbols(tabs: readonly Tab[], { lands }: Wired): SymbolForm[] {
  const overload: SymbolForm = {
    figure: 'cutout',
    rows: [
      ['95', '96'],
      ['97', '98'],
    ],
  };
  const plain = snapSwitch('cutout', tabs);
  if (!['95', '96', '97', '98'].some(lands)) return [plain];
  return ['COM', 'NO', 'NC'].some(lands) ? [overload, { ...plain, sub: 'tabs' }] : [overload];
}

/** The contacts on one handle, each a symbol of its own. */
export function throwSymbols(figure: Figure, throws: readonly Pole[]): SymbolForm[] {
  return throws.map((p) => ({ figure, rows: fromCommon(p.common, [p.make, p.break]), sub: `${p.index}` }));
}

/** One arm with a contact for each position; `off` only where it is wired. */
export function selectorSymbol(positions: readonly string[], { lands }: Wired): SymbolForm {
  return {
    figure: 'selector',
    rows: fromCommon(
      'COM',
      positions.filter((p) => p !== 'off' || lands('off')),
    ),
  };
}

/** The poles of a relay, timer or board, each a symbol of its own. */
export function poleSymbols(part: {
  readonly poles: readonly Pole[];
  readonly technology: 'contact' | 'solid-state';
}): SymbolForm[] {
  const figure = part.technology === 'solid-state' ? 'static-pole' : 'pole';
  return part.poles.map((p) => ({
    figure,
    rows: fromCommon(p.common, [p.make, p.break]),
    sub: `${p.index}`,
  }));
}

/** Conductors and earth; a neutral that a two-leg or three-phase part may have, and an earth it needs not, only where wired. */
export function mainsNames(
  part: Pick<OutletPart, 'feed'> & Partial<Pick<MotorPart, 'class2Insulated'>>,
  { names, lands }: Wired,
): string[] {
  const needsNot = new Set<string>();
  if (part.feed !== 'single') needsNot.add('N');
  if (part.class2Insulated || part.feed === 'dc') needsNot.add('PE');
  return names.filter((name) => !needsNot.has(name) || lands(name));
}
