/** The piece that a coil lies in: what reaches the coil of the volts across the piece, by the gates that are open. */
import type { ContactEdge, Relay } from '../../circuit/circuit.ts';
import type { Figures } from '../../electric/island.ts';
import { close, PortMatrix } from '../../electric/port-matrix.ts';
import { RailBounds } from '../../electric/rail-bounds.ts';
import type { Piece } from './pieces.ts';

/** Share of the volts across a piece that reaches its coil, at least and at most. */
export interface Shares {
  readonly least: number;
  readonly most: number;
}

/**
 * Whichever other contacts of the piece are closed besides those in `closed`. Where nothing but the coil draws current
 * in it, more contacts can only raise what it gets (Rayleigh), and `undefined` is told: what is closed is the least.
 */
export function sharesOf(
  piece: Piece,
  figures: Figures,
  relay: Relay,
): ((closed: (c: ContactEdge) => boolean) => Shares) | undefined {
  const { island } = piece;
  const sense = relay.senses[0];
  const others = island.passives.length + island.diodes.filter((d) => !d.builtIn).length;
  if (others === 1 || sense?.by !== 'volts') return undefined;
  const at = island.local;
  const conductance = (re: number, im: number) => (re * re + im * im) / Math.max(re, 1e-9);
  const fixed = island.contacts.filter((c) => c.when.by === 'always');
  const moving = island.contacts.filter((c) => c.when.by !== 'always');
  const leds = island.diodes.filter((d) => d.load);
  const matrix = new PortMatrix({
    nodes: island.count,
    branches: [
      ...island.wires.map((w) => ({ a: at(w.a), b: at(w.b), re: figures.wire(w), im: 0 })),
      ...fixed.map((c) => ({ a: at(c.a), b: at(c.b), re: figures.contact(c), im: 0 })),
      ...island.passives.flatMap((p) => {
        const z = figures.passive(p, false);
        return z ? [{ a: at(p.a), b: at(p.b), re: conductance(z.re, z.im), im: 0 }] : [];
      }),
    ],
    source: { a: at(piece.ends[0]), b: at(piece.ends[1]), re: 1, im: 0, ohms: 0 },
    ports: [
      [at(sense.a), at(sense.b)],
      ...moving.map((c) => [at(c.a), at(c.b)] as const),
      ...leds.map((d) => [at(d.anode), at(d.cathode)] as const),
    ],
  });
  const [z, v] = [matrix.z, matrix.v];
  for (const [i, d] of leds.entries()) close(z, v, 1 + moving.length + i, 1 / figures.diode(d).ohms);
  const siemens = moving.map((c) => 1 / figures.contact(c));
  return (closed) => {
    const [here, volts] = [z.slice(), v.slice()];
    const left: { port: number; siemens: number }[] = [];
    moving.forEach((c, i) => {
      if (closed(c)) close(here, volts, 1 + i, siemens[i]!);
      else left.push({ port: 1 + i, siemens: siemens[i]! });
    });
    const { least, most } = new RailBounds(here, volts, 0, left).bounds();
    const sign = Math.sign(least + most);
    return sign >= 0 ? { least, most } : { least: -most, most: -least };
  };
}
