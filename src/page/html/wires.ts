/** Every core and link, with where it goes. */
import type { Core, Plan, Run } from '../../plan/plan.ts';
import { type ColumnOf, paragraph, table } from '../../report/blocks.ts';
import { asHtml } from '../../report/forms/html.ts';
import { lengthWords } from '../../text/lengths.ts';
import { runMark } from '../../text/run-names.ts';

interface Wire {
  readonly run: Run;
  readonly core: Core;
  readonly index: number;
}

const COLUMNS: readonly ColumnOf<Wire>[] = [
  { head: 'Run', of: ({ run }) => ({ text: runWords(run), head: true }) },
  { head: 'Core', of: ({ run, core }) => (run.link ? 'link' : core.colour) },
  { head: 'Now', of: () => ({ text: '', data: { cell: 'live' } }) },
  { head: 'From', of: ({ core }) => core.a.written },
  { head: 'To', of: ({ core }) => core.b.written },
  { head: 'Gauge', always: true, of: ({ run }) => run.cable?.gauge ?? '' },
  {
    head: 'Length',
    always: true,
    of: ({ run }) => (run.length === undefined ? '' : lengthWords(run.length, run.unit ?? 'm')),
  },
];

const runWords = (run: Run): string =>
  [runMark(run), run.name ?? '', run.route ?? ''].filter((w) => w !== '').join(', ');

export function wiresHtml(plan: Plan): string {
  const wires = plan.runs.flatMap((run) => run.cores.map((core, index) => ({ run, core, index })));
  const blocks = [
    paragraph('A core that carries volts now is marked live.'),
    table(wires, COLUMNS, { id: 'wires', scrolls: 'Wires' }, ({ run, index }) => ({
      data: { core: `${run.index}/${index}` },
    })),
  ];
  return `<section aria-labelledby="h-wires"><h2 id="h-wires">Wires</h2>
${asHtml(blocks)}</section>`;
}
