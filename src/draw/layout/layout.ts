/** A plan laid out as a ladder diagram. Pure; a wrong plan is drawn as it is wired, and no core is ever left out. */
import type { Circuit } from '../../circuit/circuit.ts';
import type { Drawing } from '../drawing.ts';
import { assembled } from './assembled-drawing.ts';
import { setColumns } from './column-widths.ts';
import { linesOf, placeWords, slotsBySymbol, slotsOf } from './conductor-lines.ts';
import type { NetSides } from './home-section.ts';
import type { Measures } from './measures.ts';
import { placeSymbols, type Room } from './place-symbols.ts';
import { setRows } from './row-heights.ts';
import { type SymbolSpec, symbolSpecs } from './symbol-specs.ts';
import { symbolWords } from './symbol-words.ts';
import { assignTracks } from './upright-tracks.ts';

export interface LayoutInput {
  readonly circuit: Circuit;
  /** nets by side, as the checks sort them */
  readonly sides: NetSides;
  /** short marks beside the name of a part that a finding speaks of */
  readonly marks?: ReadonlyMap<string, string>;
}

/**
 * Lays out the circuit of a plan in the room that is given, in the units of `measures`. Every terminal and
 * every core stands in the drawing once; no label or conductor runs into another symbol or label.
 */
export function layOut(input: LayoutInput, measures: Measures, room: Room): Drawing {
  const { plan } = input.circuit;
  const specs = symbolSpecs(plan).map((s) => marked(s, input.marks, measures));
  const placement = placeSymbols(specs, input.circuit, input.sides, room);
  const slots = slotsOf(placement.placed);
  const lines = linesOf(plan, slots, measures, placement);
  // The first walk goes by the order of rows; the second knows their true heights.
  placeWords(lines, [...slots.values()].flat());
  setRows(placement, slots, lines, measures);
  placeWords(lines, [...slots.values()].flat());
  const rows = setRows(placement, slots, lines, measures);
  const tracks = assignTracks(lines, placement.columns + 1, rows, measures);
  const own = slotsBySymbol(slots);
  const words = new Map(
    placement.placed.map((p) => [p, symbolWords(p, measures, own.get(p) ?? [])] as const),
  );
  const widths = setColumns(placement, lines, tracks, words, measures);
  return assembled({ placement, slots, lines, rows, tracks, words, widths }, measures);
}

function marked(spec: SymbolSpec, marks: LayoutInput['marks'], measures: Measures): SymbolSpec {
  const mark = marks?.get(spec.part.name);
  const caption = measures.brief ? spec.brief : spec.caption;
  return { ...spec, caption, ...(mark === undefined ? {} : { finding: mark }) };
}
