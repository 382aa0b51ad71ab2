/** The coil table of a report: for every relay a line a gate, with the volts its coil gets. */
import type { CoilFigures } from '../findings/report-model.ts';
import { rounded } from '../text/numbers.ts';
import { columns, pad } from '../text/wrap.ts';

/** A relay with more gates than this shows those with the least to spare. */
const MOST_ROWS = 12;
const SHOWN = 5;
const GAP = '  ';
const HEAD = ['opened', 'loop', 'ohms', 'least', 'printed', 'most', 'to spare'] as const;

/** `10.9`, three or four figures as the column wants; a dash where nothing is known. */
function figure(value: number | null, unit = '', digits = 3): string {
  if (value === null) return '-';
  return `${rounded(value, digits)}${unit}`;
}

const line = (row: CoilFigures): string[] => [
  row.gate ?? 'any gate',
  figure(row.metres, ' m'),
  figure(row.ohms),
  figure(row.volts.min, ' V', 4),
  figure(row.volts.nominal, ' V', 4),
  figure(row.volts.max, ' V', 4),
  row.margin === null ? '-' : `${row.margin < 0 ? '' : '+'}${figure(row.margin * 100, ' %', 2)}`,
];

const spare = (row: CoilFigures): number => row.margin ?? Number.POSITIVE_INFINITY;

/**
 * Lines of text, none wider than `width` where the names allow; the row with the least to spare is marked with `>`.
 * Empty where no coil is fed.
 */
export function coilLines(coils: readonly CoilFigures[], clean: (text: string) => string): string[] {
  const relays = [...new Set(coils.map((c) => c.relay))];
  return relays.flatMap((relay) =>
    block(
      coils.filter((c) => c.relay === relay),
      clean,
    ),
  );
}

function block(rows: readonly CoilFigures[], clean: (text: string) => string): string[] {
  const least = (row: CoilFigures) => row.volts.min ?? Number.POSITIVE_INFINITY;
  const order = [...rows].sort((x, y) => spare(x) - spare(y) || least(x) - least(y));
  const worst = order[0]!;
  const shown = rows.length > MOST_ROWS ? rows.filter((r) => order.indexOf(r) < SHOWN) : rows;
  const cells = [[...HEAD], ...shown.map(line)].map((cellsOf) => cellsOf.map(clean));
  const widths = HEAD.map((_, i) => Math.max(...cells.map((c) => columns(c[i]!))));
  const lines = cells.map((c, k) => {
    const mark = k > 0 && shown[k - 1] === worst && rows.length > 1 ? '> ' : '  ';
    const text = c.map((cell, i) =>
      i === 0 ? pad(cell, widths[0]!) : ' '.repeat(widths[i]! - columns(cell)) + cell,
    );
    return `${mark}${text.join(GAP)}`.trimEnd();
  });
  const { pullIn, dropOut } = worst;
  const title = `volts at the coil of ${worst.relay}; it needs ${figure(pullIn, ' V', 4)} to pull in and lets go below ${figure(dropOut, ' V', 3)}`;
  const more = rows.length - shown.length;
  return [
    clean(title),
    ...lines,
    ...(more > 0 ? [`  and ${more} more, each with as much to spare or more`] : []),
    clean(`  least: ${worst.corner}`),
  ];
}
