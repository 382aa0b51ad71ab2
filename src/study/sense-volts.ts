/** What one coil or input sees while everything in its island stands in one position, solved once each. */
import type { Sense } from '../circuit/circuit.ts';
import type { Figures, Island, Situation } from '../electric/island.ts';
import { PortSolver } from '../electric/ports.ts';
import { kept } from '../plan/map-entries.ts';
import type { Plan } from '../plan/plan.ts';
import { meets, type VoltsBetween, voltsIn } from './seen-volts.ts';
import { solveLimited } from './supply-limits.ts';

export interface Seen {
  readonly on: boolean;
  readonly off: boolean;
}

/** Where AC meets DC, or AC passes a diode, volts are not worked out, and what is joined has to do. */
export class NotWorkedOut extends Error {
  override readonly name = 'NotWorkedOut';
}

export class SenseVolts {
  readonly ac: boolean;
  private readonly known = new Map<string, Seen>();
  private readonly ports = new Map<string, PortSolver>();

  /**
   * `steady`: one source, which no position of the contacts shorts or asks for more than its limit. `spend` is told of
   * the nets of every island that is solved.
   */
  constructor(
    private readonly plan: Plan,
    private readonly figures: Figures,
    private readonly island: Island,
    private readonly sense: Extract<Sense, { by: 'volts' }>,
    private readonly steady: boolean,
    private readonly spend: (nets: number) => void,
  ) {
    this.ac = island.sources.some((s) => s.kind === 'ac');
  }

  at(situation: Situation): Seen {
    const { island } = this;
    const alive = island.sources.map((s) => Number(situation.alive(s))).join('');
    const armatures = this.ac ? island.passives.map((p) => Number(situation.pulledIn(p.part))).join('') : '';
    const contacts = island.contacts.map((c) => Number(situation.closed(c))).join('');
    return kept(this.known, `${contacts} ${alive} ${armatures}`, () =>
      meets(this.sense, this.solved(situation, `${alive} ${armatures}`)),
    );
  }

  private solved(situation: Situation, kind: string): VoltsBetween {
    const { island, figures, sense, plan } = this;
    if (!this.steady || (this.ac && island.diodes.length > 0)) {
      // A source that may be at its limit is solved several times.
      this.spend(this.steady ? island.count : 3 * island.count);
      const all = solveLimited(plan, island, figures, situation);
      if (all.notWorkedOut !== undefined) throw new NotWorkedOut(all.notWorkedOut);
      return voltsIn([all]);
    }
    // With all contacts that move open, each of them closed alone is a change of rank one.
    const solver = kept(this.ports, kind, () => {
      this.spend(island.count);
      const open = { ...situation, closed: ({ when }: Island['contacts'][number]) => when.by === 'always' };
      return new PortSolver(island, figures, open, [[sense.a, sense.b]]);
    });
    const moved = island.contacts.flatMap(({ when }) =>
      when.by === 'input' ? [`input ${when.input}`] : when.by === 'relay' ? [`relay ${when.relay}`] : [],
    );
    const before = solver.solved;
    const v = solver.volts(situation, [...new Set(moved)], true)[0]!;
    if (solver.solved > before) this.spend(island.count);
    return () => ({ size: Math.hypot(v.re, v.im), signed: v.re, ac: this.ac });
  }
}
