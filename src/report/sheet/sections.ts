/** The sections of the printed sheet, each as HTML, in the order in which they are used at the bench. */
import { isStanding } from '../cautions.ts';
import { layOnPaper } from '../draw/paper.ts';
import { findingMarks, numbered } from '../draw/sheet.ts';
import { drawingSvg, FONT } from '../draw/svg.ts';
import { xml } from '../draw/xml.ts';
import type { Caution } from '../model.ts';
import { logicSentence, verdictLine } from '../sentences.ts';
import { cell, deviationText } from '../table.ts';
import { filled, list, metres, paragraph, table } from './html.ts';
import type { Cell, SheetParts } from './parts.ts';

const NOT_APPROVAL =
  'This sheet was made by a program from a plan file. It is no approval of the work and no permit; the person who enforces the local code, and a licensed electrician, have the last word.';

/** First page: what the plan is, what the check says, and what can hurt. */
export function summary({ plan, report, date }: SheetParts): string {
  const file = plan.file === '-' ? 'from standard input' : plan.file;
  const tables = plan.practice === 'nec' ? 'North American tables' : 'IEC tables';
  const marks = numbered(report.findings);
  const findings = report.findings.map(
    (f) =>
      `<li class="${f.severity}">${marks.includes(f) ? `<b>!${marks.indexOf(f) + 1}</b> ` : ''}<b>${f.severity.toUpperCase()}</b> ${xml(f.message)} ${f.fix === '' ? '' : `<br><span class="do">Do: ${xml(f.fix)}</span>`}</li>`,
  );
  const answers = report.questions.map((q) => [`${q.number}. ${q.question}`, q.answer, q.figure]);
  return `<h1>${xml(plan.title)}</h1>
${paragraph([file, date ?? '', tables].filter((w) => w !== '').join(', '), 'file')}
${paragraph(verdictLine(report), `verdict ${report.verdict}`)}
${paragraph(NOT_APPROVAL, 'frame')}
${findings.length === 0 ? '' : `<h2>What the check found</h2><ul class="findings">${findings.join('')}</ul>`}
<h2>The seven questions</h2>
${table(['question', 'answer', 'what decides it'], answers, 'questions')}
${paragraph(logicSentence(report.logic))}
<h2>Cautions</h2>
${cautions(report.cautions)}
${report.defaults.length === 0 ? '' : `<h2>Taken for granted, because the plan does not say</h2>${list(report.defaults)}`}`;
}

function cautions(all: readonly Caution[]): string {
  const items = (some: readonly Caution[]) =>
    some.map((c) => `<li><b>${c.level.toUpperCase()}</b> ${xml(c.text)}</li>`).join('');
  const standing = all.filter((c) => isStanding(c.id));
  const others = all.filter((c) => !isStanding(c.id));
  return `<ul class="cautions">${items(standing)}${items(others)}</ul>`;
}

/** The diagram, as large as the page lets it be. */
export function diagram(parts: SheetParts): string {
  const { plan, report, circuit, sides, shown, size } = parts;
  const marks = findingMarks(report.findings);
  // The heading and the line below it take about as much as this of a page.
  const laid = layOnPaper({ circuit, sides, marks }, size, () => 90, false);
  const { drawing } = laid;
  const across = laid.width > laid.height;
  const small = !laid.legible
    ? 'So large a circuit comes out small here; pullin draw -o makes a larger sheet of it.'
    : '';
  return `<section class="diagram${across ? ' across' : ''}"><h2>Diagram</h2>
<svg role="img" aria-label="Ladder diagram" viewBox="0 0 ${Math.ceil(drawing.width)} ${Math.ceil(drawing.height)}" color="#000" ${FONT}>${drawingSvg(drawing, { plan, shown })}</svg>
${paragraph(`Drawn with everything at rest, all gates shut. On a core: number of its run, colour, gauge, length. Lines join at dots and nowhere else. ${small}`)}</section>`;
}

