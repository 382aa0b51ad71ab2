/** Plans on one supply, and the findings that tell of starting and stopping. */
import type { Wired } from '../wired-plans.ts';

export const LOGIC =
  /^(loop|gate|gates|runs|stops|block|stays|depends|chatters|intent|undecided)-?|^(supply|coil)-shorted/;

export const plan = (names: string, wires: string, intent: string, more: readonly string[] = []): Wired => ({
  parts: `PS1 ${names}`,
  wires,
  intent: intent.split(/, (?=K2:)/),
  more,
});
