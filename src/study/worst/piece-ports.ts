/** What each piece is to the rails, and what of the volts across it reaches its coil; each way it can stand worked out once. */
import type { Relay } from '../../circuit/circuit.ts';
import type { Moved } from '../../logic/verify.ts';
import { kept } from '../../plan/map-entries.ts';
import { figuresFor } from '../corner-figures.ts';
import type { Electrics } from '../electrics.ts';
import type { Standing } from '../situations.ts';
import { sharesOf } from './own-piece.ts';
import type { OnePort, Piece } from './pieces.ts';
import type { Layout, RailModel } from './rail-model.ts';

export class PiecePorts {
  private readonly puts = new Map<string, OnePort | undefined>();
  private readonly known = new Map<string, ReturnType<typeof sharesOf>>();
  private readonly numbers: ReadonlyMap<Piece, number>;

  constructor(
    private readonly own: Electrics,
    layout: Layout,
  ) {
    this.numbers = new Map(layout.pieces.pieces.map((piece, i) => [piece, i]));
  }

  /** A piece as it stands; pieces whose contacts stand alike are worked out once. */
  as(model: RailModel, piece: Piece, { situation }: Standing, coil?: Relay): OnePort {
    const closed = piece.island.contacts.flatMap((c, i) => (situation.closed(c) ? [i] : []));
    const key = `${model.corner}/${this.numbers.get(piece)}/${coil?.index ?? ''}/${closed.join()}`;
    return kept(this.puts, key, () => model.put(piece, situation.closed, coil?.index))!;
  }

  /** A piece with no contacts closed but those that what is moved closes for certain: it draws no less. */
  least(model: RailModel, piece: Piece, moved: Moved): OnePort | undefined {
    const certain = piece.island.contacts.filter(
      ({ when }) => when.by === 'always' || (when.by === 'input' && when.value && moved.includes(when.input)),
    );
    const key = `${model.corner}/${this.numbers.get(piece)}/least/${certain.map((c) => c.part).join()}`;
    return kept(this.puts, key, () => model.put(piece, (c) => certain.includes(c)));
  }

  /** Share of the volts across its piece that a coil gets, at most, where it gets `gain` as the piece stands. */
  mostShare(model: RailModel, piece: Piece, coil: Relay, gain: number): number {
    const key = `${model.corner}/${this.numbers.get(piece)}/all`;
    const all = kept(this.puts, key, () => model.put(piece, () => true, coil.index));
    return Math.max(gain, all ? Math.hypot(all.gain.re, all.gain.im) : 1);
  }

  /** As `sharesOf`. */
  shares(model: RailModel, piece: Piece, coil: Relay): ReturnType<typeof sharesOf> {
    const { circuit, study } = this.own;
    return kept(this.known, `${model.corner}/${coil.index}`, () =>
      sharesOf(piece, figuresFor(study.plan, model.corner), circuit.relays[coil.index]!),
    );
  }
}
