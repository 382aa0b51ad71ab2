/**
 * Figures of circuit symbols as SVG, in strokes of one colour: ladder symbols in the tradition of NFPA 79 and ANSI
 * Y32.2, or those of IEC 60617.
 */
import type { Part } from '../../plan/plan.ts';
import { xml } from '../../text/xml.ts';
import type { DrawnSymbol } from '../drawing.ts';
import { selectorFigure } from './changeover.ts';
import { contactFigure } from './contacts.ts';
import { type Frame, frameOf } from './frame.ts';
import { connectorFigure, enclosureFigure, jointFigure, machineFigure, supplyFigure } from './mains.ts';
import { pluggedFigures } from './plugged-in.ts';
import { coilBlock, twoTerminalFigure } from './two-terminal.ts';

export interface FigureOptions {
  readonly practice: 'nec' | 'iec';
  /** whether the contact between two terminals (canonical names of the part: `COM`, `NO` or `13`, `14`) is made */
  readonly made: (common: string, other: string) => boolean;
  /** true: each contact is drawn in both states, for a page to choose from */
  readonly both?: boolean;
  /** the part of a name, for what is plugged into an outlet; without it a machine takes its phases from the outlet */
  readonly partOf?: (name: string) => Part | undefined;
}

function ink(frame: Frame): string {
  const { figure } = frame.symbol;
  switch (figure) {
    case 'gate':
    case 'switch':
    case 'button':
    case 'cutout':
    case 'pole':
    case 'static-pole':
      return contactFigure(frame);
    case 'selector':
      return selectorFigure(frame);
    case 'source':
      return frame.part.kind === 'battery' ? twoTerminalFigure(frame) : supplyFigure(frame);
    case 'primary':
      return supplyFigure(frame);
    case 'board':
      return coilBlock(frame);
    case 'coil':
    case 'timer':
    case 'diode':
    case 'led':
    case 'resistor':
    case 'lamp':
    case 'fuse':
      return twoTerminalFigure(frame);
    case 'plug':
      return connectorFigure(frame);
    case 'outlet':
      return connectorFigure(frame) + pluggedFigures(frame);
    case 'motor':
    case 'load':
      return machineFigure(frame);
    case 'box':
      return enclosureFigure(frame);
    case 'joint':
      return jointFigure(frame);
  }
}

const PEN =
  'stroke="currentColor" fill="none" stroke-width="1.5" stroke-linecap="round" stroke-linejoin="round"';

/**
 * An SVG fragment (`<g>`, no `<svg>`) with the figure of one symbol, in px of the drawing. Contacts are
 * `<g class="way" data-way="PART.COM PART.NO">` with `<g class="made">`, `<g class="open">` or both in it; what can be
 * energised is `<g class="coil | load | lamp" data-part="PART">`. Contacts on one arm lie in `<g class="contact">`,
 * where `<g class="neither">` is the arm that rests on none. Lines from terminals have `data-terminal`.
 */
export function figureSvg(symbol: DrawnSymbol, part: Part, options: FigureOptions): string {
  const frame = frameOf(symbol, part, options);
  return `<g class="figure ${symbol.figure}" data-symbol="${xml(symbol.id)}" ${PEN}>${ink(frame)}</g>`;
}
