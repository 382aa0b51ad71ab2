/** The drawing on a page: contacts in both states for the script to choose from, and places to tap. */

import { numbered } from '../../draw/finding-marks.ts';
import { num } from '../../draw/strokes.ts';
import { xml } from '../../text/xml.ts';
import type { PageParts } from './parts.ts';

/** px round a symbol that still count as tapping it. */
const REACH = 6;

export function drawingHtml({ plan, report, circuit, drawing, svg }: PageParts): string {
  const inputs = new Set(circuit.inputs.map((i) => i.part));
  const taps = drawing.symbols
    .filter((s) => inputs.has(s.part))
    .map(({ part, box }) => {
      const [x, y] = [num(box.x - REACH), num(box.y - REACH)];
      const [width, height] = [num(box.width + 2 * REACH), num(box.height + 2 * REACH)];
      return `<rect class="tap" data-tap="${xml(part)}" x="${x}" y="${y}" width="${width}" height="${height}"/>`;
    });
  const [width, height] = [num(drawing.width), num(drawing.height)];
  return `<h2 id="h-drawing">Drawing</h2>
<p>Heavy lines carry volts; a filled coil has pulled in, a filled lamp is lit, a filled machine runs. Contacts are drawn as they stand.${inputs.size === 0 ? '' : ' Tap a gate to move it.'} A wide drawing scrolls sideways.${numbered(report.findings).length === 0 ? '' : ' A framed !1 belongs to the finding with that mark.'}</p>
<div class="scroll sheet" role="region" aria-labelledby="h-drawing" tabindex="0">
<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label="Circuit of ${xml(plan.title)}" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">
${svg}
<g class="taps">${taps.join('')}</g>
</svg></div>`;
}
