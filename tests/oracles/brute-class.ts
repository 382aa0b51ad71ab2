/** What one pattern of joined nets does: volts at every coil, what runs, and what is wrong with it. */
import type { Circuit, Relay } from './brute-circuit.ts';
import { type AcSource, type Ohms, type OneWay, potentials, type Volts } from './brute-volts.ts';

export interface Solved {
  /** per relay: 1 pulls in, 0 keeps what it has, -1 lets go */
  next: number[];
  running: boolean[];
  /** per consumer: a working terminal is on a line conductor */
  hot: boolean[];
  symptoms: string[];
  ledForward: string[];
  ledReversed: string[];
  /** lamps and leds that give light */
  lit: string[];
  /** V (RMS for AC, else signed) between two nets */
  between: (a: number, b: number) => number;
}

interface Pin {
  plug: number;
  pin: string;
}

const SHORT_AMPS = 20;
const OHM_SOURCE = 0.01;
const NEAR = 2e-3;

/** Nets whose joining decides the class; the order is the order of the memo key. */
export function keyNets(c: Circuit): number[] {
  const all = [
    ...c.relays.flatMap((r) => [r.plus, r.minus, r.signal, r.t1, r.t2]),
    ...c.sources.flatMap((s) => [s.plus, s.minus, ...s.feed]),
    ...c.resistors.flatMap((r) => [r.a, r.b]),
    ...c.diodes.flatMap((d) => [d.a, d.k]),
    ...c.plugs.flatMap((p) => p.pins.map((x) => x[1])),
    ...c.consumers.flatMap((x) => [...x.needs, ...Object.values(x.live)]),
    ...c.lamps.flatMap((x) => [x.a, x.b]),
    ...c.netOf.values(),
  ];
  return [...new Set(all)].filter((x) => x >= 0);
}

/** `label[net]` numbers the joined groups 0 .. count-1; `dead` are supplies held dead. */
export function solveClass(c: Circuit, label: ArrayLike<number>, count: number, dead: number): Solved {
  const at = (net: number): number => label[net]!;
  const pins: Pin[][] = Array.from({ length: count }, () => []);
  c.plugs.forEach((p, plug) => {
    for (const [pin, net] of p.pins) pins[at(net)]!.push({ plug, pin });
  });
  const bad = new Set<string>();
  mainsFaults(c, at, pins, bad);

  const reach = (nets: number[], strict: boolean): boolean => fed(nets.map(at), pins, c.plugs.length, strict);
  const off = c.sources.map((s, i) => {
    if (at(s.plus) === at(s.minus)) {
      bad.add('supply-shorted');
      return true;
    }
    return ((dead >> i) & 1) === 1 || (s.feed.length > 0 && !reach(s.feed, false));
  });
  // a supply whose mains side hangs on another supply lives as long as that one does
  for (let round = 0; round < c.sources.length; round++)
    c.sources.forEach((s, i) => {
      if (!off[i] || s.feed.length === 0 || ((dead >> i) & 1) === 1 || at(s.plus) === at(s.minus)) return;
      const ends = s.feed.map(at);
      off[i] = !c.sources.some((x, k) => {
        const [p, m] = [at(x.plus), at(x.minus)];
        return !off[k] && k !== i && ends[0] !== ends[1] && ends.every((e) => e === p || e === m);
      });
    });
  // what DC loads are made to draw is no short
  const drawn = c.consumers.reduce((sum, x) => sum + 2 * x.amps, 0);
  const ledForward: string[] = [];
  const ledReversed: string[] = [];
  let v: Volts;
  for (let first = true; ; first = false) {
    v = solveOnce(c, at, count, off);
    if (first) electricFaults(c, at, v, bad, ledForward, ledReversed);
    const shorted = c.sources.map((_, i) => !off[i] && current(c, i, at, v, off) >= SHORT_AMPS + drawn);
    shorted.forEach((is, i) => {
      if (!is) return;
      off[i] = true;
      bad.add('supply-shorted');
    });
    if (!shorted.includes(true)) break;
  }
  const hot = c.consumers.map((x) =>
    Object.values(x.live).some((net) => pins[at(net)]!.some((p) => p.pin !== 'N' && p.pin !== 'PE')),
  );
  return {
    next: c.relays.map((r) => pull(r, at, v)),
    running: c.consumers.map((x) =>
      x.dc > 0
        ? Math.abs(across(v, at(x.needs[0]!), at(x.needs[1]!)).dc) >= 0.7 * x.dc
        : reach(x.needs, x.live.L === undefined) || onSecondary(c, x.needs.map(at), at, off),
    ),
    lit: c.lamps
      .filter((l) => {
        if (l.diode >= 0) return v.flow[l.diode]! >= 2e-3;
        const u = across(v, at(l.a), at(l.b));
        return Math.hypot(u.dc, u.ac) >= l.volts;
      })
      .map((l) => l.name),
    between: (a, b) => {
      const u = across(v, at(a), at(b));
      return u.ac > 1e-6 ? u.ac : u.dc;
    },
    hot,
    symptoms: [...bad],
    ledForward,
    ledReversed,
  };
}

