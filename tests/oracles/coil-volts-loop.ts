/**
 * The low-voltage network of a plan for the coil-voltage oracle, from the plan's text: numbered nodes,
 * resistors (cores, contacts, fuses, lamps), sources, diodes and relay coils.
 */
import { parse } from 'yaml';
import { type Fields, figures, isMap, keyOf, listOf, type Part, readWiring, text } from './brute-read.ts';
import * as fig from './coil-volts-figures.ts';
import { Groups, type Valve } from './coil-volts-solve.ts';
import { type ByCorner, celsius, coreOhms, type Place } from './coil-volts-wire.ts';

export interface Resistor {
  a: number;
  b: number;
  /** at each corner */
  ohm: ByCorner<number>;
  /** a contact: the part that works it, and whether it is closed when that part is in its working position */
  contact?: { owner: string; make: boolean };
}

export interface Relay {
  name: string;
  coil: fig.Coil;
  a1: number;
  a2: number;
}

export interface Feed {
  p: number;
  n: number;
  source: fig.Source;
}

export interface Loop {
  nodes: number;
  resistors: Resistor[];
  feeds: Feed[];
  valves: Valve[];
  relays: Relay[];
  /** gates, switches, buttons and cut-outs, in plan order */
  inputs: string[];
}

interface Core {
  a: string;
  b: string;
  /** undefined for a jumper */
  ohm?: ByCorner<number>;
}

type NodeOf = (part: string, terminal: string) => number;

const INPUTS = ['gate', 'switch', 'button', 'cutout'];
const REFUSED = ['selector', 'timer', 'board'];
const DIODE = { drop: 0.7, ohm: 1e-4 };

function coresOf(doc: Fields, parts: Map<string, Part>, place: Place): Core[] {
  const stock = isMap(doc.stock) ? doc.stock : {};
  const specOf = (x: unknown): Fields => {
    const spec = isMap(x) ? x : stock[text(x)];
    if (!isMap(spec)) throw new Error(`oracle: no cable ${text(x)}`);
    return spec.from === undefined ? spec : { ...specOf(spec.from), ...spec };
  };
  const ends = (pair: unknown): { a: string; b: string } => {
    const [a, b] = listOf(pair);
    return { a: keyOf(parts, a), b: keyOf(parts, b) };
  };
  return listOf(doc.runs).flatMap((run): Core[] => {
    if (!isMap(run)) return [];
    if (run.link !== undefined) return [ends(run.link)];
    const ohm = coreOhms(specOf(run.cable), run.length, place);
    return Object.values(isMap(run.cores) ? run.cores : {}).map((pair) => ({ ...ends(pair), ohm }));
  });
}

function contactsOf(part: Part, node: NodeOf): Resistor[] {
  const poles = listOf(part.fields.poles);
  // A lever pressed by the shut gate is free in the working position.
  const freed = part.fields['pressed-when'] === 'shut';
  return part.contacts.flatMap((c, i) => {
    const pole = poles[i];
    const ohm = fig.contactOhms(isMap(pole) ? pole.contact : undefined, part.fields.contact);
    const tabs: [string, boolean][] = [
      [c.no, !freed],
      [c.nc, freed],
    ];
    return tabs
      .filter(([tab]) => c.com !== '' && tab !== '')
      .map(([tab, make]) => ({
        a: node(part.name, c.com),
        b: node(part.name, tab),
        ohm,
        contact: { owner: part.name, make },
      }));
  });
}

/** An indicator: its own dropper inside, unless a resistor part shares a net with either end. */
function indicator(part: Part, parts: Map<string, Part>, nets: Groups<string>, rated: Set<number>) {
  const drop = figures(part.fields.forward).V ?? 2;
  const amps = figures(part.fields.current).A ?? 0.02;
  const own = ['A', 'K'].map((t) => nets.find(`${part.name}.${t}`));
  const near = [...parts.values()].some(
    (p) => p.kind === 'resistor' && ['1', '2'].some((t) => own.includes(nets.find(`${p.name}.${t}`))),
  );
  if (near) return { drop, ohm: (0.1 * drop) / amps };
  if (rated.size !== 1) throw new Error('oracle: an indicator and more than one supply voltage');
  return { drop, ohm: ([...rated][0]! - drop) / amps };
}

function addCores(loop: Loop, cores: readonly Core[], nodeOfKey: (key: string) => number): void {
  for (const { a, b, ohm } of cores) {
    if (ohm) loop.resistors.push({ a: nodeOfKey(a), b: nodeOfKey(b), ohm });
  }
}

