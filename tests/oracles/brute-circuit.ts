/** From parts and joins to nets, contacts and elements: what the oracle enumerates over. */
import { figures, isAc, isMap, keyOf, listOf, type Part, text, type Wiring } from './brute-read.ts';

export interface Input {
  name: string;
  kind: string;
  /** words of its positions, rest first */
  words: string[];
}

/** Joins nets `a` and `b` when the input stands on `at`, or when the relay is in (`at` 1) or out (`at` 0). */
export interface Closer {
  a: number;
  b: number;
  input: number;
  relay: number;
  at: number;
}

export interface Relay {
  name: string;
  kind: string;
  rated: number;
  ohm: number;
  pullIn: number;
  dropOut: number;
  polarised: boolean;
  /** A1 A2, or VCC GND */
  plus: number;
  minus: number;
  /** board input, or -1; timer triggers, or -1 */
  signal: number;
  t1: number;
  t2: number;
  activeLow: boolean;
  signalOhm: number;
  threshold: number;
}

export interface Source {
  name: string;
  plus: number;
  minus: number;
  volts: number;
  ac: boolean;
  /** two nets that must be live, or none: always live */
  feed: number[];
  /** above extra-low voltage: what it feeds is mains side */
  mains: boolean;
}

export interface Consumer {
  name: string;
  kind: string;
  /** the live terminals it needs, in order, and all of its working terminals by name */
  needs: number[];
  live: Record<string, number>;
  /** needs a protective conductor */
  earthed: boolean;
  /** V it is made for, where it runs on direct current between its two needs */
  dc: number;
  /** A that it then draws */
  amps: number;
}

/** A lamp or led, and the least that lights it: V across a lamp, A through a led. */
export interface Lamp {
  name: string;
  a: number;
  b: number;
  volts: number;
  /** place among the diodes, or -1 */
  diode: number;
}

export interface Plug {
  name: string;
  volts: number;
  phases: number;
  /** L N L1 L2 L3 PE -> net */
  pins: [string, number][];
}

export interface Circuit {
  nets: number;
  inputs: Input[];
  closers: Closer[];
  relays: Relay[];
  sources: Source[];
  consumers: Consumer[];
  lamps: Lamp[];
  /** terminal keys with the net they are on */
  netOf: Map<string, number>;
  plugs: Plug[];
  resistors: { a: number; b: number; ohm: number }[];
  diodes: { name: string; a: number; k: number; drop: number; ohm: number; part: boolean; led: boolean }[];
  gateNets: number[];
  /** the net of a terminal by unbroken wire alone: no contact, no fuse; for earth */
  wireOnly: (net: string) => number;
  metalBoxes: string[];
  /** fixed-wire net of a plug's earth pins */
  plugEarths: Set<number>;
}

class Sets {
  readonly up: number[] = [];
  readonly id = new Map<string, number>();
  of(key: string): number {
    let i = this.id.get(key);
    if (i === undefined) {
      i = this.up.length;
      this.up.push(i);
      this.id.set(key, i);
    }
    while (this.up[i] !== i) i = this.up[i]!;
    return i;
  }
  join(a: string, b: string): void {
    this.up[this.of(a)] = this.of(b);
  }
}

const POSITIONS: Record<string, [string, string]> = {
  gate: ['shut', 'open'],
  switch: ['off', 'on'],
  button: ['released', 'pressed'],
  cutout: ['normal', 'tripped'],
};

/** How many live legs a mains part has: 'LN', 'LL' or 'LLL'. */
function shapeOf(part: Part, w: Wiring, fallback: string): string {
  const f = part.fields;
  const uses = (t: string): boolean => w.used.has(`${part.name}.${t}`);
  const pattern = text(f.pattern);
  if (Number(f.phases) === 3 || uses('L3') || /\b3P\b|3P\+/.test(pattern)) return 'LLL';
  if (/NEMA L?(11|12|15|16|18|19|2[0-3])-/.test(pattern)) return 'LLL';
  if (Number(f.legs) === 2 || uses('L1') || uses('L2') || /NEMA (L|SS|TT)?(6|10|14|2|7|8|9)-/.test(pattern)) {
    return /NEMA L?7-/.test(pattern) ? 'LN' : 'LL';
  }
  if (uses('L')) return 'LN';
  return fallback;
}

const NEEDS: Record<string, string[]> = { LN: ['L', 'N'], LL: ['L1', 'L2'], LLL: ['L1', 'L2', 'L3'] };
const PINS = ['L', 'N', 'L1', 'L2', 'L3', 'PE'];
const UNEARTHED = /NEMA 1-|CEE 7\/1[67]/;