/** Both ends of a load on the two poles of a supply at mains volts that is on. */
function onSecondary(c: Circuit, ends: number[], at: (net: number) => number, off: boolean[]): boolean {
  return c.sources.some((s, i) => {
    const [p, m] = [at(s.plus), at(s.minus)];
    return s.mains && !off[i] && ends.length === 2 && ends.includes(p) && ends.includes(m);
  });
}

/** Every group is a different live conductor of one plug. `strict`: made for line to line, so no line to N. */
function fed(groups: number[], pins: Pin[][], plugs: number, strict: boolean): boolean {
  if (new Set(groups).size < groups.length) return false;
  const lines = groups.length === 3;
  for (let plug = 0; plug < plugs; plug++) {
    const choices = groups.map((g) =>
      pins[g]!.filter((p) => p.plug === plug && p.pin !== 'PE' && !(lines && p.pin === 'N')).map(
        (p) => p.pin,
      ),
    );
    if (choices.some((x) => x.length === 0)) continue;
    const found = distinct(choices, []).some((x) => !(strict && x.includes('N') && !x.includes('L')));
    if (found) return true;
  }
  return false;
}

function distinct(choices: string[][], taken: string[]): string[][] {
  if (taken.length === choices.length) return [taken];
  return choices[taken.length]!.filter((x) => !taken.includes(x)).flatMap((x) =>
    distinct(choices, [...taken, x]),
  );
}

function mainsFaults(c: Circuit, at: (net: number) => number, pins: Pin[][], bad: Set<string>): void {
  for (const group of pins) {
    const names = new Set(group.map((p) => p.pin));
    if (names.has('N') && names.has('PE')) bad.add('neutral-earthed');
    const lines = [...names].filter((x) => x !== 'N' && x !== 'PE');
    if (lines.length > 1 || (lines.length === 1 && names.size > 1)) bad.add('mains-shorted');
  }
  const has = (net: number, ...want: string[]): boolean => pins[at(net)]!.some((p) => want.includes(p.pin));
  const LINE = ['L', 'L1', 'L2', 'L3'];
  for (const x of c.consumers) {
    const { L, N } = x.live;
    if (L !== undefined && has(L, 'N') && !has(L, ...LINE)) bad.add('line-neutral-swapped');
    const line = L === undefined ? LINE : ['L'];
    if (N !== undefined && has(N, ...line) && !has(N, 'N')) bad.add('line-neutral-swapped');
    for (const [t, net] of Object.entries(x.live)) {
      if (t !== 'L' && t !== 'N' && has(net, 'N') && !has(net, ...LINE)) {
        // a two-leg machine on an L N plug is fed by both; only a real leg pair makes N wrong here
        if (c.plugs.some((p) => p.phases > 1)) bad.add('line-neutral-swapped');
      }
      if (has(net, 'PE') && !has(net, 'N')) bad.add('earth-as-return');
    }
  }
  for (const r of c.resistors) {
    for (const [e, l] of [
      [r.a, r.b],
      [r.b, r.a],
    ] as const) {
      if (at(e) !== at(l) && has(e, 'PE') && !has(e, 'N') && has(l, ...LINE)) bad.add('earth-as-return');
    }
  }
  // through coils, resistors, diodes and the loads' own windings as well as by wire
  const up = pins.map((_, i) => i);
  const root = (i: number): number => {
    let k = i;
    while (up[k] !== k) k = up[k]!;
    return k;
  };
  for (const r of c.resistors) up[root(at(r.a))] = root(at(r.b));
  for (const d of c.diodes) up[root(at(d.a))] = root(at(d.k));
  for (const x of c.consumers) {
    if (x.kind === 'outlet') continue;
    for (const net of x.needs) up[root(at(net))] = root(at(x.needs[0]!));
  }
  const mains = new Set<number>();
  pins.forEach((g, i) => {
    if (g.some((p) => p.pin !== 'PE')) mains.add(root(i));
  });
  for (const s of c.sources) if (s.mains) mains.add(root(at(s.plus))).add(root(at(s.minus)));
  for (const s of c.sources) {
    if (s.mains) continue;
    if (mains.has(root(at(s.plus))) || mains.has(root(at(s.minus)))) bad.add('mains-meets-low-voltage');
  }
}

