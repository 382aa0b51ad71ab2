/** How long a gate's loop is, and how many ohms its wires and contacts have. */

import type { ContactEdge, DiodeEdge, Relay } from '../circuit/circuit.ts';
import { difference } from '../circuit/rail-volts.ts';
import type { Figures } from '../electric/island.ts';
import { kept } from '../plan/map-entries.ts';
import { coilImpedance } from './coil-models.ts';
import type { CoilRow } from './coil-row.ts';
import type { CoilState } from './coil-states.ts';
import { figuresFor } from './corner-figures.ts';
import { coilNets, type Electrics } from './electrics.ts';
import { type Reach, type Steps, stepsOf, walk } from './net-distances.ts';
import type { Standing } from './situations.ts';

export interface Loop {
  /** m of conductor there and back, the shortest way */
  readonly metres: number | undefined;
  /** ohm at 20 °C of everything between supply and coil; ways side by side count together */
  readonly ohms: number | undefined;
}

/** Ways as printed, and the walks over them with the relays as they stand; of one such position at a time. */
interface Walks {
  readonly steps: Steps;
  position: string;
  reached: Map<number, Reach>;
}

const walks = new WeakMap<Electrics, Walks>();

/** The loop from the supply's poles through the gate and the coil. */
export function loopOf(own: Electrics, state: CoilState, row: CoilRow): Loop {
  const standing = own.situations.at(row.moved);
  const before = standing && own.situations.beforePullIn(standing, state.relay);
  return before
    ? pathOf(own, state, before, { volts: row.nominal, figures: undefined })
    : { metres: undefined, ohms: undefined };
}

/** What the coil gets, and by which figures; those as printed where none are given. */
interface Seen {
  readonly volts: number;
  readonly figures: Figures | undefined;
}

function pathOf(own: Electrics, state: CoilState, before: Standing, { volts, figures }: Seen): Loop {
  const relay = own.circuit.relays[state.relay.index]!;
  const nets = coilNets(relay)!;
  const source = own.circuit.sources[state.fed.source.index]!;
  const island = own.islandOf(relay)!;
  const { atRest } = own.situations;
  const closing = island.contacts.filter((c) => before.situation.closed(c) !== atRest.situation.closed(c));
  const moved = closing.filter((c) => c.when.by === 'input');
  const only = moved.length === 1 && before.situation.closed(moved[0]!) ? moved[0] : undefined;
  const rails = source.rails.map((r) => r.net);
  const from = walker(own, before, only, figures);
  const through = only && throughOne(own, from, nets, rails, only);
  // Where relays have moved as well, the loop need not pass the gate.
  const open = only && closing.length === 1 ? undefined : throughAny(from, nets, rails);
  const way = open && (!through || open.metres <= through.metres) ? open : through;
  const alone = island.passives.length === 1 && island.diodes.every((d) => quenches(own, d, state.relay));
  return { metres: way?.metres, ohms: alone ? seenOhms(own, state, volts) : way?.ohms };
}

/** A diode across the coil itself, which carries nothing while the coil is fed. */
function quenches(own: Electrics, diode: DiodeEdge, relay: Relay): boolean {
  const whole = own.study.circuit.diodes[own.circuit.diodes.indexOf(diode)]!;
  const sense = relay.senses[0];
  if (sense?.by !== 'volts' || diode.load) return false;
  return [whole.anode, whole.cathode].every((n) => n === sense.a || n === sense.b);
}

/** The loop's ohms and the coil's volts (V) as printed, if its wires had other figures; undefined where no loop is found. */
export function loopWith(
  own: Electrics,
  state: CoilState,
  row: CoilRow,
  figures: Figures,
): { readonly ohms: number; readonly volts: number } | undefined {
  const standing = own.situations.at(row.moved);
  const before = standing && own.situations.beforePullIn(standing, state.relay);
  if (!before) return undefined;
  const volts = own.coilVoltsWith(state.relay, before, figures);
  const { ohms } = pathOf(own, state, before, { volts, figures });
  return ohms === undefined ? undefined : { ohms, volts };
}

/** With the coil the only load: its volts tell the ohms in line with it, ways side by side and all. */
function seenOhms(own: Electrics, state: CoilState, volts: number): number {
  const z = coilImpedance(own.study.plan, state.fed.part, 'nominal', false)!;
  const { scale, ohms } = figuresFor(own.study.plan, 'nominal').source(state.fed.source);
  const rails = state.fed.source.rails;
  const e = scale * difference(rails[0]!, rails[1]!);
  // |Z + R| = |Z|·E/V for the resistance R in line with the coil.
  const total = (Math.hypot(z.re, z.im) * e) / volts;
  return Math.max(0, Math.sqrt(Math.max(0, total * total - z.im * z.im)) - z.re - ohms);
}

type Walker = (net: number) => Reach;

/** Walks with everything as it stands but one contact, which is open; those as printed are kept for the next gate. */
function walker(
  own: Electrics,
  at: Standing,
  open: ContactEdge | undefined,
  given: Figures | undefined,
): Walker {
  const closed = (c: ContactEdge) => c !== open && at.situation.closed(c);
  if (given) {
    const steps = stepsOf(own.circuit, given);
    const fresh = new Map<number, Reach>();
    return (net) => kept(fresh, net, () => walk(steps, closed, net));
  }
  const known = kept(walks, own, () => ({
    steps: stepsOf(own.circuit, figuresFor(own.study.plan, 'nominal')),
    position: '',
    reached: new Map<number, Reach>(),
  }));
  const others =
    open?.when.by === 'input'
      ? at.moved.filter((i) => i !== (open.when as { input: number }).input)
      : at.moved;
  const position = `${others.join()}/${at.relays.map((on) => (on ? '1' : '0')).join('')}`;
  if (known.position !== position) {
    known.position = position;
    known.reached = new Map();
  }
  return (net) => kept(known.reached, net, () => walk(known.steps, closed, net));
}

/** One contact closes the loop: distances to both its ends are walked once for all gates. */
function throughOne(
  own: Electrics,
  from: Walker,
  coil: readonly [number, number],
  rails: readonly number[],
  c: ContactEdge,
) {
  let best: { metres: number; ohms: number } | undefined;
  const ohms = figuresFor(own.study.plan, 'nominal').contact(c);
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

function throughAny(from: Walker, coil: readonly [number, number], rails: readonly number[]) {
  const [plus, minus] = [from(rails[0]!), from(rails[1]!)];
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
