/** Every core and link, with where it goes. */
import type { Plan, Run } from '../../plan/plan.ts';
import { type ColumnOf, paragraph, table } from '../../report/blocks.ts';
import { asHtml } from '../../report/forms/html.ts';
import { lengthWords } from '../../text/lengths.ts';
import { runMark } from '../../text/run-names.ts';
import type { PageParts } from './parts.ts';
import { type RowOf, rowsOfBoth } from './versions.ts';

interface Wire {
  /** `RUN/CORE` */
  readonly id: string;
  readonly run: string;
  readonly core: string;
  readonly from: string;
  readonly to: string;
  readonly gauge: string;
  readonly length: string;
}

const COLUMNS: readonly ColumnOf<RowOf<Wire>>[] = [
  { head: 'Run', of: ({ row }) => ({ text: row.run, head: true }) },
  { head: 'Core', of: ({ row }) => row.core },
  { head: 'Now', of: () => ({ text: '', data: { cell: 'live' } }) },
  { head: 'From', of: ({ row }) => row.from },
  { head: 'To', of: ({ row }) => row.to },
  { head: 'Gauge', always: true, of: ({ row }) => row.gauge },
  { head: 'Length', always: true, of: ({ row }) => row.length },
];

function wiresOf(plan: Plan): Wire[] {
  return plan.runs.flatMap((run) =>
    run.cores.map((core, index) => ({
      id: `${run.index}/${index}`,
      run: runWords(run),
      core: run.link ? 'link' : core.colour,
      from: core.a.written,
      to: core.b.written,
      gauge: run.cable?.gauge ?? '',
      length: run.length === undefined ? '' : lengthWords(run.length, run.unit ?? 'm'),
    })),
  );
}

const runWords = (run: Run): string =>
  [runMark(run), run.name ?? '', run.route ?? ''].filter((w) => w !== '').join(', ');

export function wiresHtml({ drawn, mended }: PageParts): string {
  const wires = rowsOfBoth(wiresOf(drawn.plan), mended && wiresOf(mended.plan));
  const blocks = [
    paragraph('A core that carries volts now is marked live.'),
    table(wires, COLUMNS, { scrolls: 'Wires' }, ({ row, as }) => ({
      data: { core: row.id, ...(as && { as }) },
    })),
  ];
  return `<section id="wires" aria-labelledby="h-wires"><h2 id="h-wires">Wires</h2>
${asHtml(blocks)}</section>`;
}