function solveOnce(c: Circuit, at: (net: number) => number, count: number, off: boolean[]): Volts {
  const ohms: Ohms[] = c.resistors.map((r) => ({ a: at(r.a), b: at(r.b), ohm: r.ohm }));
  const ways: OneWay[] = c.diodes.map((d) => ({ p: at(d.a), n: at(d.k), drop: d.drop, ohm: d.ohm }));
  const ac: AcSource[] = [];
  c.sources.forEach((s, i) => {
    if (off[i]) return;
    const [a, b] = [at(s.plus), at(s.minus)];
    if (s.ac) ac.push({ a, b, re: s.volts, im: 0, ohm: OHM_SOURCE });
    else ways.push({ p: b, n: a, drop: -s.volts, ohm: OHM_SOURCE });
  });
  for (const p of c.plugs) {
    for (const [pin, net] of p.pins) {
      const k = pin === 'L2' ? 1 : pin === 'L3' ? 2 : 0;
      const size = pin === 'N' || pin === 'PE' ? 0 : p.volts / (p.phases === 3 ? Math.sqrt(3) : p.phases);
      const turn = (k * 2 * Math.PI) / (p.phases === 3 ? 3 : 2);
      ac.push({ a: at(net), b: -1, re: size * Math.cos(turn), im: size * Math.sin(turn), ohm: OHM_SOURCE });
    }
  }
  return potentials(count, ohms, ways, ac);
}

/** Amps a live supply gives. */
function current(c: Circuit, i: number, at: (net: number) => number, v: Volts, off: boolean[]): number {
  const s = c.sources[i]!;
  const [a, b] = [at(s.plus), at(s.minus)];
  if (s.ac) return Math.hypot(v.re[a]! - v.re[b]! - s.volts, v.im[a]! - v.im[b]!) / OHM_SOURCE;
  let k = c.diodes.length;
  for (let j = 0; j < i; j++) if (!off[j] && !c.sources[j]!.ac) k++;
  return v.flow[k]!;
}

function across(v: Volts, a: number, b: number): { dc: number; ac: number } {
  return { dc: v.dc[a]! - v.dc[b]!, ac: Math.hypot(v.re[a]! - v.re[b]!, v.im[a]! - v.im[b]!) };
}

function electricFaults(
  c: Circuit,
  at: (net: number) => number,
  v: Volts,
  bad: Set<string>,
  ledForward: string[],
  ledReversed: string[],
): void {
  for (const r of c.relays) {
    if (r.kind !== 'board' && at(r.plus) === at(r.minus)) bad.add('coil-shorted');
    const u = across(v, at(r.plus), at(r.minus));
    if (r.polarised && u.dc < -0.3 && u.ac < 0.1) bad.add('reversed');
  }
  const pairs = [...c.relays, ...c.sources].map((x) => [at(x.plus), at(x.minus)] as const);
  c.diodes.forEach((d, i) => {
    const [a, k] = [at(d.a), at(d.k)];
    if (d.led && v.flow[i]! > 1e-4) ledForward.push(d.name);
    if (d.led && v.dc[a]! - v.dc[k]! < -1) ledReversed.push(d.name);
    if (!d.part || v.flow[i]! < 1e-3) return;
    if (pairs.some(([p, m]) => p !== m && ((p === a && m === k) || (p === k && m === a)))) {
      bad.add('diode-conducts');
    }
  });
}

/** 1 pulls in, 0 between drop-out and pull-in, -1 lets go. */
function pull(r: Relay, at: (net: number) => number, v: Volts): number {
  const [a, b] = [at(r.plus), at(r.minus)];
  const u = across(v, a, b);
  const volts = r.polarised && u.ac < 0.1 ? u.dc : Math.hypot(u.dc, u.ac);
  if (r.t1 >= 0 && r.t2 >= 0 && at(r.t1) !== at(r.t2)) return -1;
  if (r.kind === 'board') {
    const level = across(v, at(r.signal), b).dc;
    const asked = r.activeLow ? level <= r.threshold + NEAR : level >= r.threshold - NEAR;
    if (!asked) return -1;
  }
  if (volts >= r.pullIn * (1 - NEAR)) return 1;
  return volts > r.dropOut ? 0 : -1;
}
