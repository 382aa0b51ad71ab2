/** The wire list: every core in the order of wiring, and how its ends are made. */
import type { WireEnd, WireList, WireRow } from '../lists/wirelist-model.ts';
import { cutWords, halfInches, type LengthUnit, sixteenths } from '../text/lengths.ts';
import { listOf } from '../text/word-list.ts';
import { type Block, type ColumnOf, heading, list, paragraph, table } from './blocks.ts';
import { cutBlocks, cutTable } from './cut-list.ts';
import { labelBlocks, labelTable } from './labels.ts';
import type { SectionNotes } from './section-notes.ts';
import { toldBlocks } from './told.ts';

export const WIRE_LISTS = ['wires', 'cuts', 'labels'] as const;
export type WireListPart = (typeof WIRE_LISTS)[number];

/** What is printed beside the list itself: its title, and what each way of joining an end means. */
export interface WireListWords {
  readonly methods: Readonly<Record<WireEnd['method'], string>>;
  /** what is done to the power before each section */
  readonly notes: SectionNotes;
}

const strips = (unit: LengthUnit): string =>
  unit === 'ft'
    ? 'End: how it is joined, and how much insulation to strip; sheath: how much outer sheath to take off at either end; inches to the nearest sixteenth, of sheath to the nearest half. Common practice, no source; what the part itself prints counts.'
    : 'End: how it is joined, and the mm of insulation to strip; sheath: mm of outer sheath to take off at either end. Common practice, no source; what the part itself prints counts.';
export const ELECTRICIAN =
  'Leave them to a licensed electrician where the law, the lease or the insurance asks for it.';

/** `screw 7 mm + ferrule`, `screw 7 mm 1/4 in + ferrule`; a bare link is not stripped. */
const endWords = ({ method, strip, ferrule }: WireEnd, unit: LengthUnit): string =>
  `${method}${strip === null ? '' : ` ${strip} mm${unit === 'ft' ? ` ${sixteenths(strip)} in` : ''}`}${ferrule ? ' + ferrule' : ''}`;

/** `100/40 mm`; `100/40, 4/1.5` in mm and in inches, whose head says so. */
const sheathWords = ({ from, to }: WireRow, unit: LengthUnit): string => {
  if (from.sheath === null || to.sheath === null) return '';
  const mm = `${from.sheath}/${to.sheath}`;
  return unit === 'ft' ? `${mm}, ${halfInches(from.sheath)}/${halfInches(to.sheath)}` : `${mm} mm`;
};

const joined = (...words: readonly string[]): string => words.filter((w) => w !== '').join(' ');

/** `OL1 1/L1-2/T1`: the relay and the two ends of its pole. */
export const overloadWords = ({ overload }: WireRow): string =>
  overload === null ? '' : `${overload.relays.join(' or ')} ${overload.pole.join('-')}`;

/** Where the cores of a motor land that a plan shows on its contactor; undefined where none goes by an overload relay. */
export function overloadNote(rows: readonly WireRow[]): string | undefined {
  const through = rows.filter((r) => r.overload !== null);
  if (through.length === 0) return undefined;
  const landings = through.map(
    ({ number, overload, ...row }) =>
      `${overload!.lands} in place of ${row[overload!.end].terminal} (${number})`,
  );
  const unsure = through.some((r) => r.overload!.relays.length > 1);
  return [
    `By way of: the motor's current passes the power poles of the overload relay, which this list shows between contactor and motor. Land the core on ${listOf(landings, landings.length)}; that terminal joins the other end of the same pole. Landed as the list has it, the relay never sees the current and never trips.`,
    ...(unsure ? ['The plan does not say which relay is for which motor: the one set to its current.'] : []),
    'Marks as is common practice (IEC 60947-4-1, EN 50005, from memory); what the relay itself prints counts. One made for three phases wants current in each of its poles: on single phase follow its sheet, mostly by leading one conductor through twice.',
  ].join(' ');
}

const columns = (unit: LengthUnit): readonly ColumnOf<WireRow>[] => [
  { head: 'done', only: ['markdown'], of: () => ({ box: 'tick' }) },
  { head: 'no.', of: (r) => `${r.number}${r.loose ? '?' : ''}` },
  { head: 'from', of: (r) => r.from.terminal },
  { head: 'to', of: (r) => r.to.terminal },
  { head: 'by way of', of: overloadWords },
  { head: 'colour', of: (r) => r.colour ?? 'bare link' },
  { head: 'gauge', of: (r) => r.gauge ?? '' },
  { head: 'length', of: (r) => cutWords(r.length, r.unit) },
  { head: 'run', of: (r) => joined(r.mark, r.name ?? '') },
  { head: 'route', of: (r) => r.route ?? '' },
  // What is before says where a core goes, what follows how its ends are made.
  { head: 'end from', cut: true, of: (r) => endWords(r.from, unit) },
  { head: 'end to', of: (r) => endWords(r.to, unit) },
  { head: unit === 'ft' ? 'sheath mm, in' : 'sheath', of: (r) => sheathWords(r, unit) },
];

