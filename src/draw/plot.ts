/** The volts at a coil against the distance of its gates, a line for each gauge, as one SVG for a sheet of A4 on its side. */
import type { Plot, PlotPoint } from '../lists/size/size-model.ts';
import { FOOT, type LengthUnit } from '../text/lengths.ts';
import { rounded } from '../text/numbers.ts';
import { xml } from '../text/xml.ts';
import { num } from './strokes.ts';

export interface PlotInput {
  readonly plot: Plot;
  readonly unit: LengthUnit;
  readonly title: string;
  /** what the check says of the plan, in a line; undefined where it passes */
  readonly told?: string | undefined;
}

/** Points (1/72 in) of the sheet, and of the field that the lines are drawn in. */
const SHEET = { width: 842, height: 595 };
const FIELD = { left: 70, right: 742, top: 92, bottom: 470 };
/** Sizes of letters, points. */
const WORDS = { title: 15, plain: 10, small: 9 };
/** Points from one label to the next. */
const APART = 12;
/** Strokes of lines, so that grey paper tells them apart: dashes, and the width of the plan's own. */
const DASHES = ['7 3', '2 2.5', '11 3 2 3', '5 2 1.5 2 1.5 2', '14 4', '1.2 3.2', '9 2 3 2', '4 4'];
/** Gates that get a name; of more, only what is far enough from the one before. */
const LEAST_GAP = 11;

interface Scale {
  readonly x: (metres: number) => number;
  readonly y: (volts: number) => number;
  readonly ticksX: readonly number[];
  readonly ticksY: readonly number[];
}

/** Round steps of about so many to a stretch. */
function ticks(from: number, to: number, about: number): number[] {
  const raw = (to - from) / about;
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = [1, 2, 5, 10].map((m) => m * power).find((s) => s >= raw * (1 - 1e-9)) ?? 10 * power;
  const first = Math.ceil(from / step - 1e-9);
  const count = Math.floor(to / step + 1e-9) - first + 1;
  return Array.from({ length: Math.max(0, Math.min(count, 60)) }, (_, i) =>
    Number(((first + i) * step).toPrecision(12)),
  );
}

function scaleOf({ plot, unit }: PlotInput): Scale {
  const points = plot.lines.flatMap((l) => l.points);
  const metres = Math.max(1e-3, ...points.map((p) => p.metres));
  const volts = [plot.pullIn, ...points.flatMap((p) => [p.least, p.read ?? p.least])];
  const [low, high] = [Math.min(...volts), Math.max(...volts)];
  const room = Math.max((high - low) * 0.08, high * 0.005, 1e-3);
  const [bottom, top] = [Math.max(0, low - room), high + room];
  const per = unit === 'ft' ? FOOT : 1;
  return {
    x: (m) => FIELD.left + (m / metres) * (FIELD.right - FIELD.left),
    y: (v) => FIELD.bottom - ((v - bottom) / (top - bottom)) * (FIELD.bottom - FIELD.top),
    ticksX: ticks(0, metres / per, 8),
    ticksY: ticks(bottom, top, 7),
  };
}

function text(x: number, y: number, words: string, size: number, more = ''): string {
  return `<text x="${num(x)}" y="${num(y)}" font-size="${size}"${more}>${xml(words)}</text>`;
}

const path = (points: readonly PlotPoint[], { x, y }: Scale): string =>
  points.map((p, i) => `${i === 0 ? 'M' : 'L'}${num(x(p.metres))} ${num(y(p.least))}`).join('');

function axes({ plot, unit }: PlotInput, { x, y, ticksX, ticksY }: Scale): string {
  const per = unit === 'ft' ? FOOT : 1;
  const { left, right, top, bottom } = FIELD;
  const grid = [
    ...ticksX.map((t) => `M${num(x(t * per))} ${top}V${bottom}`),
    ...ticksY.map((t) => `M${left} ${num(y(t))}H${right}`),
  ].join('');
  const names = [
    ...ticksX.map((t) => text(x(t * per), bottom + 16, `${t}`, WORDS.plain, ' text-anchor="middle"')),
    ...ticksY.map((t) => text(left - 7, y(t) + 3.5, `${t}`, WORDS.plain, ' text-anchor="end"')),
  ];
  const middle = (top + bottom) / 2;
  return [
    `<path class="grid" d="${grid}" stroke="#bbb" stroke-width="0.5" fill="none"/>`,
    `<path d="M${left} ${top}V${bottom}H${right}" stroke="#000" fill="none"/>`,
    ...names,
    text(
      (left + right) / 2,
      bottom + 34,
      `${unit} of cable from ${plot.source} to the gate`,
      WORDS.plain,
      ' text-anchor="middle"',
    ),
    text(
      26,
      middle,
      `V at the coil of ${plot.coil}`,
      WORDS.plain,
      ` text-anchor="middle" transform="rotate(-90 26 ${num(middle)})"`,
    ),
  ].join('\n');
}

interface Label {
  readonly at: number;
  readonly words: string;
  readonly bold: boolean;
}

