/** The two sections in which a plan is wired, and a core in its turn. */
import type { Core, Run, TerminalRef } from '../plan/plan.ts';

/** Which side of the machine a core is on. */
export type Section = 'low voltage' | 'mains';

/** One core in its turn, from the end that is there already to the new one. */
export interface Placed {
  readonly section: Section;
  readonly run: Run;
  readonly core: Core;
  readonly from: TerminalRef;
  readonly to: TerminalRef;
  /** nothing wired before leads to it */
  readonly loose: boolean;
}
