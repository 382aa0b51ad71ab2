/** Readings that stand for one fault as others stand for the faults it is like: the same probes at the parts in their place. */
import type { Circuit } from '../../circuit/circuit.ts';
import { kept, push } from '../../plan/map-entries.ts';
import { splitTerminalKey, terminalKey } from '../../plan/terminal-key.ts';
import type { Study } from '../../study/study.ts';
import { zonesOf } from '../../study/zones.ts';
import type { Measure } from '../measure.ts';
import { type Stance, stanceOf } from '../stance.ts';
import { zoneParts } from '../zone-parts.ts';
import type { AlikeFaults } from './alike-faults.ts';
import type { AlikeParts } from './alike-parts.ts';

/** A reading before it is worked out: where, in which position, and what kind of reading. */
export interface Place {
  readonly key: string;
  readonly stage: Measure['stage'];
  readonly stance: Stance;
  readonly a: string;
  readonly b: string;
  readonly clipped: readonly string[];
  readonly shows: Measure['expect']['shows'];
}

/** Parts around a fault that are matched with those around another. */
const AROUND = 60;

type Stand = (part: string) => string | undefined;

export class Carried {
  private readonly zones: ReadonlyMap<string, number>;
  private readonly relays: readonly string[];
  /** parts of each zone by how they are wired */
  private readonly inZone = new Map<string, string[]>();
  private readonly stands = new Map<string, Stand>();

  constructor(
    study: Study,
    private readonly circuit: Circuit,
    private readonly parts: AlikeParts,
    private readonly alike: AlikeFaults,
  ) {
    this.zones = zoneParts(study);
    this.relays = zonesOf(study).map((z) => z.relay);
    for (const [part, k] of this.zones) push(this.inZone, `${k} ${parts.label(part)}`, part);
  }

  /** Where a fault would be read, were it read as its models are; `shown` has the readings that show each model. */
  places(index: number, shown: ReadonlyMap<number, readonly Measure[]>): Place[] {
    const found = new Map<string, Place>();
    for (const model of this.alike.modelsOf(index)) {
      const readings = shown.get(model);
      if (readings === undefined) continue;
      const stand = this.standing(this.alike.pairs(model, index));
      for (const m of readings) {
        const place = this.placed(m, stand);
        if (place !== undefined) found.set(place.key, place);
      }
    }
    return [...found.values()];
  }

  private placed(m: Measure, stand: Stand): Place | undefined {
    const at = (key: string) => {
      const { part, terminal } = splitTerminalKey(key);
      const to = stand(part);
      return to === undefined ? undefined : terminalKey(to, terminal);
    };
    const [a, b] = [at(m.pair.a), at(m.pair.b)];
    const clipped = m.clipped.map(at);
    const moved = m.stance.moved.map((i) => this.input(i, stand));
    const first = m.stance.first.map((i) => this.input(i, stand));
    if (a === undefined || b === undefined || a === b) return undefined;
    if ([...clipped, ...moved, ...first].includes(undefined)) return undefined;
    const stance = stanceOf(moved as number[], first as number[]);
    const { stage, expect } = m;
    const ends = a < b ? `${a} ${b}` : `${b} ${a}`;
    const key = `${stage} ${stance.key} ${ends} ${clipped.join()} ${expect.shows}`;
    return { key, stage, stance, a, b, clipped: clipped as string[], shows: expect.shows };
  }

  private input(index: number, stand: Stand): number | undefined {
    const { part, position } = this.circuit.inputs[index]!;
    const to = stand(part);
    return this.circuit.inputs.find((i) => i.part === to && i.position === position)?.index;
  }

  /** The part that stands where another does, seen from two alike faults; undefined where none does. */
  private standing(pairs: readonly (readonly [string, string])[]): Stand {
    return kept(this.stands, pairs.join(' '), () => {
      const zones = new Map<number, number>();
      for (const [a, b] of pairs) {
        const [x, y] = [this.zones.get(a), this.zones.get(b)];
        if (x !== undefined && y !== undefined && !zones.has(x)) zones.set(x, y);
      }
      const relays = [...zones].map(([x, y]) => [this.relays[x]!, this.relays[y]!] as const);
      const to = this.parts.matched([...pairs, ...relays], AROUND);
      return (part) => {
        const found = to.get(part);
        if (found !== undefined) return found;
        const [x, y] = [this.zones.get(part), zones.get(this.zones.get(part) ?? -1)];
        if (x === undefined || y === undefined || x === y) return part;
        const [here, there] = [x, y].map((k) => this.inZone.get(`${k} ${this.parts.label(part)}`) ?? []);
        return here!.length === 1 && there!.length === 1 ? there![0] : undefined;
      };
    });
  }
}

/** Terminals and inputs of some places. */
export function reachOf(places: readonly Place[]): {
  readonly keys: readonly string[];
  readonly inputs: ReadonlySet<number>;
} {
  return {
    keys: places.flatMap((p) => [p.a, p.b, ...p.clipped]),
    inputs: new Set(places.flatMap((p) => [...p.stance.moved, ...p.stance.first])),
  };
}
