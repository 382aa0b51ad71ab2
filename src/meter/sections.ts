/** Sections of a sheet: what can be read in one zone by itself, zone after zone, and then what goes across the trunk. */
import type { Circuit } from '../circuit/circuit.ts';
import { partOfKey } from '../plan/terminal-key.ts';
import type { Study } from '../study/study.ts';
import { zonesOf } from '../study/zones.ts';
import type { Measure } from './measure.ts';
import { zoneParts } from './zone-parts.ts';

export class Sections {
  private readonly zones: ReadonlyMap<string, number>;
  private readonly names: readonly string[];

  constructor(
    study: Study,
    private readonly circuit: Pick<Circuit, 'inputs'>,
  ) {
    this.zones = zoneParts(study);
    this.names = zonesOf(study).map((z) => z.relay);
  }

  /** Number of the zone that all probes, leads and moved gates of a reading belong to; the number of zones for the trunk. */
  of({ pair, clipped, stance }: Measure): number {
    const found = this.common([
      ...[pair.a, pair.b, ...clipped].map(partOfKey),
      ...this.moved(stance.moved),
      ...this.moved(stance.first),
    ]);
    return found ?? this.names.length;
  }

  /** Relay of the zone that a reading is taken in; null for the trunk, and where there are no zones. */
  zone(m: Measure): string | null {
    return this.names[this.of(m)] ?? null;
  }

  /** Whether gates of one zone are moved and the probes are not all there. */
  isApart(m: Measure): boolean {
    const gates = this.moved(m.stance.moved);
    return gates.length > 0 && this.common(gates) !== undefined && this.of(m) === this.names.length;
  }

  private moved(inputs: readonly number[]): string[] {
    return inputs.map((i) => this.circuit.inputs[i]!.part);
  }

  private common(parts: readonly string[]): number | undefined {
    const found = new Set(parts.map((p) => this.zones.get(p)));
    const [only] = found;
    return found.size === 1 ? only : undefined;
  }
}
