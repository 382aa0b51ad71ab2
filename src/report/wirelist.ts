/** The wire list as text, Markdown and CSV. */

import type { WireEnd } from '../lists/wire-ends.ts';
import type { CableCuts, WireList, WireRow } from '../lists/wirelist.ts';
import { countedCores } from '../text/core-names.ts';
import {
  feetWords,
  type Listing,
  type Look,
  listingCsv,
  listingFits,
  listingLines,
  listingMarkdown,
  markdownText,
  metreWords,
  paragraph,
  toldLine,
} from './lists.ts';
import type { SectionNotes } from './wirelist-notes.ts';

export const WIRE_LISTS = ['wires', 'cuts', 'labels'] as const;
export type WireListPart = (typeof WIRE_LISTS)[number];

/** What is printed beside the list itself: its title, and what each way of joining an end means. */
export interface WireListWords {
  readonly title: string;
  readonly methods: Readonly<Record<WireEnd['method'], string>>;
  /** what is done to the power before each section */
  readonly notes: SectionNotes;
}

/** `screw 7 mm + ferrule`; a bare link is not stripped. */
export const endWords = ({ method, strip, ferrule }: WireEnd): string =>
  `${method}${strip === null ? '' : ` ${strip} mm`}${ferrule ? ' + ferrule' : ''}`;
export const sheathWords = ({ from, to }: WireRow): string =>
  from.sheath === null || to.sheath === null ? '' : `${from.sheath}/${to.sheath} mm`;

function wireListing(rows: readonly WireRow[]): Listing {
  return {
    head: ['no.', 'from', 'to', 'colour', 'gauge', 'length', 'run', 'route', 'end from', 'end to', 'sheath'],
    rows: rows.map((r) => [
      `${r.number}${r.loose ? '?' : ''}`,
      r.from.terminal,
      r.to.terminal,
      r.colour ?? 'bare link',
      r.gauge ?? '',
      r.length === null ? '' : metreWords(r.length),
      `${r.run}${r.name === null ? '' : ` ${r.name}`}`,
      r.route ?? '',
      endWords(r.from),
      endWords(r.to),
      sheathWords(r),
    ]),
  };
}

/** Columns that say where a core goes; the rest say how its ends are made. */
const ROUTE_COLUMNS = 8;

/** One table, or where it is too wide one of the cores and one of their ends. */
function wireLines(rows: readonly WireRow[], look: Look): string[] {
  const whole = wireListing(rows);
  if (listingFits(whole, look)) return listingLines(whole, look);
  const part = (pick: (cells: readonly string[]) => string[]) =>
    listingLines({ head: pick(whole.head), rows: whole.rows.map(pick) }, look);
  return [
    ...part((cells) => cells.slice(0, ROUTE_COLUMNS)),
    '',
    ...part((cells) => [cells[0]!, ...cells.slice(ROUTE_COLUMNS)]),
  ];
}

/** Every figure in a column of its own; lengths in m, strips in mm. */
function wireTable(list: WireList): Listing {
  const end = (e: WireEnd) => [e.method, `${e.strip ?? ''}`, `${e.sheath ?? ''}`, e.ferrule ? 'yes' : 'no'];
  const ends = (which: string) => [
    `${which} joined by`,
    `${which} strip mm`,
    `${which} sheath mm`,
    `${which} ferrule`,
  ];
  const labels = new Map(list.labels.map((l) => [`${l.wire}/${l.end}`, l.text]));
  return {
    head: [
      ...[
        'number',
        'section',
        'from',
        'to',
        'colour',
        'gauge',
        'cable',
        'length m',
        'run',
        'name',
        'route',
        'loose',
      ],
      ...[...ends('from'), ...ends('to'), 'label from', 'label to'],
    ],
    rows: list.wires.map((r) => [
      ...[`${r.number}`, r.section, r.from.terminal, r.to.terminal, r.colour ?? 'bare link', r.gauge ?? ''],
      ...[r.cable ?? '', r.length === null ? '' : `${r.length}`, `${r.run}`, r.name ?? '', r.route ?? ''],
      ...[r.loose ? 'yes' : 'no', ...end(r.from), ...end(r.to)],
      ...(['from', 'to'] as const).map((e) => labels.get(`${r.number}/${e}`) ?? ''),
    ]),
  };
}

function cutTable(list: WireList): Listing {
  return {
    head: ['cable', 'gauge', 'cores', 'run', 'name', 'route', 'length m', 'colours', 'unused cores'],
    rows: list.cuts.flatMap((c) =>
      c.pieces.map((p) => [
        ...[c.cable, c.gauge, `${c.cores}`, `${p.run}`, p.name ?? '', p.route ?? ''],
        ...[p.length === null ? '' : `${p.length}`, p.colours.join(' '), `${p.spare}`],
      ]),
    ),
  };
}

function labelTable(list: WireList): Listing {
  return {
    head: ['wire', 'end', 'label'],
    rows: list.labels.map((l) => [`${l.wire}`, l.end, l.text]),
  };
}

/** One list as comma-separated values (RFC 4180). */
export function renderWireListCsv(list: WireList, part: WireListPart): string {
  const table = { wires: wireTable, cuts: cutTable, labels: labelTable }[part];
  return listingCsv(table(list));
}