/** What runs when; states that are not as intended are marked by a word. */
export function truth({ truth: found }: SheetParts): string {
  if (typeof found === 'string') return `<section><h2>What runs when</h2>${paragraph(found)}</section>`;
  const head = ['state', ...found.columns, 'ought to be'];
  const rows = found.rows.map((row) => [
    row.label,
    ...found.columns.map((name) => cell(row, name)),
    deviationText(row),
  ]);
  const wide = found.columns.length > 9;
  return `<section><h2>What runs when</h2>${table(...filled(head, rows), wide ? 'narrow' : '')}</section>`;
}

/** Every core in the order of wiring, with a box to tick. */
export function wireList({ wires }: SheetParts): string {
  const row = (w: (typeof wires.wires)[number]): Cell[] => [
    { tick: true },
    String(w.number),
    w.from.terminal,
    w.to.terminal,
    w.colour ?? 'bare link',
    w.gauge ?? '',
    metres(w.length),
    [`${w.run}`, w.name ?? '', w.route ?? ''].filter((t) => t !== '').join(' '),
    w.from.method === w.to.method ? w.from.method : `${w.from.method}, ${w.to.method}`,
  ];
  const head = ['', 'no', 'from', 'to', 'colour', 'gauge', 'cut', 'run', 'joined by'];
  const part = (section: 'low voltage' | 'mains', title: string, first: string) => {
    const rows = wires.wires.filter((w) => w.section === section).map(row);
    return rows.length === 0
      ? ''
      : `<h3>${title}</h3>${paragraph(first)}${table(...filled(head, rows), 'wires')}`;
  };
  return `<section><h2>Wire list</h2>
${part('low voltage', 'Low voltage', 'Wire these first, with every supply unplugged.')}
${part('mains', 'Mains', 'Wire these last, with the plug in sight and out. Leave them to a licensed electrician where the law, the lease or the insurance asks for it.')}</section>`;
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
    const total = `${c.gauge}, ${c.cores} ${c.cores === 1 ? 'core' : 'cores'}: ${metres(c.total)} in all`;
    return `<h3>${xml(c.cable)}</h3>${paragraph(total)}${table(...filled(['', 'cut', 'run', 'where', 'cores used'], rows), 'cuts')}`;
  });
  return cuts.length === 0 ? '' : `<section><h2>Cut list</h2>${cuts.join('')}</section>`;
}

/** What to buy, and the least rating that would still do. */
export function shopping({ materials }: SheetParts): string {
  const least = (l: {
    readonly least: readonly { readonly words: string }[];
    readonly untold: readonly string[];
  }) => [...l.least.map((x) => x.words), ...l.untold].join('; ');
  const parts = materials.items.map((m): Cell[] => [
    { tick: true },
    `${m.count}`,
    m.spec,
    m.names.join(', '),
    least(m),
  ]);
  const cables = materials.cables.map((c): Cell[] => [
    { tick: true },
    `${metres(c.metres)} (${Number(c.feet.toFixed(1))} ft)`,
    `${c.name}: ${c.spec}`,
    c.unmeasured === 0 ? '' : `${c.unmeasured} more of unknown length`,
    least(c),
  ]);
  const joints = materials.joints.map((j): Cell[] => [
    { tick: true },
    `${j.count}`,
    `joint for ${j.wires}`,
    j.names.join(', '),
  ]);
  const small = materials.small.map((s): Cell[] => [{ tick: true }, `${s.count}`, s.what, '']);
  const total =
    materials.total === null
      ? ''
      : `Priced: ${materials.total.toFixed(2)}.${materials.unpriced.length === 0 ? '' : ` Without a price: ${materials.unpriced.join(', ')}.`}`;
  const head = ['', 'how many', 'what', 'for', 'least that would still do'];
  return `<section><h2>Materials</h2>
${table(...filled(head, parts), 'goods')}
${table(...filled(['', 'length', 'cable', 'note', 'least that would still do'], cables), 'goods')}
${table(...filled(['', 'how many', 'what', 'for'], [...joints, ...small]), 'goods')}
${paragraph(total)}</section>`;
}
