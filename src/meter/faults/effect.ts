/** What one failure does at the machine, over every position that a person would try; and how grave that is. */

import { kept, push } from '../../plan/map-entries.ts';
import type { Plan } from '../../plan/plan.ts';
import type { Study } from '../../study/study.ts';
import type { Fault } from '../fault.ts';
import { REST, type Stance, stances } from '../stance.ts';
import { type Behaviour, lookOf } from './behaviour.ts';
import type { FaultTrials } from './fault-trials.ts';

/**
 * How grave a failure is. danger: mains where it must not be, an earth that is lost, a load that goes on although what
 * must stop it does not; worse: a load on the side that the plan's `if-supply-fails` has it kept off; loss: the other
 * side; nuisance: anything else that is seen; none: nothing is seen.
 */
export type Severity = 'danger' | 'worse' | 'loss' | 'nuisance' | 'none';
export const SEVERITIES: readonly Severity[] = ['danger', 'worse', 'loss', 'nuisance', 'none'];

/** What a load does that it does not do in the right circuit. */
export type Wrongly = 'off' | 'on' | 'on though blocked' | 'chatters';

/** One position in which something is seen. */
export interface Seen {
  readonly stance: Stance;
  /** the load it is about; null where it is a relay, a lamp or an outlet */
  readonly load: string | null;
  readonly wrongly: Wrongly | 'otherwise';
}

export interface Effect {
  readonly severity: Severity;
  /** in the order of the positions */
  readonly seen: readonly Seen[];
  /** positions in which some load runs as it should in the right circuit, to count `off` against */
  readonly ought: number;
  /** set where it is not told by positions: mains meets the loop, earth is lost, a supply is of the wrong kind */
  readonly besides:
    | 'mains on the loop'
    | 'earth lost'
    | 'left live'
    | 'too many volts'
    | 'wrong time'
    | 'not worked out'
    | undefined;
  /** supplies that are shorted or driven to their limit in some position */
  readonly strained: readonly string[];
}

/**
 * Positions up to which each is tried. Of more, those of which the right circuit makes the same are tried first, in the middle
 * and last, in the order of the plan, and where these three agree those between are taken to.
 */
export const EACH = 48;

function sameSeen(x: readonly Seen[], y: readonly Seen[]): boolean {
  return x.length === y.length && x.every((s, i) => s.load === y[i]!.load && s.wrongly === y[i]!.wrongly);
}

/** Works out effects one after the other, in the positions of the plan. */
export class Effects {
  readonly stances: readonly Stance[];
  private readonly loads: readonly string[];
  private running: number | undefined;

  constructor(
    private readonly study: Study,
    private readonly trials: FaultTrials,
  ) {
    const { plan, wired } = study;
    this.stances = stances(plan, wired);
    this.loads = targetsOf(study);
  }

  of(fault: Fault): Effect {
    const strained = new Set<string>();
    const seen = fault.untold ? [] : this.seen(fault, strained);
    const besides = this.besides(fault, seen);
    return {
      severity: this.severity(seen, besides),
      seen,
      ought: this.ought,
      besides,
      strained: [...strained],
    };
  }

  /** Whether a failure does nothing to any load in these positions, asked until one says otherwise. */
  spares(fault: Fault, positions: Iterable<Stance>): boolean {
    for (const stance of positions) {
      const here = this.trials.seen([fault], stance);
      if (
        here === undefined ||
        this.compared(stance, this.trials.rightly(stance), here).some((s) => s.load !== null)
      )
        return false;
    }
    return true;
  }

  /** Positions in which some load runs in the right circuit. */
  private get ought(): number {
    this.running ??= this.stances.filter((s) => this.on(this.trials.rightly(s)).length > 0).length;
    return this.running;
  }

  private seen(fault: Fault, strained: Set<string>): Seen[] {
    const telling = this.stances.filter((s) => fault.still !== undefined || this.trials.acts(fault, s));
    const tried = new Map<string, Seen[]>();
    const at = (stance: Stance): Seen[] =>
      kept(tried, stance.key, () => {
        const right = this.trials.rightly(stance);
        const here = this.trials.seen([fault], stance)!;
        for (const s of here.strained) if (!right.strained.has(s)) strained.add(s);
        return this.compared(stance, right, here);
      });
    if (telling.length <= EACH) return telling.flatMap(at);
    return this.alike(telling).flatMap((group) => {
      const ends = [group[0]!, group[group.length >> 1]!, group.at(-1)!].map(at);
      const like = ends.every((e) => sameSeen(e, ends[0]!));
      return group.flatMap((stance) => (like ? ends[0]!.map((s) => ({ ...s, stance })) : at(stance)));
    });
  }