/** Volts of a limit such as `75 %` or `9 V` about a rated voltage. */
function limit(x: unknown, rated: number, share: number): number {
  const q = figures(x);
  if (q['%'] !== undefined) return (q['%'] / 100) * rated;
  return q.V ?? share * rated;
}

function coilOhm(coil: { [key: string]: unknown }, rated: number, ac: boolean): number {
  const amps = figures(coil.current).A;
  const power = figures(coil.power);
  const watts = power.VA ?? power.W;
  const ohm = ac ? undefined : figures(coil.resistance).ohm;
  return ohm ?? (amps ? rated / amps : watts ? (rated * rated) / watts : rated / 0.1);
}

export function buildCircuit(w: Wiring): Circuit {
  const wire = new Sets();
  const sets = new Sets();
  const all = [...w.parts.values()];
  for (const [a, b] of w.joins) {
    wire.join(a, b);
    sets.join(a, b);
  }
  for (const p of all) {
    if (p.kind === 'fuse') sets.join(`${p.name}.1`, `${p.name}.2`);
    const metal = p.fields['returns-through'];
    if (metal !== undefined) {
      wire.join(`${p.name}.-`, text(metal));
      sets.join(`${p.name}.-`, text(metal));
    }
    const into = p.fields['plugged-into'];
    if (into === undefined) continue;
    for (const t of PINS) {
      sets.join(`${p.name}.${t}`, `${text(into)}.${t}`);
      wire.join(`${p.name}.${t}`, `${text(into)}.${t}`);
    }
  }
  const net = (part: string, t: string): number => sets.of(`${part}.${t}`);

  const inputs: Input[] = [];
  const closers: Closer[] = [];
  const relays: Relay[] = [];
  const sources: Source[] = [];
  const plugs: Plug[] = [];
  const c: Circuit = {
    nets: 0,
    inputs,
    closers,
    relays,
    sources,
    consumers: [],
    lamps: [],
    netOf: new Map(),
    plugs,
    resistors: [],
    diodes: [],
    gateNets: [],
    wireOnly: (key) => wire.of(key),
    metalBoxes: [],
    plugEarths: new Set(),
  };

  const plugShapes = new Set(all.filter((p) => p.kind === 'plug').map((p) => shapeOf(p, w, 'LN')));
  const usual = plugShapes.size === 1 ? [...plugShapes][0]! : 'LN';
  const shape = (p: Part): string => {
    const into = w.parts.get(text(p.fields['plugged-into']));
    return shapeOf(p, w, into ? shapeOf(into, w, usual) : usual);
  };

  for (const p of all) {
    const f = p.fields;
    const at = (t: string): number => net(p.name, t);
    const words = POSITIONS[p.kind];
    const drivenByRelay = ['relay', 'timer', 'board'].includes(p.kind);
    const input = inputs.length;
    const relay = relays.length;
    for (const k of p.contacts) {
      const owner = { input: drivenByRelay ? -1 : input, relay: drivenByRelay ? relay : -1 };
      const pressed = p.kind === 'gate' && text(f['pressed-when']) === 'shut' ? 0 : 1;
      if (k.no) closers.push({ a: at(k.com), b: at(k.no), ...owner, at: pressed });
      if (k.nc) closers.push({ a: at(k.com), b: at(k.nc), ...owner, at: 1 - pressed });
      if (p.kind === 'gate') c.gateNets.push(at(k.com), at(k.no || 'NO'), at(k.nc || 'NC'));
    }
    if (words) inputs.push({ name: p.name, kind: p.kind, words: [...words] });
    if (p.kind === 'selector') {
      const positions = listOf(f.positions).map(text);
      const rest = f.rest === undefined ? positions[0]! : text(f.rest);
      const order = [rest, ...positions.filter((x) => x !== rest)];
      order.forEach((x, i) => {
        if (x !== 'off') closers.push({ a: at('COM'), b: at(x), input, relay: -1, at: i });
      });
      inputs.push({ name: p.name, kind: 'selector', words: order });
    }
    if (drivenByRelay) addRelay(c, w, p, at);
    if (p.kind === 'supply' || p.kind === 'battery') addSource(c, w, p, at, shape, net);
    if (p.kind === 'diode' || p.kind === 'led') {
      const led = p.kind === 'led';
      const rated = figures(f.rated).V;
      const amps = figures(f.current).A ?? 0.02;
      const drop = led ? (figures(f.forward).V ?? 2) : 0.7;
      const ohm = led ? (rated ? Math.max((rated - drop) / amps, 10) : 10) : 1e-3;
      if (led) c.lamps.push({ name: p.name, a: at('A'), b: at('K'), volts: 0, diode: c.diodes.length });
      c.diodes.push({ name: p.name, a: at('A'), k: at('K'), drop, ohm, part: !led, led });
      const zener = figures(f.zener).V;
      if (zener) {
        c.diodes.push({
          name: p.name,
          a: at('K'),
          k: at('A'),
          drop: zener,
          ohm: 1e-3,
          part: false,
          led: false,
        });
      }
    }
    if (p.kind === 'resistor' || p.kind === 'lamp') {
      const q = figures(f.rated);
      const ohm =
        figures(f.resistance).ohm ??
        (q.V && q.W ? (q.V * q.V) / q.W : q.V ? q.V / (q.A ?? figures(f.current).A ?? 0.1) : 1000);
      if (p.kind === 'lamp')
        c.lamps.push({ name: p.name, a: at('1'), b: at('2'), volts: (q.V ?? 12) / 2, diode: -1 });
      c.resistors.push({ a: at('1'), b: at('2'), ohm: Math.max(ohm, 1e-3) });
    }
    if (p.kind === 'plug') {
      const s = shape(p);
      const pins = [...new Set([...NEEDS[s]!, 'N', 'PE'])];
      const known = PINS.filter((t) => pins.includes(t) || w.used.has(`${p.name}.${t}`));
      plugs.push({
        name: p.name,
        volts: figures(f.volts).V ?? 120,
        phases: s === 'LLL' ? 3 : s === 'LL' ? 2 : 1,
        pins: known.map((t) => [t, at(t)]),
      });
      c.plugEarths.add(wire.of(`${p.name}.PE`));
    }
    if (['outlet', 'motor', 'load'].includes(p.kind)) {
      const dc = /DC/.test(text(f.volts)) ? (figures(f.volts).V ?? 12) : 0;
      const needs = dc > 0 ? ['+', '-'] : NEEDS[shape(p)]!;
      if (dc > 0) {
        const drawn = figures(f.amps).A ?? (figures(f.power).W ?? 12) / dc;
        c.resistors.push({ a: at('+'), b: at('-'), ohm: dc / drawn });
      }
      const live: Record<string, number> = {};
      for (const t of ['L', 'N', 'L1', 'L2', 'L3']) {
        if (needs.includes(t) || w.used.has(`${p.name}.${t}`)) live[t] = at(t);
      }
      const bare = /II\b/.test(text(f.class)) || (p.kind === 'outlet' && UNEARTHED.test(text(f.pattern)));
      c.consumers.push({
        name: p.name,
        kind: p.kind,
        needs: needs.map(at),
        live,
        earthed: !bare && dc === 0,
        dc,
        amps: dc > 0 ? (figures(f.amps).A ?? (figures(f.power).W ?? 12) / dc) : 0,
      });
    }
    if (p.kind === 'box' && f.metal === true) c.metalBoxes.push(p.name);
  }
  for (const key of w.used) c.netOf.set(key, sets.of(key));
  compact(c, sets);
  return c;
}

