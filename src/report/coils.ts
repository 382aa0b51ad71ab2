/** The coil table of a report: for every relay a line a gate, with the volts its coil gets. */
import type { CoilFigures } from '../findings/report-model.ts';
import { figureOfLength, type LengthUnit } from '../text/lengths.ts';
import { rounded } from '../text/numbers.ts';
import { type Block, type ColumnOf, list, paragraph, table } from './blocks.ts';

/** A relay with more gates than this shows those with the least to spare. */
const MOST_ROWS = 12;
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

const columns = (unit: LengthUnit): readonly ColumnOf<CoilFigures>[] => [
  { head: 'opened', always: true, of: (c) => c.gate ?? (c.atRest ? 'none' : 'any gate') },
  { head: 'loop', right: true, of: (c) => (c.metres === null ? '-' : figureOfLength(c.metres, unit)) },
  { head: 'ohms', right: true, of: (c) => figure(c.ohms) },
  { head: 'least', right: true, of: (c) => figure(c.volts.min, ' V', 4) },
  { head: 'printed', right: true, of: (c) => figure(c.volts.nominal, ' V', 4) },
  { head: 'most', right: true, of: (c) => figure(c.volts.max, ' V', 4) },
  { head: 'to spare', right: true, of: spareWords },
];

/** The row with the least to spare is marked with `>`. Empty where no coil is fed. */
export function coilBlocks(coils: readonly CoilFigures[], unit: LengthUnit, indent: number): Block[] {
  const relays = [...new Set(coils.map((c) => c.relay))];
  return relays.flatMap((relay, i) =>
    relayBlocks(
      coils.filter((c) => c.relay === relay),
      unit,
      indent,
      i > 0,
    ),
  );
}

function relayBlocks(
  rows: readonly CoilFigures[],
  unit: LengthUnit,
  indent: number,
  close: boolean,
): Block[] {
  const spare = (row: CoilFigures) => row.margin ?? Number.POSITIVE_INFINITY;
  const least = (row: CoilFigures) => row.volts.min ?? Number.POSITIVE_INFINITY;
  const order = [...rows].sort((x, y) => spare(x) - spare(y) || least(x) - least(y));
  const worst = order[0]!;
  const shown = rows.length > MOST_ROWS ? rows.filter((r) => order.indexOf(r) < SHOWN) : rows;
  const more = rows.length - shown.length;
  const needs = `it needs ${figure(worst.pullIn, ' V', 4)} and lets go below ${figure(worst.dropOut, ' V', 3)}`;
  const below = [
    ...(more > 0 ? [`and ${more} more, each with as much to spare or more`] : []),
    `least: ${worst.corner}`,
  ];
  const gap = rows.some((r) => (r.gate?.length ?? 0) > LONG_NAME) ? 1 : 2;
  return [
    paragraph(`volts at the coil of ${worst.relay}; ${needs}`, { indent, close }),
    table(shown, columns(unit), { indent, close: true, gutter: true, gap, tooWide: 'lines' }, (row) =>
      row === worst && rows.length > 1 ? { mark: '>' } : {},
    ),
    list('indent', below, { indent, close: true }),
  ];
}
