/** Volts and currents on the mains side, with every load at a current of its own. */
import type { Consumer, ContactEdge, Passive, Source } from '../../circuit/circuit.ts';
import { Flows } from '../../electric/flows.ts';
import { assemble, type Figures, islandOf, type Situation } from '../../electric/island.ts';
import { solveNetwork } from '../../electric/solve.ts';
import { FALSE } from '../../logic/bdd.ts';
import { type Moved, movedIn, running } from '../../logic/verify.ts';
import { kept } from '../../plan/map-entries.ts';
import { statedOhms } from '../contact-ohms.ts';
import type { Electrics } from '../electrics.ts';

/** A circuit with the loads that draw as impedances, and the load of each; made once for the same loads. */
interface Loaded {
  readonly parts: Electrics['circuit'];
  readonly loadOf: ReadonlyMap<Passive, Consumer>;
}
const loaded = new WeakMap<Electrics, Map<string, Loaded>>();

function loadedWith(own: Electrics, drawing: readonly Consumer[]): Loaded {
  const known = kept(loaded, own, () => new Map());
  return kept(known, drawing.map((c) => c.part).join('\n'), () => {
    const loadOf = new Map<Passive, Consumer>();
    for (const c of drawing)
      for (const [a, b] of sides(c)) loadOf.set({ a, b, part: c.part, what: 'load' }, c);
    const others = own.circuit.passives.filter((p) => p.what !== 'load');
    return { parts: { ...own.circuit, passives: [...others, ...loadOf.keys()] }, loadOf };
  });
}

/** Loads as impedances: their volts over the current given; three phases as a balanced delta of √3·V/I a side. */
function withLoads(own: Electrics, amps: ReadonlyMap<string, number>, figures: Figures) {
  const draws = (c: Consumer) => (amps.get(c.part) ?? 0) > 0 && c.volts !== undefined;
  const { parts, loadOf } = loadedWith(own, own.circuit.consumers.filter(draws));
  return {
    parts,
    figures: {
      ...figures,
      // A power contact has some milliohms; the figure for small switches would swamp the cable.
      contact: (c: ContactEdge) => statedOhms(own.study.plan, c) ?? 0,
      passive: (p: Passive, on: boolean) => {
        const load = loadOf.get(p);
        if (load === undefined) return figures.passive(p, on);
        const sides = load.nets.size === 3 ? Math.sqrt(3) : 1;
        return { re: (sides * load.volts!) / amps.get(load.part)!, im: 0 };
      },
    },
  };
}

function sides(c: Consumer): [number, number][] {
  const nets = [...c.nets.values()];
  if (nets.length < 3) return [[nets[0]!, nets[1]!]];
  return [
    [nets[0]!, nets[1]!],
    [nets[1]!, nets[2]!],
    [nets[2]!, nets[0]!],
  ];
}

/** What is asked of loads that do not get the volts of their plate. */
export interface Drawing {
  /** each draws the current of its plate, as the tables of ampacity take it */
  readonly rated?: true;
  /** name of the motor that stands still and starts: an impedance */
  readonly starting?: string;
}

/** Share of its plate volts below which a motor stalls and draws no more for less; common practice. */
const STALLS = 0.7;
/** Share of its plate volts with which a load is not fed at all. */
const DEAD = 0.01;
/** Rounds after which the currents stand still, and share by which they may still move. */
const ROUNDS = 12;
const STILL = 1e-5;

/**
 * The mains island of a source in one situation; `amps` at the plate's volts by name of the load, those without draw
 * nothing. A motor that turns, and electronics, take the power they need: on fewer volts they draw more (NEMA MG 1: 11 %
 * more at 90 % of the volts), never less than the plate's. Any other load is an impedance.
 */
export function solveMains(
  own: Electrics,
  source: Source,
  situation: Situation,
  amps: ReadonlyMap<string, number>,
  figures: Figures,
  { rated, starting }: Drawing = {},
): Flows {
  const followed = own.circuit.consumers.filter(
    (c) => c.part !== starting && amps.has(c.part) && (rated || takesPower(own, c)),
  );
  let atPlate = amps;
  let flows = solveWith(own, source, situation, atPlate, figures);
  for (let round = 0; followed.length > 0 && round < ROUNDS; round++) {
    const next = new Map(atPlate);
    for (const c of followed) {
      const share = (loadVolts(flows, c) ?? 0) / (c.volts ?? 1);
      const drawn = amps.get(c.part)! / (rated ? 1 : Math.max(Math.min(share, 1), STALLS));
      if (share > DEAD) next.set(c.part, drawn / share);
    }
    if (followed.every((c) => Math.abs(next.get(c.part)! / atPlate.get(c.part)! - 1) <= STILL)) break;
    atPlate = next;
    flows = solveWith(own, source, situation, atPlate, figures);
  }
  return flows;
}

function takesPower({ study }: Electrics, c: Consumer): boolean {
  const part = study.plan.parts.get(c.part);
  return part?.kind === 'motor' || (part?.kind === 'load' && part.type === 'electronic');
}

/** With every load as an impedance that would draw `amps` at its own volts. */
function solveWith(
  own: Electrics,
  source: Source,
  situation: Situation,
  amps: ReadonlyMap<string, number>,
  figures: Figures,
): Flows {
  const made = withLoads(own, amps, figures);
  const island = islandOf(
    made.parts,
    source.rails.map((r) => r.net),
  );
  const assembled = assemble(island, made.figures, situation);
  return new Flows(island, assembled, solveNetwork(assembled.network));
}

/** Least volts between two conductors of a load. */
export function loadVolts(flows: Flows, c: Consumer): number | undefined {
  const all = sides(c).map(([a, b]) => flows.volts(a, b));
  if (all.some((v) => v === undefined)) return undefined;
  return Math.min(...all.map((v) => Math.hypot(v!.re, v!.im)));
}

/** States worth looking at on the mains side: all gates open, and the nearest in which each load runs. */
export function runningStates(own: Electrics): Moved[] {
  const { v } = own;
  const gates = v.circuit.inputs.filter((i) => i.kind === 'gate').map((i) => i.index);
  const states: Moved[] = [gates];
  for (const c of v.circuit.consumers) {
    const moved = runningState(own, c.part);
    if (moved)
      states.push(
        moved,
        [...new Set([...gates, ...moved])].sort((x, y) => x - y),
      );
  }
  return [...new Map(states.map((s) => [s.join(), s])).values()];
}

/** The fewest inputs moved from rest with which a load runs. */
export function runningState(own: Electrics, load: string): Moved | undefined {
  const { v } = own;
  const f = own.situations.settled(running(v.model, load));
  return f === FALSE ? undefined : movedIn(v.circuit, v.model.bdd, f);
}
