/** A plan as a graph of terminals: wire, contacts with the position that closes them, and windings. */
import { isAc, listOf, text, type Wiring } from '../brute-read.ts';
import { PINS } from './terminals.ts';

export interface Edge {
  to: string;
  /** part that must stand in `position`; none for wire, fuses and windings */
  owner: string;
  position: string;
  winding: boolean;
}

export interface Graph {
  edges: Map<string, Edge[]>;
  /** mains working terminals of plugs and their volts */
  pins: { key: string; pin: string; plug: string; volts: number; phases: number }[];
  earths: string[];
  /** terminals of gates and of low-voltage sources */
  gates: Set<string>;
  sources: Set<string>;
}

type Add = (a: string, b: string, owner?: string, position?: string, winding?: boolean) => void;

function addContacts(w: Wiring, add: Add): void {
  for (const p of w.parts.values()) {
    const full = (t: string): string => `${p.name}.${t}`;
    for (const k of p.contacts) {
      if (k.no && k.com) add(full(k.com), full(k.no), p.name, 'worked');
      if (k.nc && k.com) add(full(k.com), full(k.nc), p.name, 'rest');
    }
    if (p.kind !== 'selector') continue;
    for (const at of listOf(p.fields.positions).map(text))
      if (at !== 'off') add(full('COM'), full(at), p.name, at);
  }
}

const THROUGH: Record<string, [string, string][]> = {
  relay: [['A1', 'A2']],
  timer: [['A1', 'A2']],
  board: [
    ['VCC', 'GND'],
    ['VCC', 'IN'],
    ['IN', 'GND'],
  ],
  lamp: [['1', '2']],
  resistor: [['1', '2']],
  diode: [['A', 'K']],
  led: [['A', 'K']],
};

function addParts(w: Wiring, add: Add, g: Graph): void {
  for (const p of w.parts.values()) {
    const full = (t: string): string => `${p.name}.${t}`;
    if (p.kind === 'fuse') add(full('1'), full('2'));
    for (const [a, b] of THROUGH[p.kind] ?? []) add(full(a), full(b), '', '', true);
    if (p.kind === 'gate') for (const t of ['COM', 'NO', 'NC']) g.gates.add(full(t));
    if (p.kind === 'supply' || p.kind === 'battery') {
      for (const t of isAc(p.fields.output) ? ['~1', '~2'] : ['+', '-']) g.sources.add(full(t));
    }
    const into = text(p.fields['plugged-into']);
    if (into) for (const t of PINS) add(full(t), `${into}.${t}`);
    if (p.kind === 'motor' || p.kind === 'load') {
      const live = PINS.filter((t) => t !== 'PE');
      const at = into ? `${into}.` : `${p.name}.`;
      const used = live.map((t) => at + t).filter((t) => w.used.has(t));
      for (const t of used.slice(1)) add(used[0]!, t, '', '', true);
    }
    if (p.kind === 'plug') {
      const volts = Number.parseFloat(text(p.fields.volts)) || 120;
      const phases = Number(p.fields.phases) || (Number(p.fields.legs) === 2 ? 2 : 1);
      for (const t of PINS) {
        if (t === 'PE') g.earths.push(full(t));
        else if (w.used.has(full(t))) g.pins.push({ key: full(t), pin: t, plug: p.name, volts, phases });
      }
    }
  }
}

export function graphOf(w: Wiring): Graph {
  const g: Graph = { edges: new Map(), pins: [], earths: [], gates: new Set(), sources: new Set() };
  const add: Add = (a, b, owner = '', position = '', winding = false) => {
    for (const [from, to] of [
      [a, b],
      [b, a],
    ] as const) {
      const list = g.edges.get(from) ?? [];
      list.push({ to, owner, position, winding });
      g.edges.set(from, list);
    }
  };
  for (const [a, b] of w.joins) add(a, b);
  addContacts(w, add);
  addParts(w, add, g);
  return g;
}

/**
 * Every terminal that some simple path reaches from `start`, with each part of a path in one position only.
 * A path ends where `stop` says so.
 */
export function reach(
  g: Graph,
  start: string,
  windings: boolean,
  stop: (key: string) => boolean,
): Set<string> {
  const met = new Set<string>([start]);
  const onPath = new Set<string>();
  const held = new Map<string, string>();
  let steps = 0;
  const walk = (key: string): void => {
    met.add(key);
    if (stop(key) || steps++ > 20_000) return;
    onPath.add(key);
    for (const e of g.edges.get(key) ?? []) {
      if (onPath.has(e.to) || (e.winding && !windings)) continue;
      const before = held.get(e.owner);
      if (e.owner && before !== undefined && before !== e.position) continue;
      if (e.owner) held.set(e.owner, e.position);
      walk(e.to);
      if (e.owner && before === undefined) held.delete(e.owner);
    }
    onPath.delete(key);
  };
  walk(start);
  return met;
}
