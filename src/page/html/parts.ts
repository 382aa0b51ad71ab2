/** What a page is made of, as plain data. */
import type { Circuit } from '../../circuit/circuit.ts';
import type { Drawing } from '../../draw/drawing.ts';
import type { Report } from '../../findings/report-model.ts';
import type { Plan } from '../../plan/plan.ts';
import type { FoldedTable } from '../../study/folded-table.ts';

/** One position that a button puts an input in. */
export interface Setting {
  /** number of the input; undefined for the resting position of a selector */
  readonly input?: number;
  /** what stands on the button: the part, or a selector's position */
  readonly name: string;
  /** words for the working and the resting position, `open` and `shut` */
  readonly on: string;
  readonly off: string;
}

/** Buttons that belong together: all gates, or the positions of one selector. */
export interface Group {
  readonly title: string;
  readonly part?: string;
  readonly settings: readonly Setting[];
}

/** A truth table with the states that each row stands for: the inputs away from rest, by number, ascending. */
export interface PageTable {
  readonly table: FoldedTable;
  readonly moved: readonly (readonly (readonly number[])[])[];
}

export interface PageParts {
  readonly plan: Plan;
  readonly report: Report;
  readonly circuit: Circuit;
  readonly groups: readonly Group[];
  /** loads, outlets or relays whose wanted and found state is shown */
  readonly targets: readonly string[];
  /** a sentence in place of the table where it could not be worked out */
  readonly truth: PageTable | string;
  readonly drawing: Drawing;
  /** content of the drawing's `<svg>` */
  readonly svg: string;
}

/** What the browser gets beside the words: code, look, data and the policy that lets in these alone. */
export interface PageAssets {
  readonly script: string;
  readonly style: string;
  /** JSON text with no `<` in it */
  readonly data: string;
  /** content security policy */
  readonly policy: string;
}
