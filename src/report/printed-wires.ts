/** The wire list, the cut list and the labels as they are printed: cable by cable, with boxes to tick. */
import type { WireEnd, WireList, WireRow } from '../lists/wirelist-model.ts';
import { push } from '../plan/map-entries.ts';
import { cutWords, halfInches, type LengthUnit, sixteenths } from '../text/lengths.ts';
import { type Block, type ColumnOf, heading, list, paragraph, table } from './blocks.ts';
import { cableWords, lengthsNote } from './cut-list.ts';
import { LABELS } from './labels.ts';
import {
  ELECTRICIAN,
  methodList,
  overloadNote,
  overloadWords,
  SECTIONS,
  type WireListWords,
} from './wire-list.ts';

const NOTE =
  'Strip: how much insulation comes off; sheath: how much of the outer sheath. Common practice, no source; what the part itself prints counts.';
const INCHES = ' Inches to the nearest sixteenth, of sheath to the nearest half.';

/** `screw, strip 7 mm, ferrule`; a bare link is not stripped. */
function endWords({ method, strip, ferrule }: WireEnd, unit: LengthUnit): string {
  const off = strip === null ? '' : `strip ${unit === 'ft' ? `${sixteenths(strip)} in` : `${strip} mm`}`;
  return [method, off, ferrule ? 'ferrule' : ''].filter((w) => w !== '').join(', ');
}

/** `sheath off 100 mm at K1, 40 mm at bandsaw`, of all cores of a run. */
function sheathWords(rows: readonly WireRow[], unit: LengthUnit): string {
  const off = rows.flatMap(({ from, to }) =>
    [from, to].flatMap(({ part, sheath }) =>
      sheath === null ? [] : [`${unit === 'ft' ? `${halfInches(sheath)} in` : `${sheath} mm`} at ${part}`],
    ),
  );
  return off.length === 0 ? '' : `sheath off ${[...new Set(off)].join(', ')}`;
}

/** `Run 3: bell, 20 AWG; cut 4.4 m; sheath off 40 mm at planer`; empty for a link. */
function runWords(rows: readonly WireRow[], unit: LengthUnit): string {
  const row = rows[0]!;
  if (row.colour === null) return '';
  const cable = [row.cable ?? '', row.gauge === null || row.cable?.startsWith(row.gauge) ? '' : row.gauge];
  const cut = cutWords(row.length, row.unit);
  const about = [
    cable.filter((w) => w !== '').join(', '),
    cut === '' ? 'length not given' : `cut ${cut}`,
    sheathWords(rows, unit),
    row.name ?? '',
    row.route ?? '',
  ];
  return `Run ${row.mark}: ${about.filter((w) => w !== '').join('; ')}`;
}

const columns = (unit: LengthUnit): readonly ColumnOf<WireRow>[] => [
  { head: '', of: () => ({ box: 'tick' }) },
  { head: 'no', of: (r) => `${r.number}` },
  { head: 'colour', of: (r) => r.colour ?? 'bare link' },
  { head: 'from', of: (r) => r.from.terminal },
  { head: 'end', of: (r) => endWords(r.from, unit) },
  { head: 'to', of: (r) => r.to.terminal },
  { head: 'end', of: (r) => endWords(r.to, unit) },
  { head: 'by way of', of: overloadWords },
];

/** Both halves of the list, low voltage first, a line for each core under that of its cable. */
export function printedWires(wires: WireList, { methods, notes }: WireListWords): Block[] {
  const { unit } = wires;
  const sections = SECTIONS.flatMap(({ section, title }): Block[] => {
    const rows = wires.wires.filter((r) => r.section === section);
    if (rows.length === 0) return [];
    const through = overloadNote(rows);
    const runs = new Map<number, WireRow[]>();
    for (const row of rows) push(runs, row.run, row);
    return [
      heading(2, title),
      paragraph(section === 'mains' ? `${notes[section]}. ${ELECTRICIAN}` : `${notes[section]}.`),
      table(rows, columns(unit), { name: 'wires' }, (row) => {
        const own = runs.get(row.run)!;
        return own[0] === row ? { above: runWords(own, unit) } : {};
      }),
      ...(through === undefined ? [] : [paragraph(through)]),
    ];
  });
  return [...sections, paragraph(unit === 'ft' ? NOTE + INCHES : NOTE), methodList(wires, methods)];
}

/** Every piece under its cable. Nothing is said of reels: the printed sheet is made without them. */
export function printedCuts({ cuts, unit }: WireList): Block[] {
  const pieces = cuts.flatMap((of) => of.pieces.map((piece, i) => ({ of, piece, first: i === 0 })));
  const cells: ColumnOf<(typeof pieces)[number]>[] = [
    { head: '', of: () => ({ box: 'tick' }) },
    { head: 'cut', of: ({ piece }) => cutWords(piece.length, piece.unit) || 'length not given' },
    { head: 'run', of: ({ piece }) => piece.mark },
    { head: 'cores used', of: ({ piece }) => piece.colours.join(', ') },
    {
      head: 'where',
      of: ({ piece }) => [piece.name ?? '', piece.route ?? ''].filter((t) => t !== '').join(', '),
    },
  ];
  return [
    paragraph(lengthsNote(unit)),
    table(pieces, cells, { name: 'cuts' }, ({ of, first }) => (first ? { above: cableWords(of, unit) } : {})),
  ];
}

/** Boxes to cut out, and a bar by which to see that the printer has not shrunk them. */
export function printedLabels({ labels, unit }: WireList): Block[] {
  const bar = unit === 'ft' ? '2 in' : '50 mm';
  const size = unit === 'ft' ? '1 7/16 in by 5/16 in' : '36.5 mm by 8 mm';
  return [
    paragraph(LABELS),
    paragraph([
      `Cut out along the lines, fold round the core and tape over. Each is ${size}, if this bar is ${bar} long: `,
      { text: '', name: unit === 'ft' ? 'bar inches' : 'bar' },
      ' If it is not, print at 100 %.',
    ]),
    list(
      'indent',
      labels.map((l) => l.text),
      { name: 'labels' },
    ),
  ];
}
