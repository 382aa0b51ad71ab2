import type { Part, PartKind } from '../../plan/part-types.ts';
import type { Study } from '../../study/study.ts';
import { triggered } from '../../study/timers/triggers.ts';

const COIL = ['A1', 'A2'];
const TWO_ENDS = ['1', '2'];
const POLES = ['+', '-'];

/** What each kind of part cannot do without; `conductors` are those of a machine or socket on the mains. */
const NEEDED: Readonly<Record<PartKind, readonly string[] | 'conductors'>> = {
  relay: COIL,
  timer: COIL,
  board: ['VCC', 'GND', 'IN'],
  diode: ['A', 'K'],
  led: ['A', 'K'],
  resistor: TWO_ENDS,
  lamp: TWO_ENDS,
  fuse: TWO_ENDS,
  supply: POLES,
  battery: POLES,
  gate: ['COM'],
  switch: ['COM'],
  button: ['COM'],
  selector: ['COM'],
  cutout: [],
  motor: 'conductors',
  load: 'conductors',
  outlet: 'conductors',
  plug: [],
  joint: [],
  box: [],
};

/** Terminals that a part cannot do without. */
export function neededTerminals(study: Study, part: Part): string[] {
  if ('throws' in part && part.throws) return [];
  if (part.kind === 'relay' && part.bistable === 'set-reset') return [...COIL, 'B1', 'B2'];
  if (part.kind === 'timer' && triggered(study).some((t) => t.part === part)) return [...COIL, 'T1', 'T2'];
  if (part.kind === 'supply' && part.output.kind === 'ac') return ['~1', '~2'];
  const needed = NEEDED[part.kind];
  if (needed !== 'conductors') return [...needed];
  return [...(study.circuit.consumers.find((c) => c.part === part.name)?.nets.keys() ?? [])];
}
