/** How many cases a test has tried: one test of ours may hold hundreds. `tests/README.md` adds them up. */
import { TestRunner } from 'vitest';

declare module 'vitest' {
  interface TaskMeta {
    /** cases that the test tried; where none were counted, it is one itself */
    cases?: number;
  }
}

/** Counts so many more for the test that runs; outside of a test they count for nobody. */
export function cases(more: number): void {
  const meta = TestRunner.getCurrentTest()?.meta;
  if (meta !== undefined) meta.cases = (meta.cases ?? 0) + more;
}
