/**
 * Figures that a plan leaves out, each with both ends of what it may be: this folder knows which figures a part can have,
 * the rows of `tables/defaults.json` that bound them and how a plan is completed with them, and must not judge.
 */
import type { Part } from '../../plan/part-types.ts';
import type { Plan } from '../../plan/plan.ts';
import type { Default } from '../defaults.ts';

/**
 * A way of completing all that is left out. `few`: coils get least and everything has to bear most. `sag`: as that, of
 * supplies that rise unloaded and sag when loaded. `many`: coils get most, fuses and breakers let most through.
 * `ample`: volts and ratings plenty, loads light. `mild`: as that, with nothing above its label and tight limits.
 * A plan that passes at `few`, `sag` and `many` passes at both ends of everything; one that fails at all five, likewise.
 */
export type World = 'few' | 'sag' | 'many' | 'ample' | 'mild';

/** Worlds in which something is at its worse end, and those in which as much as possible is at its better end. */
export const WORSE: readonly World[] = ['few', 'many', 'sag'];
export const BETTER: readonly World[] = ['ample', 'mild'];

/** SI, a share, or the word of a choice. */
export type Value = number | string;

/** A figure that the plan leaves out. */
export interface Unsaid {
  /** parts of one specification that leave it out; none where it is the plan's own */
  readonly parts: readonly string[];
  /** dotted, as in the schema: `coil.pull-in` */
  readonly field: string;
  /** what bounds it, and why */
  readonly row: Pick<Default, 'mark' | 'basis'>;
  /** in what it is written */
  readonly unit: Default['unit'] | 'word' | '% of rated' | 'A of a motor';
  /** the questions whose answers it bears on */
  readonly bears: readonly number[];
  /** what it is in each world; left out where the plan as it is taken serves */
  readonly at: Readonly<Partial<Record<World, Value>>>;
  /** by which figures are told, where nothing else takes a value for it */
  readonly usual?: Value;
  /** states it */
  readonly put: (draft: Draft, value: Value) => void;
}

/** A plan on its way to being completed. */
export interface Draft {
  readonly parts: Map<string, Part>;
  ambient: number | undefined;
}

/** The same plan with these figures stated. */
export function stating(plan: Plan, said: readonly (readonly [Unsaid, Value])[]): Plan {
  const draft: Draft = { parts: new Map(plan.parts), ambient: plan.ambient };
  for (const [unsaid, value] of said) unsaid.put(draft, value);
  return { ...plan, parts: draft.parts, ...(draft.ambient !== undefined && { ambient: draft.ambient }) };
}

/** The same plan with everything stated that a world states. */
export function completed(plan: Plan, unsaid: readonly Unsaid[], world: World): Plan {
  return stating(
    plan,
    unsaid.flatMap((u) => {
      const value = u.at[world];
      return value === undefined ? [] : [[u, value] as const];
    }),
  );
}

/** The same plan with the usual value stated of what nothing else takes one for; undefined where there is no such. */
export function withUsual(
  plan: Plan,
  unsaid: readonly Unsaid[],
): { readonly plan: Plan; readonly taken: readonly Unsaid[] } | undefined {
  const taken = unsaid.filter((u) => u.usual !== undefined);
  if (taken.length === 0) return undefined;
  return {
    plan: stating(
      plan,
      taken.map((u) => [u, u.usual!]),
    ),
    taken,
  };
}

/** Ends of a row by world, in the order few, many, ample, mild; `sag` is as few. */
export function ends(few: Value, many: Value, ample: Value, mild: Value, sag: Value = few): Unsaid['at'] {
  return { few, sag, many, ample, mild };
}

/** How to state a figure of parts. */
export function putting<P extends Part>(
  names: readonly string[],
  change: (part: P, value: Value) => Part,
): Unsaid['put'] {
  return (draft, value) => {
    for (const name of names) draft.parts.set(name, change(draft.parts.get(name) as P, value));
  };
}
