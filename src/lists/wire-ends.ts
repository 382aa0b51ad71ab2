import { saidOf } from '../plan/by-kind.ts';
import type { Part } from '../plan/part-types.ts';
import type { Cable, Plan, Run, TerminalRef } from '../plan/plan.ts';
import type { EndMethod } from './end-methods.ts';
import { END_METHOD } from './kinds.ts';
import type { WireEnd } from './wirelist-model.ts';

/** mm of insulation for wire up to 1 mm². */
const STRIP: Readonly<Record<EndMethod, number>> = {
  tab: 6,
  screw: 7,
  splice: 11,
  clamp: 10,
  lead: 6,
  earth: 7,
  battery: 6,
};

/** mm more for thicker copper, by area in mm². */
const MORE = [
  { above: 6, mm: 5 },
  { above: 2.6, mm: 3 },
  { above: 1, mm: 1 },
] as const;

/** mm of sheath: little where a cable clamp is close to the terminal, much where cores spread in a box. */
const SHEATH: Readonly<Record<EndMethod, number>> = {
  tab: 40,
  screw: 100,
  splice: 100,
  clamp: 40,
  lead: 60,
  earth: 100,
  battery: 60,
};

function stripOf(method: EndMethod, cable: Cable): number {
  const area = cable.area * 1e6;
  return STRIP[method] + (MORE.find((m) => area > m.above)?.mm ?? 0);
}

/** The leads of a motor are spliced; its earth goes under a screw of the frame. */
function isEarthScrew({ kind }: Part, ref: TerminalRef): boolean {
  return (kind === 'motor' || kind === 'load') && ref.terminal === 'PE';
}

/** The end of `core` at `ref`, which is one of its two. */
export function endOf(plan: Plan, run: Run, ref: TerminalRef): WireEnd {
  const part = plan.parts.get(ref.part);
  const method = part === undefined ? 'screw' : isEarthScrew(part, ref) ? 'earth' : saidOf(END_METHOD, part);
  const { cable } = run;
  return {
    terminal: ref.written,
    part: ref.part,
    method,
    sheath: cable === undefined || cable.cores < 2 ? null : SHEATH[method],
    strip: cable === undefined ? null : stripOf(method, cable),
    ferrule: cable !== undefined && cable.strands !== 'solid' && (method === 'screw' || method === 'clamp'),
  };
}