function cutListing(cuts: CableCuts): Listing {
  return {
    head: ['piece', 'length', 'feet', 'cores', 'route', 'unused'],
    rows: cuts.pieces.map((p) => [
      `run ${p.run}${p.name === null ? '' : ` ${p.name}`}`,
      p.length === null ? 'not stated' : metreWords(p.length),
      p.length === null ? '' : feetWords(p.length),
      p.colours.join(', '),
      p.route ?? '',
      p.spare > 0 ? `${p.spare}` : '',
    ]),
  };
}

function cutHead({ cable, gauge, cores, pieces, total }: CableCuts): string {
  const what = cable.startsWith(gauge) ? cable : `${cable}, ${gauge}, ${countedCores(cores)}`;
  const count = pieces.length === 1 ? '1 piece' : `${pieces.length} pieces`;
  return `${what}: ${count}, ${metreWords(total)} (${feetWords(total)}) in all`;
}

/** One sentence a reel, then what is left of all of them. */
function reelLines({ reels, waste }: CableCuts): string[] {
  if (reels === null) return [];
  const lines = reels.map((r, i) => {
    const pieces = r.pieces.map((p) => `${metreWords(p.length)} (run ${p.run})`).join(', ');
    return `Reel ${i + 1} of ${metreWords(r.length)}: ${pieces}; ${metreWords(r.waste)} left.`;
  });
  return [
    ...lines,
    `Left on ${reels.length === 1 ? 'the reel' : `${reels.length} reels`}: ${metreWords(waste ?? 0)}.`,
  ];
}

const LENGTHS =
  'Lengths have their slack in them: what the run states, else 10 %, and at least 10 cm at each end (common practice, no source), rounded up to the centimetre. All cores of a run are one piece.';
export const STRIPS =
  'End: how it is joined, and the mm of insulation to strip; sheath: mm of outer sheath to take off at either end. Common practice, no source; what the part itself prints counts.';
export const LABELS = 'Labels, one for each end of each core; the terminal is the one that end lands on.';

/** Ways of joining that the list uses, each in a sentence. */
export function legend(list: Pick<WireList, 'wires'>, methods: WireListWords['methods']): string[] {
  const used = new Set(list.wires.flatMap((r) => [r.from.method, r.to.method]));
  return [...used].map((m) => `${m}: ${methods[m]}`);
}

const sections = (list: WireList, notes: SectionNotes) =>
  (['low voltage', 'mains'] as const).flatMap((section) => {
    const rows = list.wires.filter((r) => r.section === section);
    return rows.length === 0 ? [] : [{ title: notes[section], rows }];
  });

/** Lists one after the other in `width` columns. */
export function renderWireListText(
  list: WireList,
  words: WireListWords,
  parts: readonly WireListPart[],
  look: Look,
): string {
  const say = (text: string, first = '') => paragraph(text, look, first);
  const told = toldLine(list.check);
  const blocks = [[...say(`Wire list of ${words.title}`), ...(told === undefined ? [] : say(told))]];
  if (parts.includes('wires')) {
    for (const { title, rows } of sections(list, words.notes))
      blocks.push([...say(`${title}:`), ...wireLines(rows, look)]);
    const loose = list.wires.some((r) => r.loose);
    blocks.push([
      ...say(STRIPS),
      ...legend(list, words.methods).flatMap((l) => say(l, '  ')),
      ...(loose ? say('?: nothing wired before leads to this core.') : []),
    ]);
  }
  if (parts.includes('cuts')) {
    blocks.push(say(`Cut list. ${LENGTHS}`));
    for (const cuts of list.cuts)
      blocks.push([
        ...say(cutHead(cuts)),
        ...listingLines(cutListing(cuts), look),
        ...reelLines(cuts).flatMap((l) => say(l, '  ')),
      ]);
  }
  if (parts.includes('labels'))
    blocks.push([...say(LABELS), ...list.labels.flatMap((l) => say(l.text, '  '))]);
  return `${blocks.map((b) => b.join('\n')).join('\n\n')}\n`;
}

/** The lists as Markdown, with a box to tick before every wire. */
export function renderWireListMarkdown(
  list: WireList,
  words: WireListWords,
  parts: readonly WireListPart[],
): string {
  const told = toldLine(list.check);
  const out = [
    `# ${markdownText(`Wire list of ${words.title}`)}`,
    ...(told === undefined ? [] : ['', markdownText(told)]),
  ];
  if (parts.includes('wires')) {
    for (const { title, rows } of sections(list, words.notes)) {
      const { head, rows: cells } = wireListing(rows);
      const ticked = { head: ['done', ...head], rows: cells.map((r) => ['☐', ...r]) };
      out.push('', `## ${markdownText(title)}`, '', ...listingMarkdown(ticked));
    }
    out.push('', markdownText(STRIPS), '', ...legend(list, words.methods).map((l) => `* ${markdownText(l)}`));
    if (list.wires.some((r) => r.loose)) out.push('', '?: nothing wired before leads to this core.');
  }
  if (parts.includes('cuts')) {
    out.push('', '## Cut list', '', markdownText(LENGTHS));
    for (const cuts of list.cuts) {
      out.push('', `### ${markdownText(cutHead(cuts))}`, '', ...listingMarkdown(cutListing(cuts)));
      const reels = reelLines(cuts);
      if (reels.length > 0) out.push('', ...reels.map((l) => `* ${markdownText(l)}`));
    }
  }
  if (parts.includes('labels'))
    out.push('', '## Labels', '', markdownText(LABELS), '', ...listingMarkdown(labelTable(list)));
  return `${out.join('\n')}\n`;
}
