/** The coil tables of a report: the gate that leaves each coil the least, or on request every gate of every coil. */
import { bySpare } from '../findings/coil/by-spare.ts';
import type { CoilFigures } from '../findings/report-model.ts';
import { push } from '../plan/map-entries.ts';
import { figureOfLength, type LengthUnit } from '../text/lengths.ts';
import { rounded } from '../text/numbers.ts';
import { type Block, type ColumnOf, list, paragraph, table } from './blocks.ts';

/** Of more coils than this, those with the least to spare are shown. */
const MOST_COILS = 12;
const SHOWN = 5;
/** Characters of a gate's name, or of several together, above which the columns move up to each other. */
const LONG_NAME = 20;

/** `10.9`, three or four figures as the column wants; a dash where nothing is known. */
function figure(value: number | null, unit = '', digits = 3): string {
  if (value === null) return '-';
  return `${rounded(value, digits)}${unit}`;
}

function spareWords({ margin }: CoilFigures): string {
  return margin === null ? '-' : `${margin < 0 ? '' : '+'}${figure(margin * 100, ' %', 2)}`;
}

type Column = ColumnOf<CoilFigures>;

const volts = (head: string, of: (c: CoilFigures) => number | null): Column => ({
  head,
  right: true,
  of: (c) => figure(of(c), ' V', 4),
});

const opened: Column = {
  head: 'opened',
  always: true,
  of: (c) => c.gate ?? (c.atRest ? 'none' : 'any gate'),
};
const loop = (unit: LengthUnit): Column => ({
  head: 'loop',
  right: true,
  of: (c) => (c.metres === null ? '-' : figureOfLength(c.metres, unit)),
});
const ohms: Column = { head: 'ohms', right: true, of: (c) => figure(c.ohms) };
const least = volts('least', (c) => c.volts.min);
const printed = volts('printed', (c) => c.volts.nominal);
const most = volts('most', (c) => c.volts.max);
const toSpare: Column = { head: 'to spare', right: true, of: spareWords };

const ofOneCoil = (unit: LengthUnit): readonly Column[] => [
  opened,
  loop(unit),
  ohms,
  least,
  printed,
  most,
  toSpare,
];

const ofSeveral = (unit: LengthUnit): readonly Column[] => [
  { head: 'coil', always: true, of: (c) => c.relay },
  opened,
  loop(unit),
  volts('needs', (c) => c.pullIn),
  least,
  most,
  toSpare,
];

interface CoilLook {
  readonly unit: LengthUnit;
  readonly indent: number;
  /** every gate of every coil, and not the worst of each alone */
  readonly all: boolean;
}

function grouped(coils: readonly CoilFigures[]): CoilFigures[][] {
  const byRelay = new Map<string, CoilFigures[]>();
  for (const row of coils) push(byRelay, row.relay, row);
  return [...byRelay.values()];
}

/** Empty where no coil is fed. */
export function coilBlocks(coils: readonly CoilFigures[], look: CoilLook): Block[] {
  const byRelay = grouped(coils);
  if (look.all) return byRelay.flatMap((rows, i) => everyGate(rows, look, i > 0));
  return byRelay.length > 1 ? worstOfEach(byRelay, look) : byRelay.flatMap((rows) => worstGate(rows, look));
}

const others = (more: number, what: string): string[] =>
  more > 0 ? [`and ${more} more ${what}, with as much to spare or more (--all lists them)`] : [];

function headOf(row: CoilFigures): string {
  return `volts at the coil of ${row.relay}; it needs ${figure(row.pullIn, ' V', 4)} and lets go below ${figure(row.dropOut, ' V', 3)}`;
}

function worstGate(rows: readonly CoilFigures[], { unit, indent }: CoilLook): Block[] {
  const worst = bySpare(rows)[0]!;
  const more = rows.length - 1;
  return [
    paragraph(headOf(worst), { indent }),
    table([worst], ofOneCoil(unit), {
      indent,
      close: true,
      gutter: true,
      gap: gapFor([worst]),
      tooWide: 'lines',
    }),
    list('indent', [...others(more, more === 1 ? 'gate' : 'gates'), `least: ${worst.corner}`], {
      indent,
      close: true,
    }),
  ];
}

/** The row with the least to spare is marked with `>`. */
function worstOfEach(byRelay: readonly (readonly CoilFigures[])[], { unit, indent }: CoilLook): Block[] {
  const each = byRelay.map((rows) => bySpare(rows)[0]!);
  const order = bySpare(each);
  const worst = order[0]!;
  const kept = new Set(order.slice(0, each.length > MOST_COILS ? SHOWN : MOST_COILS));
  const shown = each.filter((row) => kept.has(row));
  return [
    paragraph('volts at each coil with the gate that leaves it the least', { indent }),
    marked(shown, worst, ofSeveral(unit), indent),
    list(
      'indent',
      [...others(each.length - shown.length, 'coils'), `least of ${worst.relay}: ${worst.corner}`],
      {
        indent,
        close: true,
      },
    ),
  ];
}

/** The row with the least to spare is marked with `>`. */
function everyGate(rows: readonly CoilFigures[], { unit, indent }: CoilLook, close: boolean): Block[] {
  const worst = bySpare(rows)[0]!;
  return [
    paragraph(headOf(worst), { indent, close }),
    marked(rows, worst, ofOneCoil(unit), indent),
    list('indent', [`least: ${worst.corner}`], { indent, close: true }),
  ];
}

function marked(
  rows: readonly CoilFigures[],
  worst: CoilFigures,
  columns: readonly Column[],
  indent: number,
): Block {
  return table(
    rows,
    columns,
    { indent, close: true, gutter: true, gap: gapFor(rows), tooWide: 'lines' },
    (row) => (row === worst && rows.length > 1 ? { mark: '>' } : {}),
  );
}

const gapFor = (rows: readonly CoilFigures[]): number =>
  rows.some((r) => (r.gate?.length ?? 0) > LONG_NAME) ? 1 : 2;
