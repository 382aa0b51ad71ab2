/**
 * Figures of circuit symbols as SVG, in strokes of one colour: ladder symbols in the tradition of NFPA 79 and ANSI
 * Y32.2, or those of IEC 60617.
 */

import type { Part } from '../../plan/part-types.ts';
import { xml } from '../../text/xml.ts';
import type { DrawnSymbol, Figure } from '../drawing.ts';
import { coilBlock, coilGlyph } from './coil.ts';
import { connectorFigure } from './connector.ts';
import { contactFigure } from './contacts.ts';
import { diodeGlyph, ledGlyph } from './diode.ts';
import { enclosureFigure } from './enclosure.ts';
import { type FigureOptions, type Frame, frameOf } from './frame.ts';
import { jointFigure } from './joint.ts';
import { machineFigure } from './machine.ts';
import { pluggedFigures } from './plugged-in.ts';
import { selectorFigure } from './selector.ts';
import { supplyFigure } from './supply.ts';
import { batteryGlyph, fuseGlyph, lampGlyph, resistorGlyph, twoTerminal } from './two-terminal.ts';

const batteryFigure = twoTerminal(batteryGlyph, '+', '-');

/** The figure that draws each thing a symbol stands for. */
const FIGURES: Readonly<Record<Figure, (frame: Frame) => string>> = {
  source: (frame) => (frame.part.kind === 'battery' ? batteryFigure(frame) : supplyFigure(frame)),
  primary: supplyFigure,
  gate: contactFigure,
  switch: contactFigure,
  button: contactFigure,
  cutout: contactFigure,
  selector: selectorFigure,
  pole: contactFigure,
  'static-pole': contactFigure,
  coil: twoTerminal(coilGlyph, 'A1', 'A2'),
  timer: twoTerminal(coilGlyph, 'A1', 'A2'),
  board: coilBlock,
  diode: twoTerminal(diodeGlyph, 'A', 'K'),
  led: twoTerminal(ledGlyph, 'A', 'K'),
  resistor: twoTerminal(resistorGlyph, '1', '2'),
  lamp: twoTerminal(lampGlyph, '1', '2'),
  fuse: twoTerminal(fuseGlyph, '1', '2'),
  joint: jointFigure,
  plug: connectorFigure,
  outlet: (frame) => connectorFigure(frame) + pluggedFigures(frame),
  motor: machineFigure,
  load: machineFigure,
  box: enclosureFigure,
};

const PEN =
  'stroke="currentColor" fill="none" stroke-width="1.4" stroke-linecap="round" stroke-linejoin="round"';

/**
 * An SVG fragment (`<g>`, no `<svg>`) with the figure of one symbol, in px of the drawing. Contacts are
 * `<g class="way" data-way="PART.COM PART.NO">` with `<g class="made">`, `<g class="open">` or both in it; what can be
 * energised is `<g class="coil | load | lamp" data-part="PART">`. Contacts on one arm lie in `<g class="contact">`,
 * where `<g class="neither">` is the arm that rests on none. Lines from terminals have `data-terminal`.
 */
export function figureSvg(symbol: DrawnSymbol, part: Part, options: FigureOptions): string {
  const frame = frameOf(symbol, part, options);
  return `<g class="figure ${symbol.figure}" data-symbol="${xml(symbol.id)}" ${PEN}>${FIGURES[symbol.figure](frame)}</g>`;
}
