/** Every core and link, with where it goes. */

import { lengthWords } from '../../draw/caption-words.ts';
import type { Core, Plan, Run } from '../../plan/plan.ts';
import { xml } from '../../text/xml.ts';
import { tableHtml } from './tables.ts';

const HEAD = ['Run', 'Core', 'Now', 'From', 'To', 'Gauge', 'Length'];

export function wiresHtml(plan: Plan): string {
  const rows = plan.runs.flatMap((run) => run.cores.map((core, i) => wireRow(run, core, i)));
  return `<section aria-labelledby="h-wires"><h2 id="h-wires">Wires</h2>
<p>A core that carries volts now is marked live.</p>
${tableHtml('Wires', HEAD, rows, ' id="wires"')}</section>`;
}

function wireRow(run: Run, core: Core, index: number): string {
  const name = [`${run.index + 1}`, run.name ?? '', run.route ?? ''].filter((w) => w !== '').join(', ');
  const cell = (text: string) => `<td>${xml(text)}</td>`;
  const ends = [
    core.a.written,
    core.b.written,
    run.cable?.gauge ?? '',
    run.length === undefined ? '' : lengthWords(run.length),
  ];
  return `<tr data-core="${run.index}/${index}"><th scope="row">${xml(name)}</th>${cell(run.link ? 'link' : core.colour)}<td data-cell="live"></td>${ends.map(cell).join('')}</tr>`;
}
