/** What a printed sheet is made of, as plain data. */
import type { Sides } from '../../circuit/sides.ts';
import type { Shown } from '../../draw/current-shown.ts';
import type { LayoutInput } from '../../draw/layout/layout.ts';
import type { PaperSize } from '../../draw/paper-sizes.ts';
import type { Report } from '../../findings/report-model.ts';
import type { Materials } from '../../lists/materials-model.ts';
import type { WireEnd, WireList } from '../../lists/wirelist-model.ts';
import type { MeterSheet } from '../../meter/sheet/sheet-model.ts';
import type { Plan } from '../../plan/plan.ts';
import type { TruthTable } from '../../study/table-model.ts';

export interface SheetParts extends Pick<LayoutInput, 'circuit'> {
  readonly sides: Sides;
  readonly plan: Plan;
  readonly report: Report;
  readonly shown: Shown;
  /** a sentence in place of the table where it could not be worked out */
  readonly truth: TruthTable | string;
  readonly wires: WireList;
  /** what each way of joining an end means */
  readonly methods: Readonly<Record<WireEnd['method'], string>>;
  readonly materials: Materials;
  readonly meter: MeterSheet;
  /** date of the plan file, `2026-11-25`; undefined where there is none */
  readonly date?: string;
  readonly size: PaperSize;
}

/** A part of the document; it follows the one before it on the page unless its class says otherwise. */
export interface Section {
  readonly title: string;
  readonly name?: string;
  /** it stays in the section before it */
  readonly joins?: boolean;
  /** all of it, with its number in its heading */
  readonly html: (number: number) => string;
}
