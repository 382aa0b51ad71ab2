/** The plots of coil volts on the printed sheet and on the page. */
import { coilVoltsSvg } from '../draw/plots/coil-volts.ts';
import type { CoilFigures } from '../findings/report-model.ts';
import { push } from '../plan/map-entries.ts';
import { heading, paragraph } from './blocks.ts';
import { asHtml } from './forms/html.ts';

/** Coils that are plotted, and gates of each; of more, those with the least to spare. */
const MOST_COILS = 4;
const MOST_GATES = 24;
/** px, 90.5 mm: two plots stand side by side on a page. */
const WIDTH = 342;

const NOTE =
  'Each gate open alone. Black dot: the least volts over states and tolerances, with warm copper. Ring: what a meter reads with all as printed, at 20 °C. Thick line: what the coil needs once it is warm.';

interface Known {
  readonly name: string;
  readonly least: number;
  readonly printed: number | null;
}

function nameOf({ gate, atRest }: CoilFigures): string {
  return gate ?? (atRest ? 'all at rest' : 'any gate');
}

/** Empty where no coil has volts that are known. */
export function voltPlots(coils: readonly CoilFigures[]): string {
  const byCoil = new Map<string, CoilFigures[]>();
  for (const row of coils) push(byCoil, row.relay, row);
  const spare = (rows: readonly CoilFigures[]) => Math.min(...rows.map((r) => r.margin ?? Infinity));
  const shown = [...byCoil].sort(([, a], [, b]) => spare(a) - spare(b)).slice(0, MOST_COILS);
  const plots = shown.flatMap(([coil, rows]) => {
    const known = rows.flatMap((row): Known[] =>
      row.volts.min === null ? [] : [{ name: nameOf(row), least: row.volts.min, printed: row.volts.nominal }],
    );
    const worst = new Set([...known].sort((a, b) => a.least - b.least).slice(0, MOST_GATES));
    const gates = known.filter((g) => worst.has(g));
    const needs = rows[0]!.pullIn;
    const svg = needs === null ? undefined : coilVoltsSvg({ coil, needs, gates }, WIDTH);
    if (svg === undefined) return [];
    const more = known.length - gates.length;
    const rest = more > 0 ? [paragraph(`And ${more} more, with as much or more.`)] : [];
    return [`<figure>${asHtml([heading(3, `Volts at the coil of ${coil}`), ...rest])}${svg}</figure>`];
  });
  if (plots.length === 0) return '';
  const left = byCoil.size - shown.length;
  const others = left > 0 ? ` ${left} more coils have as much to spare or more.` : '';
  return `<div class="plots">${plots.join('')}${asHtml([paragraph(NOTE + others)])}</div>`;
}
