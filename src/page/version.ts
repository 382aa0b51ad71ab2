/** One of the plans that a page can show, worked out: its drawing, its table, and what each finding speaks of. */
import { shownState } from '../draw/current-shown.ts';
import { findingMarks } from '../draw/finding-marks.ts';
import { drawingSvg } from '../draw/svg.ts';
import { gravestFirst, type Report } from '../findings/report-model.ts';
import { foldedTable } from '../study/folded-table.ts';
import type { Study } from '../study/study.ts';
import { zonesOf } from '../study/zones.ts';
import { movedIn } from './groups.ts';
import { compactSvg } from './html/compact-svg.ts';
import { withMarksAtSymbols } from './html/marks-at-symbols.ts';
import type { PageTable, Version } from './html/parts.ts';
import { linksOf } from './links.ts';
import { drawingBeside } from './room.ts';

/** `name` is set before what has to have a name of its own on the page. */
export function versionOf(study: Study, report: Report, name: string): Version {
  const { plan, circuit, sides } = study;
  const drawing = drawingBeside({ circuit, sides, marks: findingMarks(report.findings) });
  const shown = shownState(circuit, { made: () => false });
  const findings = gravestFirst(report.findings);
  return {
    plan,
    report,
    findings,
    links: linksOf(plan, findings),
    circuit,
    truth: truthOf(study),
    drawing,
    svg: compactSvg(
      withMarksAtSymbols(drawing, (d) => drawingSvg(d, { plan, shown, both: true })),
      name,
    ),
  };
}

function truthOf(study: Study): PageTable | string {
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
