/**
 * Mains rules for a mistaken plan, over all positions of all contacts, whether or not the plan ever gets there.
 * `brute.ts` judges the positions it does get to: polarity, switched conductors, earth.
 */
import { Machine } from '../brute-machine.ts';
import { figures, isMap, type Wiring } from '../brute-read.ts';
import { asked, readWants } from '../brute-want.ts';
import { type Graph, graphOf, reach } from './graph.ts';
import { type Sheet, withLink } from './sheet.ts';
import { PINS } from './terminals.ts';

/** What {@link unfused} leaves open. */
export const UNFUSED = 'battery without its fuse';

/** Mains on a gate or on a pole of a low-voltage source. */
function meets(g: Graph): string[] {
  const low = (key: string): boolean => g.gates.has(key) || g.sources.has(key);
  const out = new Set<string>();
  for (const pin of g.pins) {
    for (const key of reach(g, pin.key, true, low)) {
      if (g.sources.has(key)) out.add('mains-meets-low-voltage');
      if (g.gates.has(key)) out.add('mains-through-gate');
    }
  }
  return [...out];
}

/** Two conductors of one plug, or one and the earth, joined by wire and contacts alone. */
function shorted(g: Graph): string[] {
  for (const pin of g.pins) {
    const ends = new Set([...g.pins.map((p) => p.key), ...g.earths].filter((k) => k !== pin.key));
    for (const key of reach(g, pin.key, false, (k) => ends.has(k))) {
      if (!ends.has(key)) continue;
      return [pin.pin === 'N' && g.earths.includes(key) ? 'neutral-earthed' : 'mains-shorted'];
    }
  }
  return [];
}

/** Volts from a conductor of the plug to earth: half between two legs, a star's leg of three phases. */
const toEarth = (volts: number, phases: number): number => volts / (phases === 3 ? Math.sqrt(3) : phases);

/** A core whose insulation is printed for less than its conductor has to earth (IEC 60364-5-52; NEC 300.3(C)). */
export function insulation(s: Sheet, doc: unknown): string[] {
  const g = graphOf(s.wiring);
  const ratings = insulations(s, doc);
  const low = (key: string): boolean => g.gates.has(key) || g.sources.has(key);
  for (const pin of g.pins) {
    const met = reach(g, pin.key, false, low);
    const least = toEarth(pin.volts, pin.phases);
    const bad = s.cores.some((c, i) => {
      const rated = ratings[i];
      return rated !== undefined && rated < least && c.ends.some((e) => met.has(e.key));
    });
    if (bad) return ['insulation-too-low'];
  }
  return [];
}

/** With one side of the loop on earth: does one more touch to earth start a load with everything at rest? */
function touched(s: Sheet, g: Graph): string[] {
  const low = new Set([...g.gates, ...g.sources]);
  const earth = g.earths[0];
  if (earth === undefined) return [];
  const met = new Set(g.earths.flatMap((e) => [...reach(g, e, true, () => false)]));
  if (![...low].some((t) => met.has(t))) return [];
  const spots = new Set(s.ends.map((e) => e.key).filter((k) => met.has(k) && k !== earth));
  for (const spot of spots) {
    const m = new Machine(withLink(s, spot, earth));
    const rest = m.circuit.inputs.map(() => 0);
    const settled = m.settle(rest, 0);
    for (const want of readWants(m)) {
      if (asked(want, rest, false).should) continue;
      if (settled.ends.some((bits) => m.on(want.name, rest, bits))) return ['one-touch-starts'];
    }
  }
  return [];
}

/**
 * A battery whose fuse the loop goes round: nothing limits what a chafed wire takes. How grave that is turns on where
 * the wire lies, so it is left open.
 */
export function unfused(s: Sheet): string[] {
  const w = s.wiring;
  const g = graphOf(w);
  const own = [...w.parts.values()];
  const fused = own.some((p) => p.kind === 'fuse');
  const fuseEnd = (key: string): boolean => w.parts.get(key.split('.')[0]!)?.kind === 'fuse';
  for (const p of own) {
    if (p.kind !== 'battery' || !fused) continue;
    const far = reach(g, `${p.name}.+`, true, fuseEnd);
    if ([...far].some((key) => key === `${p.name}.-`)) return [UNFUSED];
  }
  return [];
}

/** Printed insulation of every core's cable, V; undefined for a jumper or where nothing is printed. */
function insulations(s: Sheet, doc: unknown): (number | undefined)[] {
  const top = isMap(doc) ? doc : {};
  const stock = isMap(top.stock) ? top.stock : {};
  const runs = Array.isArray(top.runs) ? top.runs : [];
  return s.cores.map((c) => {
    const run: unknown = runs[c.run];
    if (!isMap(run)) return undefined;
    const spec = isMap(run.cable) ? run.cable : stock[String(run.cable)];
    return isMap(spec) ? figures(spec.insulation).V : undefined;
  });
}

/** A load or outlet whose earth does not come by wire from the plug that feeds it. */
function otherEarth(w: Wiring, g: Graph): string[] {
  const wire = new Map<string, string[]>();
  const add = (a: string, b: string): void => {
    wire.set(a, [...(wire.get(a) ?? []), b]);
    wire.set(b, [...(wire.get(b) ?? []), a]);
  };
  for (const [a, b] of w.joins) add(a, b);
  const earths = new Set<string>();
  const walk = (key: string): void => {
    if (earths.has(key)) return;
    earths.add(key);
    for (const to of wire.get(key) ?? []) walk(to);
  };
  for (const plug of new Set(g.pins.map((p) => p.plug))) {
    earths.clear();
    walk(`${plug}.PE`);
    const fed = new Set(
      g.pins.filter((p) => p.plug === plug).flatMap((p) => [...reach(g, p.key, false, () => false)]),
    );
    for (const p of w.parts.values()) {
      const live = PINS.slice(0, -1).some((t) => fed.has(`${p.name}.${t}`));
      const earth = `${p.name}.PE`;
      if (p.kind === 'outlet' && live && w.used.has(earth) && !earths.has(earth)) return ['earth-broken'];
    }
  }
  return [];
}

/** What is wrong by the mains rules that the joins alone decide; empty when nothing is. */
export function netRules(s: Sheet): string[] {
  const g = graphOf(s.wiring);
  return [...meets(g), ...shorted(g), ...otherEarth(s.wiring, g), ...touched(s, g)];
}
