/** Solving an island whose supplies give no more than they can. */
import type { Source } from '../circuit/circuit.ts';
import { Flows } from '../electric/flows.ts';
import { assemble, type Figures, type Island, type Situation } from '../electric/island.ts';
import { solveNetwork } from '../electric/solve.ts';
import type { Plan } from '../plan/plan.ts';

/** A from which a plug's own breaker is taken to open at once, as a multiple of its rating. */
const TRIPS = 20;
const BREAKER = 16;
/** ohm, next to none: what parts an ideal source from a dead short. */
const BIT = 1e-3;

const MIXED = 'AC and DC meet here, or AC passes a diode; what a meter reads then is not worked out.';
const CLASH =
  'Sources of unlike volts are joined, or a battery is shorted, with no resistance between; the current is beyond telling.';
const UNSETTLED = 'The diodes find no position that agrees with itself; nothing is told.';

/** Volts and currents of an island, and what its supplies could not do. */
export interface SolvedIsland {
  readonly flows: Flows;
  /** any source here that is alive gives AC */
  readonly ac: boolean;
  /** why volts and currents here are not worked out, as a sentence; undefined where they are */
  readonly notWorkedOut: string | undefined;
  /** sources held at their limit, and plugs whose breaker has opened */
  readonly atLimit: readonly Source[];
  readonly tripped: readonly Source[];
}

/**
 * Volts and currents of an island. A regulated supply that would have to give more than its limit gives just that: the
 * network it sees is linear, so two solves tell the resistance that holds it there. A shorted plug is dead.
 */
export function solveLimited(
  plan: Plan,
  island: Island,
  figures: Figures,
  situation: Situation,
): SolvedIsland {
  const extra = new Map<Source, number>();
  const tripped = new Set<Source>();
  const flowsWith = (more: ReadonlyMap<Source, number>): Flows => {
    const own: Figures = {
      ...figures,
      source: (s) => {
        const f = figures.source(s);
        return { ...f, ohms: f.ohms + (more.get(s) ?? 0) };
      },
    };
    const here: Situation = { ...situation, alive: (s) => situation.alive(s) && !tripped.has(s) };
    const made = assemble(island, own, here);
    return new Flows(island, made, solveNetwork(made.network));
  };
  let flows = flowsWith(extra);
  for (const s of island.sources) {
    if (!situation.alive(s)) continue;
    const most = limitOf(plan, s);
    // Behind a resistance of its own a supply sags by itself.
    const isPlug = plan.parts.get(s.part)?.kind === 'plug';
    if (most === undefined || (!isPlug && figures.source(s).ohms > 0)) continue;
    // Where ideal sources contradict, only a resistance in line shows which of them is the one overloaded.
    const first = flows.solution.conflict === undefined ? 0 : BIT;
    const amps = ampsOf(first === 0 ? flows : flowsWith(new Map([...extra, [s, first]])), s);
    if (amps <= most * (1 + 1e-9)) continue;
    if (isPlug) tripped.add(s);
    else extra.set(s, heldBy(first, amps, ampsOf(flowsWith(new Map([...extra, [s, 1]])), s), most));
    flows = flowsWith(extra);
  }
  const live = island.sources.filter((s) => situation.alive(s) && !tripped.has(s));
  const ac = live.some((s) => s.kind === 'ac');
  return {
    flows,
    ac,
    notWorkedOut: whyNot(flows, ac && (live.some((s) => s.kind === 'dc') || island.diodes.length > 0)),
    atLimit: [...extra.keys()],
    tripped: [...tripped],
  };
}

function whyNot(flows: Flows, mixed: boolean): string | undefined {
  if (mixed) return MIXED;
  if (flows.solution.conflict !== undefined) return CLASH;
  return flows.solution.settled ? undefined : UNSETTLED;
}

/** A that a source gives at the rail that carries most; a DC source fed backwards gives less than none. */
function ampsOf(flows: Flows, s: Source): number {
  return s.kind === 'dc' ? flows.sourceAmps(s).re : flows.mostAmps(s);
}

/**
 * ohm in line that holds a source at `most`, from its currents with `first` ohm in line and with 1 ohm: I = E/(Rth + R).
 */
function heldBy(first: number, amps: number, withOne: number, most: number): number {
  const drive = (1 - first) / (1 / withOne - 1 / amps);
  const ohms = first + drive / most - drive / amps;
  return Number.isFinite(ohms) ? Math.max(BIT, ohms) : BIT;
}

/** A that a source can give for long: a regulated supply's limit, or what opens a plug's breaker at once. */
export function limitOf(plan: Plan, s: Source): number | undefined {
  const part = plan.parts.get(s.part);
  if (part?.kind === 'plug') return TRIPS * (part.breaker ?? BREAKER);
  if (part?.kind !== 'supply') return undefined;
  return part.limit?.amps;
}

/** Whether a source of an island has power and its breaker has held. */
export function isOn({ tripped }: SolvedIsland, situation: Situation, s: Source): boolean {
  return situation.alive(s) && !tripped.includes(s);
}

/** What the numbers of an island do not say of its supplies, in sentences. */
export function limitNotes(plan: Plan, { atLimit, tripped }: SolvedIsland): string[] {
  return [
    ...atLimit.map(
      (s) =>
        `${s.part} cannot give what is asked of it: it is taken to hold its limit of ${Number((limitOf(plan, s) ?? 0).toPrecision(3))} A, and its volts sag.`,
    ),
    ...tripped.map((s) => `${s.part} is shorted: its breaker or fuse is taken to have opened.`),
  ];
}