function addRelay(c: Circuit, w: Wiring, p: Part, at: (t: string) => number): void {
  const f = p.fields;
  if (p.kind === 'board') {
    const rated = figures(f.supply).V ?? 5;
    const amps = figures(f['input-current']).A ?? 0.005;
    const r: Relay = {
      name: p.name,
      kind: p.kind,
      rated,
      ohm: rated / 0.01,
      pullIn: 0.75 * rated,
      dropOut: 0.1 * rated,
      polarised: true,
      plus: at('VCC'),
      minus: at('GND'),
      signal: at('IN'),
      t1: -1,
      t2: -1,
      activeLow: text(f.input) === 'low',
      signalOhm: rated / amps,
      threshold: limit(f.threshold, rated, 0.5),
    };
    c.relays.push(r);
    c.resistors.push({ a: r.plus, b: r.minus, ohm: r.ohm });
    c.resistors.push({
      a: r.activeLow ? r.plus : r.signal,
      b: r.activeLow ? r.signal : r.minus,
      ohm: r.signalOhm,
    });
    return;
  }
  const coil = isMap(f.coil) ? f.coil : {};
  const rated = figures(coil.rated).V ?? 12;
  const ac = isAc(coil.rated);
  const stated = f.polarised ?? coil.polarised;
  const flyback = !ac && text(coil.suppressor) === 'diode' && stated !== false;
  const timed = p.kind === 'timer' && ['T1', 'T2'].some((t) => w.used.has(`${p.name}.${t}`));
  const r: Relay = {
    name: p.name,
    kind: p.kind,
    rated,
    ohm: coilOhm(coil, rated, ac),
    pullIn: limit(coil['pull-in'], rated, ac ? 0.8 : 0.75),
    dropOut: limit(coil['drop-out'], rated, ac ? 0.3 : 0.1),
    polarised: stated === true || flyback,
    plus: at('A1'),
    minus: at('A2'),
    signal: -1,
    t1: timed ? at('T1') : -1,
    t2: timed ? at('T2') : -1,
    activeLow: false,
    signalOhm: 0,
    threshold: 0,
  };
  c.relays.push(r);
  c.resistors.push({ a: r.plus, b: r.minus, ohm: r.ohm });
  if (flyback) {
    c.diodes.push({ name: p.name, a: r.minus, k: r.plus, drop: 0.7, ohm: 1e-3, part: false, led: false });
  }
}

