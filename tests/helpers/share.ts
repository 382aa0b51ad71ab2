/**
 * How much is tried of what takes long when it is tried whole: a twentieth in `x.test.ts`, everything where
 * `x.long.test.ts` takes the same tests in.
 */
const SHARE = Number(process.env.PULLIN_TEST_SHARE ?? 0.05);

export const WHOLE = SHARE === 1;

/** So many of `all`, at least one. */
export const share = (all: number): number => Math.ceil(all * SHARE);

/** Every twentieth, or every so many, or all. */
export const sampled = <T>(all: readonly T[], every = 20): T[] =>
  all.filter((_, i) => WHOLE || i % every === 0);