/** Labels at the right end, pushed apart so that none covers another. */
function labelsOf(labels: readonly Label[]): string {
  const order = [...labels].sort((a, b) => a.at - b.at);
  const placed: number[] = [];
  for (const { at } of order) placed.push(Math.max(at, (placed.at(-1) ?? -Infinity) + APART));
  const over = (placed.at(-1) ?? 0) - (FIELD.bottom - 2);
  if (over > 0)
    for (let i = placed.length - 1, most = FIELD.bottom - 2; i >= 0; i--, most -= APART)
      placed[i] = Math.min(placed[i]!, most);
  return order
    .map(({ at, words, bold }, i) => {
      const y = placed[i]!;
      const lead = `<path d="M${FIELD.right} ${num(at)}L${FIELD.right + 10} ${num(y)}" stroke="#000" stroke-width="0.6" fill="none"/>`;
      const weight = bold ? ' font-weight="bold"' : '';
      return `${lead}${text(FIELD.right + 13, y + 3.4, words, WORDS.plain, weight)}`;
    })
    .join('\n');
}

function linesOf({ plot }: PlotInput, scale: Scale): string {
  let dashed = 0;
  const drawn = plot.lines.map(({ gauge, own, points }) => {
    const look = own
      ? ' stroke-width="2.4"'
      : ` stroke-width="1.3" stroke-dasharray="${DASHES[dashed++ % DASHES.length]}"`;
    return `<path class="gauge" data-gauge="${xml(gauge)}"${look} d="${path(points, scale)}" stroke="#000" fill="none"/>`;
  });
  const need = scale.y(plot.pullIn);
  const ends = plot.lines.flatMap(({ gauge, own, points }): Label[] => {
    const last = points.at(-1);
    return last === undefined ? [] : [{ at: scale.y(last.least), words: gauge, bold: own }];
  });
  return [
    `<path class="pull-in" d="M${FIELD.left} ${num(need)}H${FIELD.right}" stroke="#000" stroke-width="3.4"/>`,
    ...drawn,
    labelsOf(ends),
    text(
      FIELD.left + 6,
      need + 13,
      `${plot.coil}, warm, needs ${rounded(plot.pullIn, 4)} V to pull in`,
      WORDS.plain,
      ' font-weight="bold"',
    ),
  ].join('\n');
}

function gatesOf({ plot }: PlotInput, { x, y }: Scale): string {
  const own = plot.lines.find((l) => l.own)?.points.filter((p) => p.gate !== null) ?? [];
  let last = -Infinity;
  const marks = own.map((p) => {
    const at = x(p.metres);
    const named = at - last >= LEAST_GAP;
    if (named) last = at;
    const dot = `<circle class="gate" data-gate="${xml(p.gate!)}" cx="${num(at)}" cy="${num(y(p.least))}" r="3.4"/>`;
    const read =
      p.read === null
        ? ''
        : `<circle class="read" cx="${num(at)}" cy="${num(y(p.read))}" r="3.4" fill="#fff" stroke="#000"/>`;
    const name = named
      ? text(
          at + 3,
          FIELD.top - 6,
          p.gate!,
          WORDS.small,
          ` transform="rotate(-35 ${num(at + 3)} ${FIELD.top - 6})"`,
        )
      : '';
    const stem = named
      ? `<path d="M${num(at)} ${FIELD.top - 4}V${num(y(p.read ?? p.least))}" stroke="#000" stroke-width="0.5"/>`
      : '';
    return `${stem}${dot}${read}${name}`;
  });
  return marks.join('\n');
}

/** Lines of words below the field. */
function footOf({ plot, told }: PlotInput): string {
  const own = plot.lines.find((l) => l.own);
  const lines = [
    `Lines: the least volts over states and tolerances, all wire of the loop in one gauge; beyond ${plot.farthest}, with its last run longer.`,
    own === undefined
      ? 'The loop of the plan is of several gauges.'
      : `Thick line: ${own.gauge}, as in the plan. Black dots: its gates at worst. White dots: what a meter reads there with all as printed at 20 °C.`,
    ...(told === undefined ? [] : [told]),
    'Volts alone: wire, contacts and supply have limits of their own. Not an approval; local code and a licensed electrician have the last word.',
  ];
  return lines.map((words, i) => text(FIELD.left, FIELD.bottom + 58 + i * 14, words, WORDS.small)).join('\n');
}

/** Writes the sheet. */
export function plotSvg(input: PlotInput): string {
  const scale = scaleOf(input);
  const { width, height } = SHEET;
  const font = "font-family=\"ui-sans-serif, 'Liberation Sans', 'DejaVu Sans', Arial, sans-serif\"";
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="297mm" height="210mm" viewBox="0 0 ${width} ${height}" color="#000" ${font}>`,
    `<title>${xml(`Volts at ${input.plot.coil} by distance: ${input.title}`)}</title>`,
    '<rect width="100%" height="100%" fill="#fff"/>',
    text(
      FIELD.left,
      34,
      `Volts at the coil of ${input.plot.coil} by distance and gauge`,
      WORDS.title,
      ' font-weight="bold"',
    ),
    text(FIELD.left, 50, input.title, WORDS.plain),
    axes(input, scale),
    linesOf(input, scale),
    gatesOf(input, scale),
    footOf(input),
    '</svg>',
    '',
  ].join('\n');
}