function addSource(
  c: Circuit,
  w: Wiring,
  p: Part,
  at: (t: string) => number,
  shape: (p: Part) => string,
  net: (part: string, t: string) => number,
): void {
  const ac = isAc(p.fields.output);
  const fed = text(p.fields['fed-from']);
  let feed: number[] = [];
  const taps = listOf(p.fields.taps).map((t) => String(figures(t).V));
  const wired = ['0', ...taps].filter((t) => w.used.has(`${p.name}.${t}`));
  let volts = figures(p.fields.output).V ?? 12;
  if (taps.length > 0 && wired.length > 1) {
    feed = [at(wired[0]!), at(wired.at(-1)!)];
    // a transformer passes on what it gets over the volts of the turns it is wired to
    const plug = [...w.parts.values()].find((x) => x.kind === 'plug');
    const gets = plug === undefined ? undefined : figures(plug.fields.volts).V;
    if (gets !== undefined) volts *= gets / (Number(wired.at(-1)) - Number(wired[0]));
  } else if (w.used.has(`${p.name}.L`) || w.used.has(`${p.name}.N`)) feed = [at('L'), at('N')];
  else if (fed !== '' && fed !== 'always-live') {
    const from = w.parts.get(keyOf(w.parts, fed).split('.')[0]!)!;
    feed = NEEDS[shape(from)]!.slice(0, 2).map((t) => net(from.name, t));
  }
  c.sources.push({
    name: p.name,
    plus: at(ac ? '~1' : '+'),
    minus: at(ac ? '~2' : '-'),
    volts,
    ac,
    feed,
    mains: (figures(p.fields.output).V ?? 12) > (ac ? 50 : 120),
  });
}

/** Renumbers set representatives to 0 .. nets-1. Net numbers taken before this are set members. */
function compact(c: Circuit, sets: Sets): void {
  const number = new Map<number, number>();
  const n = (old: number): number => {
    if (old < 0) return -1;
    let root = old;
    while (sets.up[root] !== root) root = sets.up[root]!;
    let k = number.get(root);
    if (k === undefined) {
      k = number.size;
      number.set(root, k);
    }
    return k;
  };
  for (const k of c.closers) Object.assign(k, { a: n(k.a), b: n(k.b) });
  for (const r of c.relays) {
    Object.assign(r, { plus: n(r.plus), minus: n(r.minus), signal: n(r.signal), t1: n(r.t1), t2: n(r.t2) });
  }
  for (const s of c.sources) Object.assign(s, { plus: n(s.plus), minus: n(s.minus), feed: s.feed.map(n) });
  for (const [key, old] of c.netOf) c.netOf.set(key, n(old));
  for (const l of c.lamps) Object.assign(l, { a: n(l.a), b: n(l.b) });
  for (const r of c.resistors) Object.assign(r, { a: n(r.a), b: n(r.b) });
  for (const d of c.diodes) Object.assign(d, { a: n(d.a), k: n(d.k) });
  for (const p of c.plugs) for (const pin of p.pins) pin[1] = n(pin[1]);
  for (const x of c.consumers) {
    x.needs = x.needs.map(n);
    for (const t of Object.keys(x.live)) x.live[t] = n(x.live[t]!);
  }
  c.gateNets = [...new Set(c.gateNets.map(n))];
  c.nets = number.size;
}
