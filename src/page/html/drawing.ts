/** The drawing on a page: contacts in both states for the script to choose from, and places to tap. */

import { numbered } from '../../draw/finding-marks.ts';
import { num } from '../../draw/strokes.ts';
import { xml } from '../../text/xml.ts';
import type { As, PageParts, Version } from './parts.ts';
import { ofEach } from './versions.ts';

export function drawingHtml(parts: PageParts): string {
  const { drawn, mended } = parts;
  const taps = drawn.circuit.inputs.length > 0;
  const marked = numbered(drawn.report.findings).length > 0;
  return `<div class="picture"><h2 id="h-drawing">Drawing</h2>
<details><summary>How to read it</summary>
<p>Heavy lines carry volts; a filled coil has pulled in, a filled lamp is lit, a filled machine runs. Contacts are drawn as they stand.${taps ? ' Tap a gate to move it.' : ''} A wide drawing scrolls sideways.${marked ? ' A framed !1 belongs to the finding with that mark; tap it, or a part or a core that a finding speaks of, to read the finding.' : ' Tap a part or a core that a finding speaks of to read the finding.'} With the keyboard, the arrow keys go from one of these to the next.${mended === undefined ? '' : ' A grey band lies along the cores that the repair moves.'}</p></details>
${ofEach(parts, sheetHtml)}</div>`;
}

function sheetHtml({ plan, drawing, svg }: Version, as: As): string {
  const flags = drawing.labels
    .filter((l) => l.what === 'finding')
    .map(
      ({ of, x, y, width, height }) =>
        `<rect class="flag" data-flag="${xml(of)}" x="${num(x - 1)}" y="${num(y - 1)}" width="${num(width + 2)}" height="${num(height + 2)}"/>`,
    );
  const [width, height] = [num(drawing.width), num(drawing.height)];
  const label = as === 'mended' ? 'Circuit as mended' : 'Circuit';
  // What is drawn is for eyes; what can be pressed has names of its own.
  return `<div class="scroll sheet" role="region" aria-labelledby="h-drawing" tabindex="0">
<svg xmlns="http://www.w3.org/2000/svg" role="group" aria-label="${label} of ${xml(plan.title)}" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">
<g class="halos"></g>
<g aria-hidden="true">${svg}</g>
<g class="taps" aria-hidden="true"></g>
<g class="hits">${flags.join('')}</g>
</svg></div>`;
}
