/** Which of the changes that mend a plan is the likeliest to undo what happened. */

import type { Input } from '../circuit/circuit.ts';
import { type Edit, type EndRef, isSaying } from '../edit/edits.ts';
import { planAfter } from '../edit/expected-plan.ts';
import type { Plan } from '../plan/plan.ts';
import { partOfKey, splitTerminalKey, terminalKey } from '../plan/terminal-key.ts';
import { additionsBetween, movesTo } from './alternatives.ts';
import { CableSides } from './cable-sides.ts';
import { Effects } from './effects.ts';
import { unfusedControl } from './fuse-reach.ts';
import { Harm } from './harm.ts';
import { kindOf } from './kinds.ts';
import { MissingEnds } from './missing-ends.ts';
import type { Cores, NumberedCircuit } from './numbered-circuit.ts';
import { Oddness } from './oddness.ts';
import { Places } from './places.ts';
import type { QuickLook } from './quick-look.ts';
import { Rewirings } from './rewire.ts';
import { type Candidate, rewired } from './rewired.ts';

/** A candidate with the plan it leads to; `cost` is the smaller, the likelier it undoes what happened. */
export interface Ranked {
  readonly t: Candidate;
  readonly after: Plan;
  readonly cost: number;
}

/** Parts times candidates that are weighed at most, and candidates that are in any case; the least odd come first. */
const WORTH = 60_000;
const LEAST_RANKED = 300;

/** How many slips of a hand an edit stands for: one end put wrong is one, a core forgotten or one too many a little more. */
const SLIPS = { move: 1, swap: 1.3, add: 1.2, remove: 1.6, say: 1, intend: 1.8 } as const;
/** A diode put in the wrong way round is one slip, though both its ends are moved. */
const TURNED = 1;
/** A core that goes so much further than its cable by the ways of the others, and what that weighs; they may go straighter. */
const FARTHER = { share: 1.3, metres: 0.5, each: 0.4, most: 1.5 } as const;
/** Cost over the habits broken now of one end that lies as well where it goes. */
const AS_BEFORE = 1.25;
/** What it counts for that an end goes where one is missing. */
const FILLED = 0.2;
/** What it weighs that a new mains core ends at what takes little, beside a terminal that leads on. */
const TWIG = 0.3;
/** What each end of a coil, lamp or supply weighs that lies past a fuse. */
const UNFUSED = 1.5;
/** What a new core weighs that is thinner than one it joins, and one that lies in no cable with a core to spare. */
const THIN = 0.3;
const LAID = 1;

export class Ranking {
  private readonly places: Places;
  private readonly harm: Harm;
  private readonly oddness: Oddness;
  /** changes of the wiring as it stands */
  private readonly whole: Rewirings;
  private readonly circuit: NumberedCircuit;
  private readonly effects: Effects;
  private readonly sides: CableSides;

  constructor(
    private readonly plan: Plan,
    private readonly quick: QuickLook,
    inputs: readonly Input[],
  ) {
    this.circuit = quick.circuit;
    this.effects = new Effects(quick, inputs, quick.wiring(this.circuit.cores));
    this.places = new Places(plan);
    this.sides = new CableSides(plan, this.circuit);
    this.harm = new Harm(plan, this.circuit, this.places);
    this.oddness = new Oddness(plan, this.places);
    this.whole = new Rewirings(plan, quick, this.circuit.cores);
  }

  /** Candidates that do no harm, likeliest first: the fewest slips after which the plan breaks the fewest of its habits. */
  ranked(tries: readonly Candidate[]): Ranked[] {
    const most = Math.max(LEAST_RANKED, Math.floor(WORTH / this.plan.terminals.size));
    const few =
      tries.length <= most
        ? tries
        : [...tries].sort((x, y) => x.edits.length - y.edits.length || x.oddness - y.oddness).slice(0, most);
    const all = few
      .flatMap((t) => this.onOtherTerminals(t))
      .slice(0, most)
      .flatMap((t): (Ranked & { readonly odd: number })[] => {
        const after = planAfter(this.plan, t.edits);
        if (!after) return [];
        const cores = rewired(this.circuit, this.circuit.cores, t.edits);
        const strain = this.strain(t.edits);
        if (this.harm.isDone(t.edits, cores) || (strain > 0 && t.edits.length > 1 && t.slips === undefined))
          return [];
        const odd = this.odd(after, cores);
        return [
          {
            t,
            after,
            odd,
            cost:
              this.slips(t) + odd + strain + this.laid(t.edits) + this.twigs(t.edits) - this.fills(t.edits),
          },
        ];
      });
    // Other words leave the wiring as it is, and its habits say nothing of them: they count as well as the best.
    const least = Math.min(...all.map((r) => r.odd));
    return all
      .map((r) => (r.t.edits.every(isSaying) ? { ...r, cost: this.slips(r.t) + least } : r))
      .sort((x, y) => x.cost - y.cost || x.t.oddness - y.t.oddness);
  }

  /** Of some candidates those that leave the habits of the plan as they are, and which of them mend so many that it outweighs the change. */
  tidier(tries: readonly Candidate[]): { readonly t: Candidate; readonly outweighed: boolean }[] {
    const now = this.odd(this.plan, this.circuit.cores);
    return this.ranked(tries).flatMap(({ t, cost }) =>
      cost <= now + AS_BEFORE ? [{ t, outweighed: cost < now }] : [],
    );
  }

  /** The habits that a wiring breaks, and what takes little and lies on the mains past its fuse. */
  private odd(plan: Plan, cores: Cores): number {
    const lacking = new MissingEnds(this.circuit, cores).lacking();
    return this.oddness.of(plan, lacking) + UNFUSED * unfusedControl(this.circuit, cores);
  }

