/** A drawing as SVG: the figure itself, for a sheet or a page. Black on white; what is live is drawn heavier. */
import type { Plan } from '../plan/plan.ts';
import { xml } from '../text/xml.ts';
import type { Shown } from './current-shown.ts';
import type { CutEnd } from './cut-sheets.ts';
import type { Drawing, DrawnCore, DrawnSymbol, Label, Point } from './drawing.ts';
import { fontSize, SMALL_TYPE } from './layout/measures.ts';
import { num } from './strokes.ts';
import { figureSvg } from './symbols/figure-svg.ts';

export interface SvgOptions {
  readonly plan: Plan;
  readonly shown: Shown;
  /** true: contacts in both states, and nothing live, for a page that chooses; figures count from their own corner */
  readonly both?: boolean;
}

/** The style that a drawing needs, as rules of CSS; everything but weights of live conductors works without it. */
export const FONT =
  "font-family=\"ui-monospace, 'Liberation Mono', 'DejaVu Sans Mono', Menlo, Consolas, monospace\"";

/** The content of an `<svg>` element whose viewBox is the size of the drawing. */
export function drawingSvg(drawing: Drawing, options: SvgOptions): string {
  const cores = [...drawing.cores].map((core) => coreSvg(core, options));
  const symbols = drawing.symbols.map((s) => symbolSvg(s, options));
  const dots = drawing.dots.map((p) => `<circle cx="${num(p.x)}" cy="${num(p.y)}" r="2.6"/>`);
  return [
    barrierSvg(drawing),
    `<g class="cores" fill="none" stroke="currentColor" stroke-width="1.3" stroke-linejoin="round">${cores.join('')}</g>`,
    `<g class="dots" fill="currentColor" stroke="none">${dots.join('')}</g>`,
    `<g class="symbols" fill="none" stroke="currentColor" stroke-width="1.5">${symbols.join('')}</g>`,
    `<g class="words" fill="currentColor" stroke="none">${drawing.labels.map(labelSvg).join('')}</g>`,
  ].join('\n');
}

function coreSvg(core: DrawnCore, { shown, both }: SvgOptions): string {
  const d = core.path.map(
    (p, i) =>
      `${i === 0 ? 'M' : i > 0 && core.path[i - 1]!.y === p.y ? 'H' : 'V'}${i === 0 ? `${num(p.x)} ${num(p.y)}` : num(core.path[i - 1]!.y === p.y ? p.x : p.y)}`,
  );
  const live = !both && shown.live(core);
  const look = live ? ' stroke-width="3.2"' : core.link ? ' stroke-dasharray="5 2"' : '';
  return `<path class="core${live ? ' live' : ''}" data-core="${core.id}"${look} d="${d.join('')}"/>`;
}

function symbolSvg(symbol: DrawnSymbol, { plan, shown, both }: SvgOptions): string {
  const part = plan.parts.get(symbol.part)!;
  const own = (name: string) => (name === '' ? symbol.part : `${symbol.part}.${name}`);
  const { x, y } = symbol.box;
  const figure = figureSvg(both ? movedBy(symbol, -x, -y) : symbol, part, {
    practice: plan.practice,
    made: (common, other) => shown.made({ common: own(common), other: own(other), sign: 'make' }),
    ...(both ? { both } : {}),
  });
  const corner = both ? ` transform="translate(${num(x)} ${num(y)})"` : '';
  return `<g data-part="${xml(symbol.part)}"${corner}>${figure}</g>`;
}

function movedBy(symbol: DrawnSymbol, dx: number, dy: number): DrawnSymbol {
  const at = <T extends Point>(p: T): T => ({ ...p, x: p.x + dx, y: p.y + dy });
  return {
    ...symbol,
    box: at(symbol.box),
    terminals: symbol.terminals.map((t) => ({ ...t, ports: t.ports.map(at) })),
    plugged: symbol.plugged.map((p) => ({ ...p, box: at(p.box) })),
  };
}

/** Baseline of letters in a box of one line: what hangs below it takes about a quarter. */
const BASELINE = 0.78;

function labelSvg(label: Label): string {
  const weight = label.what === 'name' || label.what === 'finding' ? ' font-weight="bold"' : '';
  const size = fontSize(label.what);
  const y = label.y + (label.height - size) / 2 + size * BASELINE;
  const text = `<text x="${num(label.x + 1)}" y="${num(y)}" font-size="${num(size)}"${weight}>${xml(label.text)}</text>`;
  if (label.what !== 'finding') return text;
  // A frame makes a mark of a finding stand out without colour.
  const box = `x="${num(label.x - 1)}" y="${num(label.y)}" width="${num(label.width)}" height="${num(label.height)}"`;
  return `<rect class="finding" ${box} fill="none" stroke="currentColor"/>${text}`;
}

/** px of the arrow at a cut. */
const ARROW = 8;

/** The end of a conductor at a cut: an arrow, and along it where the conductor goes on. */
export function endSvg({ x, y, way }: CutEnd, where: string): string {
  const sign = way === 'down' ? 1 : -1;
  const tip = y + sign * ARROW;
  const head = `M${num(x - 3)} ${num(tip - sign * 6)}L${num(x)} ${num(tip)}L${num(x + 3)} ${num(tip - sign * 6)}`;
  const path = `<path class="end" d="M${num(x)} ${num(y)}V${num(tip)}${head}" fill="none" stroke="currentColor" stroke-width="1.3"/>`;
  const baseline = num(x + SMALL_TYPE * 0.35);
  const anchor = way === 'down' ? 'end' : 'start';
  const start = num(tip + sign * 3);
  return `${path}<text transform="translate(${baseline} ${start}) rotate(-90)" text-anchor="${anchor}" font-size="${num(SMALL_TYPE)}" fill="currentColor" stroke="none">${xml(where)}</text>`;
}

function barrierSvg(drawing: Drawing): string {
  if (drawing.barrier === undefined) return '';
  const y = num(drawing.barrier);
  return `<path class="barrier" d="M0 ${y}H${num(drawing.width)}" fill="none" stroke="currentColor" stroke-width="2.5" stroke-dasharray="14 4 3 4"/>`;
}
