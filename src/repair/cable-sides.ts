/** Which cables are of the mains and which of the loop, as the plan has them. */
import type { UnionFind } from '../circuit/union-find.ts';
import type { Plan } from '../plan/plan.ts';
import { partOfKey, splitTerminalKey } from '../plan/terminal-key.ts';
import { joinedBy } from './fuse-reach.ts';
import { kindOf } from './kinds.ts';
import type { Cores, NumberedCircuit } from './numbered-circuit.ts';

export class CableSides {
  private readonly joined: UnionFind;
  private readonly poles: readonly number[];
  private readonly low: readonly number[];
  /** the mistake joins the sides, so that where a terminal lies says nothing */
  private readonly areJoined: boolean;

  constructor(
    private readonly plan: Plan,
    private readonly circuit: NumberedCircuit,
  ) {
    this.joined = joinedBy(circuit, circuit.cores);
    for (const c of circuit.contacts) this.joined.union(c.a, c.b);
    this.poles = circuit.poles(true);
    this.low = circuit.poles(false);
    this.areJoined = this.poles.some((p) => this.low.some((q) => this.joined.joined(p, q)));
  }

  /** Whether most ends of a run are on the mains, or on earth; of one that begins there and leads nowhere as well. */
  isMains(run: number): boolean {
    const ends = this.circuit.cores[run]?.flat() ?? [];
    const mains = ends.filter((t) => this.onMains(t)).length;
    const isLow = (t: number) => this.low.some((p) => this.joined.joined(p, t));
    return mains * 2 > ends.length || (mains > 0 && mains * 2 === ends.length && !ends.some(isLow));
  }

  /** Whether a run that was of one side lies wholly on the other after a change, where the sides are apart now. */
  changes(run: number, cores: Cores): boolean {
    const { link } = this.plan.runs[run]!;
    if (link || this.areJoined) return false;
    const ends = cores[run]!.flat();
    const before = this.circuit.cores[run]!.flat();
    // One with as many ends on either side tells nothing of what it is.
    if (before.filter((t) => this.onMains(t)).length * 2 === before.length) return false;
    const isMains = this.isMains(run);
    return ends.every((t) => this.onMains(t) !== isMains);
  }

  /** Whether a core between two terminals would be a mains core. */
  joinsMains(from: string, to: string): boolean {
    return [from, to].some((name) => {
      const t = this.circuit.terminal(name);
      return t !== undefined && this.onMains(t);
    });
  }

  private onMains(terminal: number): boolean {
    const name = this.circuit.names[terminal]!;
    const { terminal: mark } = splitTerminalKey(name);
    const part = this.plan.parts.get(partOfKey(name));
    const own = mark === 'PE' ? 'mains' : part === undefined ? 'either' : kindOf(part).side(mark);
    if (own !== 'either') return own === 'mains';
    return this.poles.some((p) => this.joined.joined(p, terminal));
  }
}
