/**
 * Which way round the probes lie on ohms: red is plus there, and a meter whose ohms range opens a diode reads a right
 * circuit wrong with red on the anode side.
 */
import type { WiredCircuit } from '../circuit/build.ts';
import type { DiodeEdge } from '../circuit/circuit.ts';
import { UnionFind } from '../circuit/union-find.ts';
import { type DeadStanding, isSure } from '../machine/ohmmeter.ts';
import { closedWith } from '../machine/settle.ts';
import type { Measure } from './measure.ts';
import { terminalsOfSources } from './nearest.ts';
import type { Subject, Subjects } from './subject.ts';

/** Share of what the meter puts across its probes under which a diode is not opened; common practice, no source. */
const TOO_LITTLE = 0.02;

/** The same readings, those in ohms with red on the side of the cathodes; `near` where what is near the probes is enough. */
export function redOnCathode(
  subjects: Subjects,
  measures: readonly Measure[],
  near: boolean,
): readonly Measure[] {
  const { circuit } = subjects.right;
  if (circuit.diodes.length === 0) return measures;
  const sources = near ? terminalsOfSources(circuit.plan, circuit) : [];
  return measures.map((m) => {
    if (m.expect.unit !== 'ohm') return m;
    const { pair, stance, clipped } = m;
    const keys = [...sources, pair.a, pair.b, ...clipped];
    const inputs = new Set([...stance.moved, ...stance.first]);
    const subject = near ? subjects.near(keys, inputs).right : subjects.right;
    return opens(m, subject) ? { ...m, pair: { ...pair, a: pair.b, b: pair.a } } : m;
  });
}

/** Whether a diode is opened rather as the probes lie than the other way round; a plain one counts before an indicator. */
function opens(m: Measure, subject: Subject): boolean {
  const { pair, stance, stage, clipped } = m;
  const relays = stage === 1 ? undefined : subject.loop.relaysAt(stance, pair.a, pair.b);
  const at: DeadStanding = { moved: stance.moved, relays, clipped };
  const { diodes } = subject.circuit;
  const forward = m.expect.shows === 'open' ? apart(m, at, subject) : across(m, at, subject);
  const plain = forward(diodes.filter((d) => !d.load));
  return plain !== 0 ? plain > 0 : forward(diodes.filter((d) => d.load)) > 0;
}

/** More than nothing where these diodes lie forwards between the probes, less where they lie backwards. */
type Forward = (diodes: readonly DiodeEdge[]) => number;

/** Where current flows anyway: how it falls across them. */
function across({ pair }: Measure, at: DeadStanding, { circuit, dead }: Subject): Forward {
  const named = new Map([...circuit.netOf].map(([key, net]) => [net, key]));
  const read = dead.readOneOfMany(at, pair.a, pair.b);
  const drop = dead.drops(at, pair.a, pair.b);
  const full = isSure(read) || Number.isFinite(read.most) ? read.most : 0;
  return (diodes) =>
    diodes.reduce((sum, { anode, cathode }) => {
      const [a, k] = [named.get(anode), named.get(cathode)];
      const volts = a === undefined || k === undefined ? undefined : drop(a, k);
      return volts === undefined || Math.abs(volts) <= TOO_LITTLE * full ? sum : sum + volts;
    }, 0);
}

/** Where none flows: whether these diodes would let it through, one way or the other. */
function apart({ pair }: Measure, { moved, relays, clipped }: DeadStanding, { circuit }: Subject): Forward {
  const pieces = piecesOf(circuit, closedWith(new Set(moved), relays ?? circuit.relays.map(() => false)));
  const nets = (keys: readonly string[]) => keys.flatMap((key) => circuit.netOf.get(key) ?? []);
  const leads = nets(clipped);
  for (const net of leads) pieces.union(leads[0]!, net);
  const [a, b] = nets([pair.a, pair.b]);
  if (a === undefined || b === undefined) return () => 0;
  return (diodes) => Number(leadsTo(pieces, diodes, a, b)) - Number(leadsTo(pieces, diodes, b, a));
}

function piecesOf(circuit: WiredCircuit, isClosed: ReturnType<typeof closedWith>): UnionFind {
  const pieces = new UnionFind(circuit.netCount);
  for (const x of [...circuit.wires, ...circuit.passives, ...circuit.contacts.filter(isClosed)])
    pieces.union(x.a, x.b);
  return pieces;
}

function leadsTo(pieces: UnionFind, diodes: readonly DiodeEdge[], from: number, to: number): boolean {
  const reached = [pieces.find(from)];
  const seen = new Set(reached);
  for (const piece of reached)
    for (const { anode, cathode } of diodes) {
      const next = pieces.find(cathode);
      if (pieces.find(anode) !== piece || seen.has(next)) continue;
      seen.add(next);
      reached.push(next);
    }
  return seen.has(pieces.find(to));
}