  /** Whether a button, switch or cut-out that does something would do nothing any more. */
  idlesAnInput({ edits }: Candidate): boolean {
    if (edits.every(isSaying)) return false;
    return this.effects.isLost(this.quick.wiring(rewired(this.circuit, this.circuit.cores, edits)));
  }

  /** A change on each terminal of the conductors it lands on; of several changes each on the few that fit it best. */
  private onOtherTerminals(t: Candidate): Candidate[] {
    if (t.edits.length === 1) return this.choices(t.edits[0]!).map((e) => ({ ...t, edits: [e] }));
    if (t.slips !== undefined) return [t];
    const few = t.edits.length === 2 ? 4 : 2;
    const strange = (e: Edit) => this.strain([e]) - this.fills([e]);
    return t.edits
      .map((e) =>
        this.choices(e)
          .map((choice) => ({ choice, by: strange(choice) }))
          .sort((x, y) => x.by - y.by)
          .slice(0, few)
          .map(({ choice }) => choice),
      )
      .reduce<Edit[][]>((made, choices) => made.flatMap((m) => choices.map((c) => [...m, c])), [[]])
      .map((edits) => ({ ...t, edits }));
  }

  private choices(edit: Edit): Edit[] {
    const options = this.whole;
    if (edit.do === 'move') return movesTo(this.plan, edit, options.on(edit.to, edit));
    if (edit.do === 'add') {
      const isMains = this.sides.joinsMains(edit.from, edit.to);
      const [from, to] = [options.on(edit.from), options.on(edit.to)];
      return additionsBetween(
        this.plan,
        this.places,
        edit,
        from,
        to,
        (run) => this.sides.isMains(run) === isMains,
      );
    }
    return edit.do === 'remove' ? [edit, ...this.keptInstead(edit)] : [edit];
  }

  /** Where a core can as well be taken out, it can as well lie along its own conductor: one end on another tab of its part. */
  private keptInstead(at: { readonly run: number; readonly core: number }): Edit[] {
    const core = this.plan.runs[at.run]!.cores[at.core]!;
    return (['a', 'b'] as const).flatMap((end) => {
      const [own, other] = end === 'a' ? [core.a, core.b] : [core.b, core.a];
      return this.whole
        .on(terminalKey(other.part, other.terminal), at)
        .filter((to) => partOfKey(to) === own.part)
        .map((to): Edit => ({ do: 'move', run: at.run, core: at.core, end, to }));
    });
  }

  private slips({ edits, slips }: Candidate): number {
    return (
      slips ??
      edits.reduce((sum, e) => sum + (e.do === 'swap' && this.turnsDiode(e) ? TURNED : SLIPS[e.do]), 0)
    );
  }

  /** An end that goes where one is missing fills a gap. */
  private fills(edits: readonly Edit[]): number {
    return edits.filter((e) => e.do === 'move' && this.whole.lacks(e.to)).length * FILLED;
  }

  /** Cores led further than they are long by the ways the other cables go, and new ones thinner than what they join. */
  private strain(edits: readonly Edit[]): number {
    return edits.reduce((sum, e) => {
      if (e.do === 'add') return sum + (this.isThin(e) ? THIN : 0);
      if (e.do !== 'move') return sum;
      const run = this.plan.runs[e.run]!;
      const core = run.cores[e.core]!;
      const other = e.end === 'a' ? core.b.part : core.a.part;
      if (run.link || run.length === undefined) return sum;
      const way = this.places.wayBetween(other, partOfKey(e.to), run);
      const times = (way ?? 0) / (run.length * FARTHER.share + FARTHER.metres);
      return sum + (times > 1 ? Math.min(FARTHER.most, FARTHER.each * times) : 0);
    }, 0);
  }

  /** New cores that go elsewhere than the cable from which they are said to come. */
  private laid(edits: readonly Edit[]): number {
    const isLaid = (e: Edit) => {
      const way =
        e.do === 'add' && e.like !== undefined ? this.places.wayOf(this.plan.runs[e.like]!) : undefined;
      if (e.do !== 'add' || way === undefined) return false;
      return ![e.from, e.to].every((t) => way.includes(this.places.of(partOfKey(t))));
    };
    return edits.filter(isLaid).length * LAID;
  }

  /** Ends of new mains cores on a coil, a lamp or a small supply, whose own wire would then carry what the core is for. */
  private twigs(edits: readonly Edit[]): number {
    const isTwig = (key: string) => {
      const { part: name, terminal } = splitTerminalKey(key);
      const part = this.plan.parts.get(name);
      return (
        part !== undefined &&
        (part.kind === 'supply' || part.kind === 'lamp' || kindOf(part).coil?.includes(terminal))
      );
    };
    return edits.reduce((sum, e) => {
      if (e.do !== 'add' || !this.sides.joinsMains(e.from, e.to)) return sum;
      return sum + [e.from, e.to].filter(isTwig).length * TWIG;
    }, 0);
  }

  private isThin({ from, to, like }: Edit & { readonly do: 'add' }): boolean {
    const own = like === undefined ? undefined : this.plan.runs[like]?.cable?.area;
    if (own === undefined) return false;
    const here = new Set([...this.whole.on(from), ...this.whole.on(to)]);
    return this.plan.runs.some(
      (run) =>
        (run.cable?.area ?? 0) > own &&
        run.cores.some((c) => [c.a, c.b].some((end) => here.has(terminalKey(end.part, end.terminal)))),
    );
  }

  private turnsDiode({ first, second }: Edit & { readonly do: 'swap' }): boolean {
    const at = (e: EndRef) => this.plan.runs[e.run]!.cores[e.core]![e.end].part;
    const kind = this.plan.parts.get(at(first))?.kind;
    return at(first) === at(second) && (kind === 'diode' || kind === 'led');
  }
}
