/** Which buttons, switches and cut-outs do something, as far as joins alone tell. */
import type { Input } from '../circuit/circuit.ts';
import type { QuickLook, Wiring } from './quick-look.ts';

/** Inputs besides gates that are looked at; each is tried with each. */
const MOST_INPUTS = 12;

type Steps = readonly ReadonlySet<number>[];

/** One way of moving an input: the same moves without it, and with it. */
interface Trial {
  readonly input: number;
  readonly without: Steps;
  readonly with: Steps;
}

/** Keeps in mind what every button, switch and cut-out does, so that no repair makes one of them idle. */
export class Effects {
  private readonly trials: readonly Trial[];
  private readonly working: ReadonlySet<number>;

  constructor(
    private readonly quick: QuickLook,
    inputs: readonly Input[],
    now: Wiring,
  ) {
    this.trials = trialsOf(inputs);
    this.working = this.workingIn(now);
  }

  /** Whether an input that does something now does nothing in another wiring. */
  isLost(wiring: Wiring): boolean {
    if (this.working.size === 0) return false;
    const after = this.workingIn(wiring);
    return [...this.working].some((input) => !after.has(input));
  }

  private workingIn(wiring: Wiring): ReadonlySet<number> {
    const working = new Set<number>();
    for (const t of this.trials)
      if (!working.has(t.input) && this.outcome(wiring, t.with) !== this.outcome(wiring, t.without))
        working.add(t.input);
    return working;
  }

  private outcome(wiring: Wiring, steps: Steps): string {
    const { chatters, shorted, loads } = this.quick.outcome(wiring, steps);
    return `${chatters} ${shorted} ${[...loads].sort().join()}`;
  }
}

/**
 * Every input besides the gates moved with all gates shut and all open, moved and let go, and the same after another was
 * moved and let go, as a stop needs a start before it.
 */
function trialsOf(inputs: readonly Input[]): Trial[] {
  const gates = inputs.filter((i) => i.kind === 'gate').map((i) => i.index);
  const others = inputs.filter((i) => i.kind !== 'gate').slice(0, MOST_INPUTS);
  const set = (base: readonly number[], more: readonly number[]) => new Set([...base, ...more]);
  return [[], gates].flatMap((base) =>
    others.flatMap(({ index, part }): Trial[] => {
      const before = others.filter((o) => o.part !== part).map((o) => [set(base, [o.index]), set(base, [])]);
      return [[], ...before].flatMap((first): Trial[] => [
        { input: index, without: [...first, set(base, [])], with: [...first, set(base, [index])] },
        {
          input: index,
          without: [...first, set(base, [])],
          with: [...first, set(base, [index]), set(base, [])],
        },
      ]);
    }),
  );
}