  /** Positions in groups of which the right circuit makes the same. */
  private alike(positions: readonly Stance[]): Stance[][] {
    const groups = new Map<string, Stance[]>();
    for (const s of positions) {
      const rest = s.key === REST.key ? 'rest ' : `${s.moved.length} ${s.first.length} `;
      push(groups, rest + this.on(this.trials.rightly(s)).join(), s);
    }
    return [...groups.values()];
  }

  private on({ runs, fed, into }: Behaviour): string[] {
    return this.loads.filter((load) => runs.has(load) || fed.has(load) || into.has(load));
  }

  private compared(stance: Stance, right: Behaviour, here: Behaviour): Seen[] {
    if (right.settled && !here.settled)
      return this.loads.map((load) => ({ stance, load, wrongly: 'chatters' }));
    const was = new Set(this.on(right));
    const is = new Set(this.on(here));
    const changed = this.loads.flatMap((load): Seen[] => {
      if (was.has(load) === is.has(load)) return [];
      if (was.has(load)) return [{ stance, load, wrongly: 'off' }];
      return [{ stance, load, wrongly: this.isBlocked(load, stance) ? 'on though blocked' : 'on' }];
    });
    if (changed.length > 0 || lookOf(right) === lookOf(here)) return changed;
    return [{ stance, load: null, wrongly: 'otherwise' }];
  }

  /** Whether something is moved that must keep a load off. */
  private isBlocked(load: string, { moved }: Stance): boolean {
    const { plan, wired } = this.study;
    const parts = new Set(moved.map((i) => wired.inputs[i]!.part));
    return (plan.intents ?? []).some(
      (i) => i.target === load && [...i.blockedBy, ...i.stoppedBy].some((r) => parts.has(r.part)),
    );
  }

  private besides(fault: Fault, seen: readonly Seen[]): Effect['besides'] {
    const { mode, untold, at } = fault;
    if (mode === 'meets-mains') return 'mains on the loop';
    if (untold) return 'not worked out';
    if (mode === 'mistimed') return 'wrong time';
    if (mode === 'wrong-volts' && this.isHigher(fault)) return 'too many volts';
    if (mode === 'never-breaks' && this.isPole(fault) && !seen.some((s) => s.load !== null))
      return 'left live';
    const { circuit, sides } = this.study;
    const parts = mode === 'core-open' || mode === 'tab-loose' || mode === 'wrong-terminal';
    const onEarth = at.slice(0, 2).every((key) => {
      const net = circuit.netOf.get(key);
      return net !== undefined && sides.bareEarth.has(net);
    });
    return parts && onEarth ? 'earth lost' : undefined;
  }

  /** Whether another supply gives more volts than that of the plan. */
  private isHigher({ plan, item }: Fault): boolean {
    const volts = (of: Plan) => {
      const part = of.parts.get(item);
      return part !== undefined && 'output' in part ? part.output.volts : 0;
    };
    return plan !== undefined && volts(plan(this.study.plan)) > volts(this.study.plan);
  }

  /** Whether a contact is one of a relay's, on mains. */
  private isPole({ parts, at }: Fault): boolean {
    const { circuit, sides, plan } = this.study;
    const part = plan.parts.get(parts[0]!);
    return (
      part !== undefined &&
      'poles' in part &&
      at.every((key) => sides.mains.has(circuit.netOf.get(key) ?? -1))
    );
  }

  private severity(seen: readonly Seen[], besides: Effect['besides']): Severity {
    if (besides === 'mains on the loop' || besides === 'earth lost' || besides === 'left live')
      return 'danger';
    if (seen.some((s) => s.wrongly === 'on though blocked')) return 'danger';
    const worse = (s: Seen) =>
      s.load !== null && s.wrongly === (mustGoOn(this.study.plan, s.load) ? 'off' : 'on');
    if (seen.some(worse)) return 'worse';
    if (seen.some((s) => s.load !== null) || besides !== undefined) return 'loss';
    return seen.length > 0 ? 'nuisance' : 'none';
  }
}

/** What a person watches: motors and loads, outlets where there are none, else what an intent names. */
export function targetsOf({ plan, wired }: Study): string[] {
  const of = (kind: string) => wired.consumers.filter((c) => c.kind === kind).map((c) => c.part);
  const loads = wired.consumers.filter((c) => c.kind !== 'outlet').map((c) => c.part);
  if (loads.length > 0) return [...new Set(loads)];
  const outlets = of('outlet');
  return outlets.length > 0 ? [...new Set(outlets)] : [...new Set((plan.intents ?? []).map((i) => i.target))];
}

/** Whether a load is to run on when its supply fails, so that standing still is the worse failure. */
function mustGoOn(plan: Plan, load: string): boolean {
  return plan.intents?.find((i) => i.target === load)?.ifSupplyFails === 'running';
}
