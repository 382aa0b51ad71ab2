/** Terminals that lack an end, against their twins and against what their part needs. */
import { push } from '../plan/map-entries.ts';
import type { Plan } from '../plan/plan.ts';
import type { Ends, Quick } from './quick.ts';

export class Wants {
  /** ends on every terminal */
  readonly landed: Int32Array;
  private readonly usual: ReadonlyMap<string, number>;
  /** the other ends of the contacts at a terminal */
  private readonly partners = new Map<number, number[]>();

  constructor(
    private readonly plan: Plan,
    private readonly quick: Quick,
    cores: readonly (readonly Ends[])[],
  ) {
    this.landed = new Int32Array(quick.names.length);
    for (const run of cores)
      for (const [a, b] of run) {
        if (a === b) continue;
        this.landed[a]!++;
        this.landed[b]!++;
      }
    for (const [a, b] of quick.contactEnds()) {
      push(this.partners, a, b);
      push(this.partners, b, a);
    }
    this.usual = this.usualCounts();
  }

  /** How many ends a terminal of this name usually has on parts of this kind. */
  private usualCounts(): Map<string, number> {
    const counts = new Map<string, number[]>();
    this.quick.names.forEach((_, i) => {
      const kind = this.kindOf(i);
      counts.set(kind, [...(counts.get(kind) ?? []), this.landed[i]!]);
    });
    return new Map(
      [...counts].map(([kind, list]) => [kind, [...list].sort((x, y) => x - y)[list.length >> 1]!] as const),
    );
  }

  private kindOf(terminal: number): string {
    const [part, ...rest] = this.quick.names[terminal]!.split('.');
    return `${this.plan.parts.get(part!)?.kind}.${rest.join('.')}`;
  }

  /** Ends that a terminal lacks against its twins and against what its part needs; negative where it has more. */
  want(terminal: number): number {
    const usual = this.usual.get(this.kindOf(terminal)) ?? 0;
    return Math.max(usual, this.needs(terminal)) - this.landed[terminal]!;
  }

  /** Terminals without which the part does nothing. */
  private needs(terminal: number): number {
    const [name, ...rest] = this.quick.names[terminal]!.split('.');
    const part = this.plan.parts.get(name!);
    const mark = rest.join('.');
    switch (part?.kind) {
      case 'relay':
      case 'timer':
        return mark === 'A1' || mark === 'A2' ? 1 : this.lonely(terminal);
      case 'supply':
      case 'battery':
        return ['+', '-', '~1', '~2'].includes(mark) ? 1 : 0;
      case 'motor':
      case 'load':
        return part.pluggedInto === undefined && (mark !== 'N' || part.feed === 'single') ? 1 : 0;
      case 'plug':
      case 'outlet':
        return mark === 'N' && part.feed !== 'single' ? 0 : 1;
      case 'box':
        return part.metal ? 1 : 0;
      case 'board':
        return ['VCC', 'GND', 'IN'].includes(mark) ? 1 : this.lonely(terminal);
      case 'diode':
      case 'led':
      case 'lamp':
      case 'resistor':
      case 'fuse':
        return 1;
      default:
        return this.lonely(terminal);
    }
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
