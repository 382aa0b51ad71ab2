/**
 * The page of one plan, from its report and the browser's code: this folder knows what a page shows and how it answers a
 * move, and must not work out a state itself; it asks the one machine.
 */
import { createHash } from 'node:crypto';
import { shownState } from '../draw/current-shown.ts';
import { findingMarks } from '../draw/finding-marks.ts';
import { layOut } from '../draw/layout/layout.ts';
import { PIXELS } from '../draw/layout/measures.ts';
import { drawingSvg } from '../draw/svg.ts';
import type { Report } from '../findings/report-model.ts';
import { isArming } from '../machine/intended-state.ts';
import { Walk } from '../machine/walk.ts';
import { foldedTable } from '../study/folded-table.ts';
import type { Study } from '../study/study.ts';
import { zonesOf } from '../study/zones.ts';
import { groupsOf, movedIn } from './groups.ts';
import { compactSvg } from './html/compact-svg.ts';
import { pageHtml } from './html/html.ts';
import type { PageParts } from './html/parts.ts';
import { packPlan } from './pack.ts';
import type { PageData } from './unpack.ts';

/** What the build made for the browser: `page-script.js` and `page.css`, as text. */
export interface BrowserFiles {
  readonly script: string;
  readonly style: string;
}

/** Columns of symbols in a page's drawing, the first that fits. */
const COLUMNS = [3, 2];
/** px of a window in which a drawing ought to be seen whole */
const WINDOW = 1180;

/** One HTML file. `report` is what the check says of the plan. Never throws for a plan that was read. */
export function pageOf(study: Study, report: Report, files: BrowserFiles): string {
  const { plan, circuit, sides, verified } = study;
  const arming = verified !== undefined && isArming(verified);
  const input = { circuit, sides, marks: findingMarks(report.findings) };
  const drawings = COLUMNS.map((columns) => layOut(input, PIXELS, { columns, bank: 1000 }));
  const drawing = drawings.find((d) => d.width <= WINDOW) ?? drawings.at(-1)!;
  const shown = shownState(circuit, { made: () => false });
  const data: PageData = { plan: packPlan(plan), arming };
  return pageHtml(
    {
      plan,
      report,
      circuit,
      groups: groupsOf(plan, circuit),
      targets: new Walk(study, arming).targets,
      truth: truthOf(study),
      drawing,
      svg: compactSvg(drawingSvg(drawing, { plan, shown, both: true })),
    },
    {
      ...files,
      // In a script element nothing but `<` can end the data early.
      data: JSON.stringify(data).replaceAll('<', '\\u003c'),
      policy: policyOf(files),
    },
  );
}

function truthOf(study: Study): PageParts['truth'] {
  const { circuit, undecided } = study;
  if (undecided !== undefined) return undecided;
  const { rows, ...table } = foldedTable(study.truthTable({ all: false }), zonesOf(study));
  // What is held shows by the buttons of the page themselves.
  const direct = rows.filter((row) => row.moves.length < 2);
  return {
    table: { ...table, rows: direct },
    moved: direct.map(({ of }) => of.map((row) => movedIn(circuit, row))),
  };
}

/** Lets in this script and this style, and nothing from anywhere. */
function policyOf({ script, style }: BrowserFiles): string {
  const hash = (text: string) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
  return [
    "default-src 'none'",
    `style-src ${hash(style)}`,
    `script-src ${hash(script)}`,
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
}
