/** A person at the machine who answers what a hunt asks, as one fault would have it. */
import { isOwn } from '../../../src/circuit/positions.ts';
import { Hunt } from '../../../src/meter/hunt/hunt.ts';
import { type Answer, type Observation, observe } from '../../../src/meter/hunt/observation.ts';
import type { Suspect } from '../../../src/meter/hunt/predict.ts';
import { probePairs } from '../../../src/meter/probe-pairs.ts';
import { type Stance, stances } from '../../../src/meter/stance.ts';
import { isFixedFeed } from '../../../src/plan/fixed-feed.ts';
import type { Study } from '../../../src/study/study.ts';

/** Questions after which a person gives up. */
const PATIENCE = 80;

export interface Walk {
  /** the group that the fault is in came to the front */
  readonly found: boolean;
  /** questions that were asked */
  readonly asked: number;
  /** cures that were tried in vain */
  readonly cures: number;
}

/** Hunts of one plan, with everything that is worked out kept from one to the next. */
export class Person {
  readonly hunt: Hunt;

  constructor(
    readonly study: Study,
    private readonly worked = true,
  ) {
    this.hunt = new Hunt(study, { worked });
  }

  /** Those that a hunt can end at; of some nothing is worked out under power. */
  get suspects(): Suspect[] {
    return this.hunt.all.filter((s) => !s.faults.some((f) => f.untold));
  }

  /** A hunt in which nothing was said yet. */
  afresh(): Hunt {
    const { predictor, all } = this.hunt;
    // The same suspects and what was worked out of them: a hunt made anew would work it out again.
    return Object.assign(new Hunt(this.study, { worked: this.worked }), {
      predictor,
      singles: all,
      suspects: all,
    });
  }

  truth(suspect: Suspect, o: Observation): Answer | undefined {
    return this.hunt.predictor.answer(suspect, o);
  }

  /** Answers until the hunt ends, tries the cure, and goes on if that does not help. */
  go(
    hunt: Hunt,
    suspect: Suspect,
    say: (o: Observation) => Answer | undefined = (o) => this.truth(suspect, o),
  ): Walk {
    let cures = 0;
    for (let asked = 0; asked < PATIENCE; ) {
      const next = hunt.next();
      if (next !== undefined) {
        hunt.answer(next, say(next));
        asked++;
        continue;
      }
      const group = hunt.group().map((r) => r.suspect);
      if (group.length === 0) return { found: false, asked, cures };
      if (group.includes(suspect)) return { found: true, asked, cures };
      cures++;
      hunt.cleared(group);
    }
    return { found: false, asked: PATIENCE, cures };
  }

  /**
   * Suspects that nothing which could be looked at tells apart, and their share of all; the bits that it takes to name one of
   * them are the least that yes-or-no answers could do it in.
   */
  bits(): { groups: number; bits: number } {
    const { predictor } = this.hunt;
    const all = this.observations();
    const leaders: { suspect: Suspect; weight: number }[] = [];
    const sure = this.suspects.filter((s) => !s.faults[0]!.poor);
    for (const suspect of [...sure, ...this.suspects.filter((s) => s.faults[0]!.poor)]) {
      const own = leaders.find((l) => all.every((o) => predictor.meet(l.suspect, suspect, o)));
      if (own === undefined) leaders.push({ suspect, weight: suspect.weight });
      else own.weight += suspect.weight;
    }
    const sum = leaders.reduce((total, l) => total + l.weight, 0);
    const bits = leaders.reduce((b, { weight }) => b - (weight / sum) * Math.log2(weight / sum), 0);
    return { groups: leaders.length, bits };
  }

  /** What tells groups apart: looks in every position and a good many readings at rest and with the first inputs moved. */
  private observations(): Observation[] {
    const { plan, wired, circuit, sides } = this.study;
    const positions = stances(plan, wired).slice(0, 30);
    const is = (side: ReadonlySet<number>, key: string) => side.has(circuit.netOf.get(key) ?? -1);
    const pairs = probePairs(plan).filter(({ a, b, far }) => !far || is(sides.low, a) === is(sides.low, b));
    const loop = pairs.filter(({ a, b }) => !is(sides.mains, a) && !is(sides.mains, b)).slice(0, 80);
    const mains = pairs
      .filter(({ a, b, far }) => is(sides.mains, a) && is(sides.mains, b) && !far)
      .slice(0, 40);
    const range = wired.sources.find((s) => !s.mains)?.kind ?? 'dc';
    const relays = wired.relays.filter(isOwn).map((r) => r.part);
    const { inputs } = wired;
    const gate = ({ moved, first }: Stance) =>
      moved.length === 1 && first.length === 0 && inputs[moved[0]!]!.kind === 'gate';
    const of = (kinds: readonly string[]) =>
      [...plan.parts.values()]
        .filter((p) => kinds.includes(p.kind) && !(p.kind === 'plug' && isFixedFeed(p)))
        .map((p) => p.name);
    return positions.flatMap((stance, i): Observation[] => [
      observe({ kind: 'look', stance }),
      ...(gate(stance) ? [observe({ kind: 'finger', stance })] : []),
      ...relays.map((part) => observe({ kind: 'click', stance, part })),
      ...of(['lamp', 'led']).map((part) => observe({ kind: 'lit', stance, part })),
      ...of(['outlet']).map((part) => observe({ kind: 'lamp', stance, part })),
      ...(i === 0 ? of(['plug']).map((part) => observe({ kind: 'lamp', stance, part })) : []),
      ...(i < 3 ? loop.map((pair) => observe({ kind: 'volts', stance, pair, range })) : []),
      ...(i < 3 ? [...loop, ...mains].map((pair) => observe({ kind: 'ohms', stance, pair })) : []),
    ]);
  }
}