export const SECTIONS = [
  { section: 'low voltage', title: 'Low voltage' },
  { section: 'mains', title: 'Mains' },
] as const;

/** What each way of joining an end that the list has means. */
export function methodList({ wires }: Pick<WireList, 'wires'>, methods: WireListWords['methods']): Block {
  const used = new Set(wires.flatMap((r) => [r.from.method, r.to.method]));
  return list(
    'indent',
    [...used].map((m) => `${m}: ${methods[m]}`),
    { close: true, name: 'methods' },
  );
}

/** Both halves of the list, low voltage first, and what their words mean. */
function wireBlocks(wires: Pick<WireList, 'wires' | 'unit'>, { methods, notes }: WireListWords): Block[] {
  const sections = SECTIONS.flatMap(({ section }): Block[] => {
    const rows = wires.wires.filter((r) => r.section === section);
    if (rows.length === 0) return [];
    const note = notes[section];
    const through = overloadNote(rows);
    return [
      heading(2, note, { plain: `${note}:` }),
      table(rows, columns(wires.unit)),
      ...(through === undefined ? [] : [paragraph(through)]),
    ];
  });
  const loose = paragraph('?: nothing wired before leads to this core.', { close: true });
  return [
    ...sections,
    paragraph(strips(wires.unit)),
    methodList(wires, methods),
    ...(wires.wires.some((r) => r.loose) ? [loose] : []),
  ];
}

/** The lists asked for, one after the other. */
export function wireListDocument(
  wires: WireList,
  title: string,
  words: WireListWords,
  parts: readonly WireListPart[],
): Block[] {
  return [
    heading(1, `Wire list of ${title}`),
    ...toldBlocks(wires.check),
    ...(parts.includes('wires') ? wireBlocks(wires, words) : []),
    ...(parts.includes('cuts') ? cutBlocks(wires) : []),
    ...(parts.includes('labels') ? labelBlocks(wires) : []),
  ];
}

/** One list with every figure in a column of its own; lengths in m, strips in mm, and as the plan has them where that is feet. */
export function wireListTable(wires: WireList, part: WireListPart): Block[] {
  return [{ wires: wireTable, cuts: cutTable, labels: labelTable }[part](wires)];
}

function wireTable(wires: WireList): Block {
  const labels = new Map(wires.labels.map((l) => [`${l.wire}/${l.end}`, l.text]));
  const feet = wires.unit === 'ft';
  const inches = (mm: number | null, words: (mm: number) => string) => (mm === null ? '' : words(mm));
  const end = (which: 'from' | 'to'): ColumnOf<WireRow>[] => [
    { head: `${which} joined by`, of: (r) => r[which].method },
    { head: `${which} strip mm`, of: (r) => `${r[which].strip ?? ''}` },
    ...(feet ? [{ head: `${which} strip in`, of: (r: WireRow) => inches(r[which].strip, sixteenths) }] : []),
    { head: `${which} sheath mm`, of: (r) => `${r[which].sheath ?? ''}` },
    ...(feet
      ? [{ head: `${which} sheath in`, of: (r: WireRow) => inches(r[which].sheath, halfInches) }]
      : []),
    { head: `${which} ferrule`, of: (r) => (r[which].ferrule ? 'yes' : 'no') },
  ];
  return table(wires.wires, [
    { head: 'number', of: (r) => `${r.number}` },
    { head: 'section', of: (r) => r.section },
    { head: 'from', of: (r) => r.from.terminal },
    { head: 'to', of: (r) => r.to.terminal },
    { head: 'colour', of: (r) => r.colour ?? 'bare link' },
    { head: 'gauge', of: (r) => r.gauge ?? '' },
    { head: 'cable', of: (r) => r.cable ?? '' },
    { head: 'length m', of: (r) => (r.length === null ? '' : `${r.length}`) },
    ...(feet ? [{ head: 'length', of: (r: WireRow) => cutWords(r.length, r.unit) }] : []),
    { head: 'run', of: (r) => r.mark },
    { head: 'name', of: (r) => r.name ?? '' },
    { head: 'route', of: (r) => r.route ?? '' },
    { head: 'loose', of: (r) => (r.loose ? 'yes' : 'no') },
    { head: 'by way of', of: overloadWords },
    { head: 'lands on', of: (r) => r.overload?.lands ?? '' },
    { head: 'in place of', of: (r) => (r.overload === null ? '' : r[r.overload.end].terminal) },
    ...end('from'),
    ...end('to'),
    { head: 'label from', of: (r) => labels.get(`${r.number}/from`) ?? '' },
    { head: 'label to', of: (r) => labels.get(`${r.number}/to`) ?? '' },
  ]);
}
