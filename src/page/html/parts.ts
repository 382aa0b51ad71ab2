/** What a page is made of, as plain data. */
import type { Circuit } from '../../circuit/circuit.ts';
import type { Drawing } from '../../draw/drawing.ts';
import type { Finding, FindingRepair, Report } from '../../findings/report-model.ts';
import type { Plan } from '../../plan/plan.ts';
import type { FoldedTable } from '../../study/folded-table.ts';
import type { Links } from '../links.ts';

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

/** One of the plans that a page can show: as drawn, or as mended. */
export interface Version {
  readonly plan: Plan;
  readonly report: Report;
  /** the findings of the report in the order in which they are told */
  readonly findings: readonly Finding[];
  readonly links: Links;
  readonly circuit: Circuit;
  /** a sentence in place of the table where it could not be worked out */
  readonly truth: PageTable | string;
  readonly drawing: Drawing;
  /** content of the drawing's `<svg>` */
  readonly svg: string;
}

/** Which of the two: value of `data-as` of what belongs to one of them alone. */
export type As = 'drawn' | 'mended';

export interface PageParts {
  readonly drawn: Version;
  /** where a repair was proved: the plan with it, and what is done in it */
  readonly mended?: Version & { readonly repair: FindingRepair };
  readonly groups: readonly Group[];
  /** loads, outlets or relays whose wanted and found state is shown */
  readonly targets: readonly string[];
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
