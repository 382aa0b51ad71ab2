/** Terminals that lack an end, against their twins and against what their part needs. */

import { push } from '../plan/map-entries.ts';
import type { Part } from '../plan/part-types.ts';
import { splitTerminalKey, terminalKey } from '../plan/terminal-key.ts';
import { kindOf } from './kinds.ts';
import type { Cores, NumberedCircuit } from './numbered-circuit.ts';

export class MissingEnds {
  /** ends on every terminal */
  readonly landed: Int32Array;
  private readonly usual: ReadonlyMap<string, number>;
  /** the other ends of the contacts at a terminal, and of what takes the mains of a supply with it */
  private readonly partners = new Map<number, number[]>();

  constructor(
    private readonly circuit: NumberedCircuit,
    cores: Cores,
  ) {
    this.landed = new Int32Array(circuit.names.length);
    for (const run of cores)
      for (const [a, b] of run) {
        if (a === b) continue;
        this.landed[a]!++;
        this.landed[b]!++;
      }
    const pairs = [...circuit.contacts.map(({ a, b }) => [a, b] as const), ...circuit.mainsPairs];
    for (const [a, b] of pairs) {
      push(this.partners, a, b);
      push(this.partners, b, a);
    }
    this.usual = this.usualCounts();
  }

  /** How many ends a terminal of this name usually has on parts of this kind. */
  private usualCounts(): Map<string, number> {
    const counts = new Map<string, number[]>();
    this.circuit.names.forEach((_, i) => {
      const kind = this.kindAndMark(i);
      counts.set(kind, [...(counts.get(kind) ?? []), this.landed[i]!]);
    });
    return new Map(
      [...counts].map(([kind, list]) => [kind, [...list].sort((x, y) => x - y)[list.length >> 1]!] as const),
    );
  }

  private at(terminal: number): { readonly part: Part | undefined; readonly mark: string } {
    const { part, terminal: mark } = splitTerminalKey(this.circuit.names[terminal]!);
    return { part: this.circuit.parts.get(part), mark };
  }

  private kindAndMark(terminal: number): string {
    const { part, mark } = this.at(terminal);
    return `${part?.kind}.${mark}`;
  }

  /** Ends that a terminal lacks against its twins and against what its part needs; negative where it has more. */
  missing(terminal: number): number {
    const usual = this.usual.get(this.kindAndMark(terminal)) ?? 0;
    return Math.max(usual, this.needs(terminal)) - this.landed[terminal]!;
  }

  /** Terminals that have no end and do nothing without one. */
  lacking(): number {
    let count = 0;
    for (let t = 0; t < this.landed.length; t++) if (this.landed[t] === 0 && this.needs(t) > 0) count++;
    return count;
  }

  /** Ends without which the part does nothing. */
  private needs(terminal: number): number {
    const { part, mark } = this.at(terminal);
    const needs = part === undefined ? 'pair' : kindOf(part).needs(part, mark);
    if (needs === 'one') return part && this.hasOne(part) ? 0 : 1;
    return needs === 'pair' ? this.lonely(terminal) : Number(needs);
  }

  /** Whether a core lies on one of the terminals of which a part needs one. */
  private hasOne(part: Part): boolean {
    const marks = this.circuit.marksOf(part.name).filter((mark) => kindOf(part).needs(part, mark) === 'one');
    return marks.some((mark) => this.landed[this.circuit.terminal(terminalKey(part.name, mark))!]! > 0);
  }

  /** 1 for a contact's terminal whose contact has a core at one end only, and would have one at both with this. */
  private lonely(terminal: number): number {
    const partners = this.partners.get(terminal) ?? [];
    const other = partners.filter((t) => this.landed[t]! > 0);
    if (other.length === 0) return 0;
    const done = other.some((t) =>
      (this.partners.get(t) ?? []).some((x) => x !== terminal && this.landed[x]! > 0),
    );
    return done ? 0 : 1;
  }
}
