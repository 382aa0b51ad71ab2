/**
 * How each kind of part is drawn: the symbols that stand for it with their terminals, the words under its name, and its
 * contacts. A kind without a row here does not compile; nor does a figure without its row in `figure-traits.ts`, in
 * `symbols/figure-svg.ts` and in `character-figures.ts`.
 */

import type { Part, PartKind, Pole } from '../plan/part-types.ts';
import { ampWords, coilWords, ohmWords, powerWords, secondWords, voltWords } from './caption-words.ts';
import type { Figure } from './drawing.ts';
import {
  cutoutSymbols,
  mainsNames,
  onLeft,
  onRight,
  poleSymbols,
  type SymbolForm,
  selectorSymbol,
  snapSwitch,
  throwSymbols,
  type Wired,
} from './symbol-forms.ts';

/** One contact between two terminals, by their names within the part or by their keys. */
export interface Way {
  readonly common: string;
  readonly other: string;
  /** break contacts are made at rest; a selector's are positions */
  readonly sign: 'make' | 'break' | 'position';
}

export interface DrawnKind<P extends Part> {
  /** its symbols; one plugged into an outlet and drawn there has none */
  symbols(part: P, wired: Wired): readonly SymbolForm[];
  /** a few words printed on the part, for one of its symbols; `brief` where there is little room. Empty ones are left out */
  caption(part: P, figure: Figure, brief: boolean): readonly string[];
  /** its contacts, in the order of their terminals */
  ways(part: P): readonly Way[];
}

type PartOf<K extends PartKind> = Part & { readonly kind: K };

const none = () => [];

function tabWays(): Way[] {
  return [
    { common: 'COM', other: 'NO', sign: 'make' },
    { common: 'COM', other: 'NC', sign: 'break' },
  ];
}

function poleWays({ poles }: { readonly poles: readonly Pole[] }): Way[] {
  return poles.flatMap(({ common, make, break: rest }) => [
    ...(make === undefined ? [] : [{ common, other: make, sign: 'make' as const }]),
    ...(rest === undefined ? [] : [{ common, other: rest, sign: 'break' as const }]),
  ]);
}

/** Letters of what a lamp shows that a drawing has room for. */
const SHOWN = 20;

const showsWords = (shows: string | undefined): string =>
  shows === undefined ? '' : `"${shows.length > SHOWN ? `${shows.slice(0, SHOWN - 1)}…` : shows}"`;

function throwWays({ throws }: { readonly throws?: readonly Pole[] }): Way[] {
  return throws ? poleWays({ poles: throws }) : tabWays();
}

const resistor: DrawnKind<PartOf<'resistor' | 'lamp'>> = {
  symbols: (part) => [{ figure: part.kind, rows: [['1', '2']] }],
  caption: ({ resistance, rated, shows }) => {
    if (resistance !== undefined) return [ohmWords(resistance), showsWords(shows)];
    return [rated === undefined ? '' : voltWords(rated), showsWords(shows)];
  },
  ways: none,
};

const machine: DrawnKind<PartOf<'motor' | 'load'>> = {
  symbols: (part, wired) => [{ figure: part.kind, rows: onLeft(mainsNames(part, wired)) }],
  caption: (part, _, brief) => [
    powerWords(part.power) || ampWords(part.amps),
    brief ? '' : voltWords(part.volts),
    part.returnsThrough === undefined ? '' : `returns by ${part.returnsThrough}`,
  ],
  ways: none,
};

