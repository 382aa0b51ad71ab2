/**
 * Whether a core that is put elsewhere, or two that touch, can change anything while all stands in one position of the right
 * circuit: not where what is taken off hung at one net, and what is joined hangs there as well. Asked of the whole circuit
 * once a position (`near/hanging.ts`), so that no circuit has to be built for it.
 */
import { kept } from '../../plan/map-entries.ts';
import { terminalKey } from '../../plan/terminal-key.ts';
import type { Fault } from '../fault.ts';
import type { Reads } from '../near/near-cut.ts';
import type { Stance } from '../stance.ts';
import type { Subjects } from '../subject.ts';

/** Positions that are kept at hand. */
const KEPT = 64;

/** A fault by numbers of links and nets. */
interface Rewired {
  readonly out: readonly number[];
  readonly into: readonly (readonly [number, number])[];
}

export class Hung {
  private readonly reads = new Map<string, Reads>();
  private readonly rewired = new Map<Fault, Rewired | undefined>();
  /** the terminals at which it shows what runs, and the earth at which a line opens its breaker */
  private readonly seenAt: readonly string[];

  constructor(private readonly subjects: Subjects) {
    const { consumers, sources } = subjects.around.circuit;
    this.seenAt = [
      ...consumers.flatMap((c) => [...c.nets.keys()].map((t) => terminalKey(c.part, t))),
      ...sources.map((s) => terminalKey(s.part, 'PE')),
    ];
  }

  /** True where a fault surely changes nothing in a position; false where it may. */
  spares(fault: Fault, { key, moved, first }: Stance): boolean {
    const change = kept(this.rewired, fault, () => this.change(fault));
    if (change === undefined) return false;
    if (this.reads.size >= KEPT && !this.reads.has(key)) this.reads.clear();
    const reads = kept(this.reads, key, () =>
      this.subjects.around.reads(this.seenAt, new Set([...moved, ...first]), false),
    );
    return !reads.rewired(change.out, change.into);
  }

  /** undefined for a fault that does anything else than to put cores elsewhere or to join terminals. */
  private change(fault: Fault): Rewired | undefined {
    const { change, moved } = fault;
    if (change === undefined || !this.subjects.isNear(fault)) return undefined;
    if (moved === undefined && change.parted.length > 0) return undefined;
    const { around } = this.subjects;
    const into = change.joined.map((ends) => around.nets(ends));
    if (into.some((ends) => ends.length !== 2)) return undefined;
    const out = around.cores(moved ?? []);
    if (out.length !== (moved ?? []).length) return undefined;
    return { out, into: into.map(([a, b]) => [a!, b!] as const) };
  }
}
