/** Wire list, cut list and labels, as sections of the printed sheet. */

import { countedCores } from '../../text/core-names.ts';
import { xml } from '../../text/xml.ts';
import { endWords, LABELS, legend, STRIPS, sheathWords } from '../wirelist.ts';
import { sectionNotes } from '../wirelist-notes.ts';
import { filled, list, metres, paragraph, table } from './html.ts';
import type { Cell, SheetParts } from './parts.ts';

/** Every core in the order of wiring, with a box to tick. */
export function wireList({ plan, wires, methods }: SheetParts, follows = false): string {
  const notes = sectionNotes(plan);
  const row = (w: (typeof wires.wires)[number]): Cell[] => [
    { tick: true },
    String(w.number),
    w.from.terminal,
    w.to.terminal,
    w.colour ?? 'bare link',
    w.gauge ?? '',
    metres(w.length),
    [`${w.run}`, w.name ?? '', w.route ?? ''].filter((t) => t !== '').join(' '),
    endWords(w.from),
    endWords(w.to),
    sheathWords(w),
  ];
  const head = ['', 'no', 'from', 'to', 'colour', 'gauge', 'cut', 'run', 'end from', 'end to', 'sheath'];
  const part = (section: 'low voltage' | 'mains', title: string, first: string) => {
    const rows = wires.wires.filter((w) => w.section === section).map(row);
    return rows.length === 0
      ? ''
      : `<h3>${title}</h3>${paragraph(first)}${table(...filled(head, rows), 'wires')}`;
  };
  return `<section${follows ? ' class="follows"' : ''}><h2>Wire list</h2>
${part('low voltage', 'Low voltage', `${notes['low voltage']}.`)}
${part('mains', 'Mains', `${notes.mains}. Leave them to a licensed electrician where the law, the lease or the insurance asks for it.`)}
${paragraph(STRIPS)}
${list(legend(wires, methods))}</section>`;
}

/** What to cut from which cable, and what is left. */
export function cutList({ wires }: SheetParts): string {
  const cuts = wires.cuts.map((c) => {
    const rows = c.pieces.map((p): Cell[] => [
      { tick: true },
      metres(p.length) || 'length not given',
      `${p.run}`,
      [p.name ?? '', p.route ?? ''].filter((t) => t !== '').join(', '),
      p.colours.join(', '),
    ]);
    const total = `${c.gauge}, ${countedCores(c.cores)}: ${metres(c.total)} in all`;
    return `<h3>${xml(c.cable)}</h3>${paragraph(total)}${table(...filled(['', 'cut', 'run', 'where', 'cores used'], rows), 'cuts')}`;
  });
  return cuts.length === 0 ? '' : `<section><h2>Cut list</h2>${cuts.join('')}</section>`;
}

/** A label for each end of each core, to be copied or cut out. */
export function labels({ wires }: SheetParts): string {
  if (wires.labels.length === 0) return '';
  return `<section class="follows"><h2>Labels</h2>${paragraph(LABELS)}${list(
    wires.labels.map((l) => l.text),
    'labels',
  )}</section>`;
}