const KINDS: { readonly [K in PartKind]: DrawnKind<PartOf<K>> } = {
  supply: {
    symbols: (part, { lands }) => {
      const primary = (
        part.taps === undefined ? ['L', 'N', 'L1', 'L2'] : ['0', ...part.taps.map(String)]
      ).filter(lands);
      return [
        { figure: 'source', rows: [part.output.kind === 'dc' ? ['+', '-'] : ['~1', '~2']] },
        ...(primary.length > 0 ? [{ figure: 'primary' as const, rows: onLeft(primary), sub: 'mains' }] : []),
      ];
    },
    caption: ({ output, fedFrom }, figure) => {
      if (figure === 'primary') return ['mains side'];
      const from = fedFrom === undefined || fedFrom === 'always-live' ? '' : `from ${fedFrom}`;
      return [voltWords(output), from];
    },
    ways: none,
  },
  battery: {
    symbols: () => [{ figure: 'source', rows: [['+', '-']] }],
    caption: (part) => [voltWords(part.output), 'battery'],
    ways: none,
  },
  gate: {
    symbols: (part) => [snapSwitch('gate', part.tabs)],
    caption: (part) => (part.pressedWhen === 'shut' ? ['pressed when shut'] : []),
    ways: tabWays,
  },
  switch: {
    symbols: (part) =>
      part.throws ? throwSymbols('switch', part.throws) : [snapSwitch('switch', part.tabs)],
    caption: none,
    ways: throwWays,
  },
  button: { symbols: (part) => [snapSwitch('button', part.tabs)], caption: none, ways: tabWays },
  cutout: {
    symbols: (part, wired) =>
      part.throws ? throwSymbols('cutout', part.throws) : cutoutSymbols(part.tabs, wired),
    caption: () => ['cut-out'],
    ways: (part) => [
      ...throwWays(part),
      { common: '95', other: '96', sign: 'break' },
      { common: '97', other: '98', sign: 'make' },
    ],
  },
  selector: {
    symbols: (part, wired) => [selectorSymbol(part.positions, wired)],
    caption: none,
    ways: (part) =>
      part.positions
        .filter((p) => p !== 'off')
        .map((other) => ({ common: 'COM', other, sign: 'position' as const })),
  },
  relay: {
    symbols: (part) => {
      const reset = part.bistable === 'set-reset' ? [['B1', 'B2'] as const] : [];
      return [{ figure: 'coil', rows: [['A1', 'A2'], ...reset] }, ...poleSymbols(part)];
    },
    caption: (part, figure) =>
      figure === 'coil' ? [...(part.bistable ? [part.bistable] : []), coilWords(part.coil)] : [],
    ways: poleWays,
  },
  timer: {
    symbols: (part, { lands }) => {
      const dry = ['T1', 'T2'].some(lands);
      return [
        { figure: 'timer', rows: [['A1', 'A2'], ...(dry ? [['T1', 'T2'] as const] : [])] },
        ...poleSymbols(part),
      ];
    },
    caption: (part, figure) =>
      figure === 'timer'
        ? [
            part.function.replace('-', ' '),
            ...(part.time === undefined ? [] : [secondWords(part.time)]),
            coilWords(part.coil),
          ]
        : [],
    ways: poleWays,
  },
  board: {
    symbols: (part) => [{ figure: 'board', rows: [['VCC', 'GND'], ['IN']] }, ...poleSymbols(part)],
    caption: (part, figure) => (figure === 'board' ? [voltWords(part.supply), `${part.input} input`] : []),
    ways: poleWays,
  },
  diode: { symbols: () => [{ figure: 'diode', rows: [['A', 'K']] }], caption: none, ways: none },
  led: {
    symbols: () => [{ figure: 'led', rows: [['A', 'K']] }],
    caption: ({ shows }) => [showsWords(shows)],
    ways: none,
  },
  resistor,
  lamp: resistor,
  fuse: {
    symbols: () => [{ figure: 'fuse', rows: [['1', '2']] }],
    caption: (part) => [ampWords(part.rating)],
    ways: none,
  },
  joint: { symbols: () => [{ figure: 'joint', rows: [['']] }], caption: none, ways: none },
  plug: {
    symbols: (part, wired) => [{ figure: 'plug', rows: onRight(mainsNames(part, wired)) }],
    caption: ({ pattern, volts, breaker }, _, brief) =>
      brief ? [voltWords(volts)] : [pattern ?? '', voltWords(volts), ampWords(breaker)],
    ways: none,
  },
  outlet: {
    symbols: (part, wired) => [{ figure: 'outlet', rows: onLeft(mainsNames(part, wired)) }],
    caption: ({ pattern }, _, brief) => (brief ? [] : [pattern ?? '']),
    ways: none,
  },
  motor: machine,
  load: machine,
  box: {
    symbols: (part, { lands }) => [{ figure: 'box', rows: part.metal || lands('PE') ? [['PE']] : [] }],
    caption: ({ metal }) => [metal ? 'metal box' : 'box'],
    ways: none,
  },
};

/** The row of a part's kind. */
export function drawnKind(part: Part): DrawnKind<Part> {
  return KINDS[part.kind];
}
