/** How the contacts of a part look: ladder symbols, or those of IEC 60617. */

import type { ArmStyle } from './arm-pivot.ts';
import {
  barePlain,
  bars,
  type Form,
  type Glyph,
  ringArm,
  ringBlade,
  ringPlunger,
  valves,
} from './contact-glyphs.ts';
import {
  hand,
  type Operator,
  parachute,
  plunger,
  thermal,
  thermalStep,
  timeArrow,
  wedge,
} from './contact-operators.ts';
import { type Frame, type Place, terminal } from './frame.ts';

/** How the contacts of a figure look. */
export interface Style {
  readonly glyph: (place: Place, form: Form) => Glyph;
  /** set where make and break share one arm */
  readonly arm?: ArmStyle;
}

export function isOverload(frame: Frame): boolean {
  return (
    frame.symbol.figure === 'cutout' &&
    ['95', '96', '97', '98'].some((name) => terminal(frame, name) !== undefined)
  );
}

/** When the contacts of a timer are late; undefined for other parts. */
function delayOf(frame: Frame): 'operate' | 'release' | undefined {
  if (frame.part.kind !== 'timer') return undefined;
  return frame.part.function === 'on-delay' ? 'operate' : 'release';
}

/** IEC 60617: one arm, and a qualifier that tells what moves it. */
function iecStyle(frame: Frame, worked: boolean): Style {
  const delay = delayOf(frame);
  const operators: Partial<Record<string, Operator | undefined>> = {
    gate: wedge,
    switch: hand,
    button: plunger,
    cutout: thermal,
    pole: delay === undefined ? undefined : parachute(delay),
  };
  const operator = worked ? operators[frame.symbol.figure] : undefined;
  return {
    glyph: (place, form) => barePlain(place, form, operator),
    arm: { operator, ends: 'hooks' },
  };
}

/** Ladder symbols: a contact for each way. */
function necStyle(frame: Frame): Style {
  const delay = delayOf(frame);
  switch (frame.symbol.figure) {
    case 'gate':
      return { glyph: (place, form) => ringArm(place, form, wedge) };
    case 'switch':
      return { glyph: (place) => ringBlade(place), arm: { operator: undefined, ends: 'rings' } };
    case 'button':
      return { glyph: ringPlunger };
    case 'cutout':
      if (isOverload(frame)) return { glyph: (place, form) => bars(place, form, 'OL') };
      return { glyph: (place, form) => ringArm(place, form, thermalStep) };
    default:
      if (delay !== undefined) return { glyph: (place, form) => ringArm(place, form, timeArrow(delay)) };
      return { glyph: (place, form) => bars(place, form) };
  }
}

/** How contacts look; `worked` is false for one that a link ties to the operator of another. */
export function styleOf(frame: Frame, worked: boolean): Style {
  if (frame.symbol.figure === 'static-pole') return { glyph: valves };
  return frame.options.practice === 'iec' ? iecStyle(frame, worked) : necStyle(frame);
}