function addFeeds(loop: Loop, parts: Map<string, Part>, place: Place, node: NodeOf): void {
  for (const { kind, name, fields } of parts.values()) {
    if (kind !== 'supply' && kind !== 'battery') continue;
    const source = kind === 'battery' ? fig.battery(fields) : fig.supply(fields, place);
    const [p, n] = source.ac ? ['~1', '~2'] : ['+', '-'];
    loop.feeds.push({ p: node(name, p!), n: node(name, n!), source });
  }
}

function addParts(loop: Loop, parts: Map<string, Part>, nets: Groups<string>, node: NodeOf): void {
  const rated = new Set(loop.feeds.filter((f) => !f.source.ac).map((f) => f.source.rated));
  const same = (ohm: number): ByCorner<number> => ({ low: ohm, nominal: ohm, high: ohm });
  for (const part of parts.values()) {
    const { kind, name } = part;
    if (REFUSED.includes(kind)) throw new Error(`oracle: a ${kind} is left out`);
    if (INPUTS.includes(kind)) loop.inputs.push(name);
    loop.resistors.push(...contactsOf(part, node));
    const ohm =
      kind === 'fuse'
        ? fig.contactOhms()
        : kind === 'lamp' || kind === 'resistor'
          ? same(fig.lampOhms(part.fields))
          : undefined;
    if (ohm) loop.resistors.push({ a: node(name, '1'), b: node(name, '2'), ohm });
    if (kind !== 'diode' && kind !== 'led') continue;
    const figure = kind === 'diode' ? DIODE : indicator(part, parts, nets, rated);
    loop.valves.push({ anode: node(name, 'A'), cathode: node(name, 'K'), ...figure });
  }
}

/** Keeps what some path of cores, contacts, coils or diodes joins to a low-voltage source: no mains, no loose ends. */
function addFedRelays(loop: Loop, parts: Map<string, Part>, place: Place, node: NodeOf): void {
  const relays = [...parts.values()]
    .filter((p) => p.kind === 'relay')
    .map((p) => ({ part: p, a1: node(p.name, 'A1'), a2: node(p.name, 'A2') }));
  const reach = new Groups<number>();
  for (const { a, b } of loop.resistors) reach.join(a, b);
  for (const { anode, cathode } of loop.valves) reach.join(anode, cathode);
  for (const { a1, a2 } of relays) reach.join(a1, a2);
  for (const { p, n } of loop.feeds) reach.join(p, n);
  const roots = new Set(loop.feeds.map((f) => reach.find(f.p)));
  const fed = (n: number): boolean => roots.has(reach.find(n));
  loop.resistors = loop.resistors.filter((r) => fed(r.a) && r.a !== r.b);
  loop.valves = loop.valves.filter((v) => fed(v.anode) && v.anode !== v.cathode);
  for (const { part, a1, a2 } of relays.filter((r) => fed(r.a1))) {
    const coil = fig.relayCoil(part.fields, place);
    loop.relays.push({ name: part.name, coil, a1, a2 });
    if (coil.diode) loop.valves.push({ anode: a2, cathode: a1, ...DIODE });
  }
}

/** The network that the low-voltage sources of a plan reach; throws on what the oracle does not know. */
export function loopOf(planText: string): Loop {
  const doc: unknown = parse(planText, { maxAliasCount: 1000 });
  if (!isMap(doc)) throw new Error('oracle: not a plan');
  const { parts } = readWiring(planText);
  const practice = doc.practice === 'iec' ? 'iec' : 'nec';
  const place: Place = { ambient: celsius(doc.ambient, 40), practice };
  const cores = coresOf(doc, parts, place);
  const solid = new Groups<string>();
  const nets = new Groups<string>();
  for (const c of cores) {
    nets.join(c.a, c.b);
    if (!c.ohm) solid.join(c.a, c.b);
  }
  const numbers = new Map<string, number>();
  const nodeOfKey = (key: string): number => {
    const name = solid.find(key);
    const number = numbers.get(name) ?? numbers.size;
    numbers.set(name, number);
    return number;
  };
  const node: NodeOf = (part, terminal) => nodeOfKey(`${part}.${terminal}`);
  const loop: Loop = { nodes: 0, resistors: [], feeds: [], valves: [], relays: [], inputs: [] };
  addCores(loop, cores, nodeOfKey);
  addFeeds(loop, parts, place, node);
  addParts(loop, parts, nets, node);
  addFedRelays(loop, parts, place, node);
  loop.nodes = numbers.size;
  return loop;
}
