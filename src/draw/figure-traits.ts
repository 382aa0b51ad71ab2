/** What a figure is, whatever it looks like: the section it stands in, its place on a rung, and the room it asks for. */

import { isMainsOutput } from '../circuit/thresholds.ts';
import type { Part } from '../plan/part-types.ts';
import type { Figure } from './drawing.ts';

/** Low voltage stands above the barrier, mains below it. */
export type Section = 'low' | 'mains';

export interface FigureTraits {
  /** the section it belongs to */
  readonly home: (part: Part) => Section;
  /** true where it stands there whatever its nets are */
  readonly fixed: boolean;
  /** a rail begins at it */
  readonly source: boolean;
  /** whether it ends a rung: always, when one of its terminals lies on the return conductor, or never */
  readonly fed: 'always' | 'by return' | 'never';
  /** drawn well above and below its terminals' lines */
  readonly tall: boolean;
  /** it stands for contacts, which are made or not */
  readonly contacts: boolean;
}

const low = (): Section => 'low';
const mains = (): Section => 'mains';

function byCoil(part: Part): Section {
  const rated = 'coil' in part ? part.coil?.rated : undefined;
  return rated?.kind === 'ac' && isMainsOutput(rated) ? 'mains' : 'low';
}

/** A load for direct current hangs on the loop's side, any other on the mains. */
function byVolts(part: Part): Section {
  return (part.kind === 'motor' || part.kind === 'load') && part.volts.kind === 'dc' ? 'low' : 'mains';
}

/** A supply of more than extra-low volts is the mains of what it feeds. */
function byOutput(part: Part): Section {
  return part.kind === 'supply' && isMainsOutput(part.output) ? 'mains' : 'low';
}

const plain: FigureTraits = {
  home: low,
  fixed: false,
  source: false,
  fed: 'never',
  tall: false,
  contacts: false,
};
const contact: FigureTraits = { ...plain, contacts: true };
const coil: FigureTraits = { ...plain, home: byCoil, fed: 'always', tall: true };
const onMains: FigureTraits = { ...plain, home: mains, fixed: true };

const TRAITS: Readonly<Record<Figure, FigureTraits>> = {
  source: { ...plain, home: byOutput, fixed: true, source: true },
  primary: { ...onMains, fed: 'always' },
  gate: contact,
  switch: contact,
  button: contact,
  cutout: contact,
  selector: contact,
  pole: { ...contact, home: mains },
  'static-pole': { ...contact, home: mains },
  coil,
  timer: coil,
  board: { ...coil, home: low },
  diode: { ...plain, fed: 'by return' },
  led: { ...plain, fed: 'by return', tall: true },
  resistor: { ...plain, fed: 'by return' },
  lamp: { ...plain, fed: 'by return', tall: true },
  fuse: plain,
  joint: plain,
  plug: { ...onMains, source: true },
  outlet: { ...onMains, fed: 'always' },
  motor: { ...onMains, home: byVolts, fed: 'always', tall: true },
  load: { ...onMains, home: byVolts, fed: 'always', tall: true },
  box: onMains,
};

export function traitsOf(figure: Figure): FigureTraits {
  return TRAITS[figure];
}
