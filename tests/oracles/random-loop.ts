/**
 * Random plans of gate loops as plan text (format 1): up to seven gates in chain, star, ring or mixed
 * order, one or two relay coils, and now and then a fuse, cut-out, stop, indicator or suppressor diode.
 */
import fc from 'fast-check';
import * as part from './random-loop-parts.ts';
import { oneOf, type SourceKind, whole } from './random-loop-parts.ts';
import { type Draw, type Gate, planText, type Way } from './random-loop-text.ts';

export interface LoopOptions {
  /** most gates in a loop; default 7 */
  gates?: number;
  /** kinds of source; default all four */
  sources?: readonly SourceKind[];
}

const SOURCES: readonly SourceKind[] = ['regulated', 'unregulated', 'battery', 'transformer'];
const CABLES = 3;
/** Most hops between parts: two for each shared gate, and those of feed, coils and indicator. */
const hopsFor = (gates: number): number => 2 * gates + 14;

const way = (length: fc.Arbitrary<string>, link: fc.Arbitrary<boolean>): fc.Arbitrary<Way> =>
  fc.record({ cable: whole(1, CABLES), length, link });

// Mostly short, so that most loops pull in; the long ones are there to fail.
const gateLength = fc.oneof(
  { weight: 4, arbitrary: part.length(15) },
  { weight: 1, arbitrary: part.length(120) },
);

const gate: fc.Arbitrary<Gate> = fc.record({
  shut: fc.boolean(),
  contact: part.contact,
  feeds: oneOf('K1', 'K2', 'both'),
  parent: fc.double({ min: 0, max: 0.999, noNaN: true }),
  way: way(gateLength, fc.constant(false)),
});

/** Keeps a draw to what the format and the trade allow: diodes and indicators on DC, every coil with a gate. */
function settled(d: Draw, relays: number, ac: boolean): Draw {
  const gates = d.gates.map((g, i): Gate => {
    if (relays === 1) return { ...g, feeds: 'K1' };
    const first = i === 0 ? 'K1' : i === 1 ? 'K2' : g.feeds;
    return { ...g, feeds: ac && first === 'both' ? 'K1' : first };
  });
  const indicator = ac && d.indicator !== 'none' ? 'lamp' : d.indicator;
  return { ...d, gates, indicator, diode: ac ? 'none' : d.diode };
}

/** Plan texts of loops, all valid; most of their gates pull their coil in, some are too far away. */
export function randomLoop(options: LoopOptions = {}): fc.Arbitrary<string> {
  const most = options.gates ?? 7;
  const shared = fc.record({
    kind: oneOf(...(options.sources ?? SOURCES)),
    relays: most > 1 ? oneOf<1 | 2>(1, 1, 2) : fc.constant<1 | 2>(1),
    diode: oneOf<Draw['diode']>('none', 'beside', 'inside'),
    volts: oneOf(9, 12, 24),
  });
  return shared.chain(({ kind, relays, diode, volts }) => {
    const ac = kind === 'transformer';
    const coil = part.relay(ac, volts, diode === 'inside');
    return fc
      .record<Draw>({
        kind: fc.constant(kind),
        source: part.source(kind, volts),
        practice: oneOf('nec', 'iec'),
        ambient: fc.option(whole(15, 50)),
        cables: fc.array(part.cable, { minLength: CABLES, maxLength: CABLES }),
        gates: fc.array(gate, { minLength: relays, maxLength: most }),
        relays: fc.array(coil, { minLength: relays, maxLength: relays }),
        shape: oneOf('chain', 'star', 'ring', 'mixed'),
        closing: way(gateLength, fc.constant(false)),
        fuse: fc.boolean(),
        cutout: oneOf('none', 'none', 'numbers', 'tabs'),
        stop: oneOf('none', 'none', 'button', 'switch'),
        indicator: oneOf('none', 'none', 'lamp', 'led', 'led and resistor'),
        lamp: part.lamp(ac, volts),
        led: part.led,
        resistor: part.resistor,
        diode: fc.constant(diode),
        inLine: fc.tuple(part.contact, part.contact),
        hops: fc.array(way(part.length(10), oneOf(true, false)), {
          minLength: hopsFor(most),
          maxLength: hopsFor(most),
        }),
      })
      .map((d) => planText(settled(d, relays, ac)));
  });
}
