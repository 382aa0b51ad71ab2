/** How long a gate's loop is, and how many ohms its wires and contacts have. */

import type { ContactEdge, DiodeEdge, Relay } from '../circuit/circuit.ts';
import type { Figures, Situation } from '../electric/island.ts';
import { kept } from '../plan/map-entries.ts';
import { coilImpedance } from './coil-models.ts';
import type { CoilRow } from './coil-rows.ts';
import type { CoilState } from './coil-states.ts';
import { figuresFor } from './corner-figures.ts';
import { coilNets, type Electrics } from './electrics.ts';
import { type Reach, walk } from './net-distances.ts';

export interface Loop {
  /** m of conductor there and back, the shortest way */
  readonly metres: number | undefined;
  /** ohm at 20 °C of everything between supply and coil; ways side by side count together */
  readonly ohms: number | undefined;
}

const walks = new WeakMap<Electrics, Map<number, Reach>>();

/** The loop from the supply's poles through the gate and the coil. */
export function loopOf(own: Electrics, state: CoilState, row: CoilRow): Loop {
  const relay = own.circuit.relays[state.relay.index]!;
  const nets = coilNets(relay)!;
  const source = own.circuit.sources[state.fed.source.index]!;
  const standing = own.situations.at(row.moved);
  const before = standing && own.situations.beforePullIn(standing, state.relay);
  if (!before) return { metres: undefined, ohms: undefined };
  const island = own.islandOf(relay)!;
  const closing = island.contacts.filter(
    (c) => before.situation.closed(c) !== own.situations.atRest.situation.closed(c),
  );
  const only = closing.length === 1 && before.situation.closed(closing[0]!) ? closing[0] : undefined;
  const rails = source.rails.map((r) => r.net);
  const way = only ? throughOne(own, nets, rails, only) : throughAny(own, before.situation, nets, rails);
  const alone = island.passives.length === 1 && island.diodes.every((d) => quenches(own, d, state.relay));
  return { metres: way?.metres, ohms: alone ? seenOhms(own, state, row.nominal) : way?.ohms };
}

/** A diode across the coil itself, which carries nothing while the coil is fed. */
function quenches(own: Electrics, diode: DiodeEdge, relay: Relay): boolean {
  const whole = own.study.circuit.diodes[own.circuit.diodes.indexOf(diode)]!;
  const sense = relay.senses[0];
  if (sense?.by !== 'volts' || diode.load) return false;
  return [whole.anode, whole.cathode].every((n) => n === sense.a || n === sense.b);
}

/** ohm that the row's loop would have with other figures for its wires. */
export function ohmsWith(own: Electrics, state: CoilState, row: CoilRow, figures: Figures): number {
  const standing = own.situations.at(row.moved);
  const before = standing && own.situations.beforePullIn(standing, state.relay);
  const volts = before ? own.coilVoltsWith(state.relay, before, figures) : 0;
  return seenOhms(own, state, volts);
}

/** With the coil the only load: its volts tell the ohms in line with it, ways side by side and all. */
function seenOhms(own: Electrics, state: CoilState, volts: number): number {
  const z = coilImpedance(own.study.plan, state.fed.part, 'nominal', false)!;
  const { scale, ohms } = figuresFor(own.study.plan, 'nominal').source(state.fed.source);
  const rails = state.fed.source.rails;
  const e = scale * Math.hypot(rails[0]!.re - rails[1]!.re, rails[0]!.im - rails[1]!.im);
  // |Z + R| = |Z|·E/V for the resistance R in line with the coil.
  const total = (Math.hypot(z.re, z.im) * e) / volts;
  return Math.max(0, Math.sqrt(Math.max(0, total * total - z.im * z.im)) - z.re - ohms);
}

/** One contact closes the loop: distances to both its ends are walked once for all gates. */
function throughOne(
  own: Electrics,
  coil: readonly [number, number],
  rails: readonly number[],
  c: ContactEdge,
) {
  let best: { metres: number; ohms: number } | undefined;
  const ohms = figuresFor(own.study.plan, 'nominal').contact(c);
  const from = (net: number) => walked(own, net);
  for (const [x, y] of [coil, [coil[1], coil[0]] as const])
    for (const [p, q] of [
      [rails[0]!, rails[1]!],
      [rails[1]!, rails[0]!],
    ] as const)
      for (const [s, t] of [
        [c.a, c.b],
        [c.b, c.a],
      ] as const) {
        const parts = [
          [from(x), s],
          [from(p), t],
          [from(y), q],
        ] as const;
        const metres = parts.reduce((sum, [r, n]) => sum + r.metres[n]!, 0);
        if (!Number.isFinite(metres) || (best && best.metres <= metres)) continue;
        best = { metres, ohms: parts.reduce((sum, [r, n]) => sum + r.ohms[n]!, ohms) };
      }
  return best;
}

function throughAny(
  own: Electrics,
  situation: Situation,
  coil: readonly [number, number],
  rails: readonly number[],
) {
  const figures = figuresFor(own.study.plan, 'nominal');
  const plus = walk(own.circuit, figures, situation, rails[0]!);
  const minus = walk(own.circuit, figures, situation, rails[1]!);
  const ways = [
    [plus, coil[0], minus, coil[1]],
    [plus, coil[1], minus, coil[0]],
  ] as const;
  let best: { metres: number; ohms: number } | undefined;
  for (const [r, a, s, b] of ways) {
    const metres = r.metres[a]! + s.metres[b]!;
    if (Number.isFinite(metres) && (!best || metres < best.metres))
      best = { metres, ohms: r.ohms[a]! + s.ohms[b]! };
  }
  return best;
}

function walked(own: Electrics, net: number): Reach {
  const known = kept(walks, own, () => new Map<number, Reach>());
  const { situation } = own.situations.atRest;
  return kept(known, net, () => walk(own.circuit, figuresFor(own.study.plan, 'nominal'), situation, net));
}
