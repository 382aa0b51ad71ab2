/** What lies near a part: inputs and relays along the cores, and terminals that are near everywhere. */
import type { Circuit } from '../circuit/circuit.ts';
import { kept, push } from '../plan/map-entries.ts';
import type { Plan } from '../plan/plan.ts';
import { terminalKey } from '../plan/terminal-key.ts';
import type { Study } from '../study/study.ts';
import { REST, type Stance } from './stance.ts';

/** Inputs, or relays, that are looked for around a part. */
const FEW = 2;
/** Positions in which a relay is looked for in. */
const LOOKED_IN = 24;

type Indexed = { readonly part: string; readonly index: number };

/** The few inputs that lie fewest cores away from some parts, in the order in which they are met. */
export function nearestInputs(plan: Plan, circuit: Circuit): (parts: readonly string[]) => readonly number[] {
  return nearest(plan, circuit.inputs);
}

function nearest(plan: Plan, list: readonly Indexed[]): (parts: readonly string[]) => readonly number[] {
  const around = new Map<string, string[]>();
  for (const run of plan.runs)
    for (const { a, b } of run.cores) {
      push(around, a.part, b.part);
      push(around, b.part, a.part);
    }
  const at = new Map<string, number[]>();
  for (const { part, index } of list) push(at, part, index);
  return (parts) => {
    const seen = new Set(parts);
    const found: number[] = [];
    for (const part of seen) {
      found.push(...(at.get(part) ?? []));
      if (found.length >= FEW) break;
      for (const to of around.get(part) ?? []) seen.add(to);
    }
    return found;
  };
}

/**
 * Positions that bring in the relays around some parts. Of a chain of relays no gate lies near the last: which inputs bear on
 * it is asked of the proof.
 */
export class RelaysBroughtIn {
  private readonly around: (parts: readonly string[]) => readonly number[];
  private readonly known = new Map<number, Stance | undefined>();

  constructor(
    private readonly study: Study,
    private readonly stances: readonly Stance[],
    /** which relays are in; undefined where they never rest */
    private readonly relaysAt: (stance: Stance) => readonly boolean[] | undefined,
  ) {
    this.around = nearest(study.plan, study.wired.relays);
  }

  /** For each relay around these parts that none of the positions given has in, the first that has, if any. */
  beyond(parts: readonly string[], given: readonly Stance[]): Stance[] {
    const more: Stance[] = [];
    for (const relay of this.around(parts)) {
      if ([...given, ...more].some((s) => this.has(relay, s))) continue;
      const stance = kept(this.known, relay, () => this.first(relay));
      if (stance !== undefined) more.push(stance);
    }
    return more;
  }

  private has(relay: number, stance: Stance): boolean {
    return this.relaysAt(stance)?.[relay] === true;
  }

  private first(relay: number): Stance | undefined {
    const bearing = this.bearing(relay);
    const worth = this.stances.filter(
      ({ key, moved, first }) =>
        key !== REST.key && [...moved, ...first].some((i) => bearing === undefined || bearing.has(i)),
    );
    // What is worked and let go of first is more trouble.
    const order = [...worth].sort((x, y) => x.first.length - y.first.length);
    return order.slice(0, LOOKED_IN).find((s) => this.has(relay, s));
  }

  /** Inputs that bear on a relay, by way of other relays as well; undefined where nothing was decided. */
  private bearing(relay: number): ReadonlySet<number> | undefined {
    const { verified } = this.study;
    if (verified === undefined) return undefined;
    const { bdd, sensed } = verified.model;
    const relays = verified.circuit.relays.length;
    const met = new Set([relay]);
    const inputs = new Set<number>();
    for (const r of met)
      for (const x of bdd.support(sensed[r]!.on))
        if (x < relays) met.add(x);
        else inputs.add(x - relays);
    return inputs;
  }
}

export function terminalsOfSources(plan: Plan, { sources }: Circuit): string[] {
  return sources.flatMap((s) => allTerminals(plan, s.part));
}

export function allTerminals(plan: Plan, part: string): string[] {
  return (plan.terminals.get(part)?.names ?? []).map((t) => terminalKey(part, t));
}
