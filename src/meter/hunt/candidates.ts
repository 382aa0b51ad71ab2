/** What could be observed next: positions, places for the probes, lamps to try, near what is suspected. */
import { isOwn } from '../../circuit/positions.ts';
import { isLow, isMains } from '../../circuit/sides.ts';
import { isFixedFeed } from '../../plan/fixed-feed.ts';
import { partOfKey } from '../../plan/terminal-key.ts';
import type { Study } from '../../study/study.ts';
import { type Pair, probePairs } from '../probe-pairs.ts';
import { REST, type Stance, stances } from '../stance.ts';
import { loopKind, type Observation, observe } from './observation.ts';

/** Positions that are weighed for one question, beyond which they are picked evenly and near what is suspected. */
const POSITIONS = 10;
/** Positions that readings are weighed in. */
const READ_IN = 2;
/** Pairs of probes that are weighed for one question. */
const PAIRS = 24;

export class Candidates {
  private readonly all: readonly Stance[];
  private readonly loop: readonly Pair[];
  private readonly mains: readonly Pair[];
  private readonly gates: ReadonlySet<number>;
  private readonly range: 'dc' | 'ac';

  constructor(private readonly study: Study) {
    const { plan, wired, circuit, sides } = study;
    this.all = stances(plan, wired);
    this.gates = new Set(wired.inputs.filter((i) => i.kind === 'gate').map((i) => i.index));
    this.range = loopKind(study);
    const low = (key: string) =>
      isLow(sides, circuit.netOf.get(key)) && !isMains(sides, circuit.netOf.get(key));
    const high = (key: string) => isMains(sides, circuit.netOf.get(key));
    const pairs = probePairs(plan);
    this.loop = pairs.filter(({ a, b }) => low(a) && low(b));
    this.mains = pairs.filter(({ a, b, far }) => high(a) && high(b) && !far);
  }

  /** Positions, those of these parts among them. */
  positions(near: ReadonlySet<string>): Stance[] {
    if (this.all.length <= POSITIONS) return [...this.all];
    const { inputs } = this.study.wired;
    const own = this.all.filter((s) => s.moved.some((i) => near.has(inputs[i]!.part)));
    return [...new Set([REST, ...spread(own, POSITIONS >> 1), ...spread(this.all, POSITIONS >> 1)])];
  }

  /** What is seen and heard at the machine, and lamps that are tried in outlets. */
  looks(positions: readonly Stance[]): Observation[] {
    const { plan, wired } = this.study;
    const made: Observation[] = positions.map((stance) => observe({ kind: 'look', stance }));
    for (const stance of positions) {
      if (stance.moved.length === 1 && this.gates.has(stance.moved[0]!))
        made.push(observe({ kind: 'finger', stance }));
      for (const r of spread(wired.relays.filter(isOwn), RELAYS))
        made.push(observe({ kind: 'click', stance, part: r.part }));
      for (const p of plan.parts.values())
        if (p.kind === 'outlet') made.push(observe({ kind: 'lamp', stance, part: p.name }));
        else if ((p.kind === 'lamp' || p.kind === 'led') && made.length < LAMPS)
          made.push(observe({ kind: 'lit', stance, part: p.name }));
    }
    for (const p of plan.parts.values())
      if (p.kind === 'plug' && !isFixedFeed(p))
        made.push(observe({ kind: 'lamp', stance: REST, part: p.name }));
    return made;
  }

  /** Where a meter goes: near these parts, and spread over the rest. */
  readings(positions: readonly Stance[], near: ReadonlySet<string>): Observation[] {
    const there = (p: Pair) => near.has(partOfKey(p.a)) || near.has(partOfKey(p.b));
    const some = (pairs: readonly Pair[]) => [
      ...new Set([
        ...spread(pairs.filter(there), PAIRS >> 1),
        ...spread(
          pairs.filter((p) => p.main),
          PAIRS >> 2,
        ),
        ...spread(pairs, PAIRS >> 2),
      ]),
    ];
    const [loop, mains] = [some(this.loop), some(this.mains)];
    return positions
      .slice(0, READ_IN)
      .flatMap((stance): Observation[] => [
        ...loop.map((pair) => observe({ kind: 'volts', stance, pair, range: this.range })),
        ...[...loop, ...mains].map((pair) => observe({ kind: 'ohms', stance, pair })),
      ]);
  }
}

/** Relays and lamps that are asked about in one position. */
const RELAYS = 6;
const LAMPS = 60;

/** So many of a list, evenly. */
function spread<T>(list: readonly T[], most: number): T[] {
  if (list.length <= most) return [...list];
  return Array.from({ length: most }, (_, k) => list[Math.floor(((k + 0.5) * list.length) / most)]!);
}
