/**
 * The page as a whole, one file of HTML that needs nothing from anywhere: this folder knows the markup of a page at rest,
 * and must not know what a move does.
 */
import { verdictLine } from '../../findings/report-sentences.ts';
import { xml } from '../../text/xml.ts';
import { controlsHtml } from './controls.ts';
import { drawingHtml } from './drawing.ts';
import { cautionsHtml, findingsHtml } from './findings.ts';
import type { PageAssets, PageParts } from './parts.ts';
import { stateHtml, truthHtml } from './tables.ts';
import { tagHtml } from './tags.ts';
import { voltsHtml } from './volts.ts';
import { wiresHtml } from './wires.ts';

/** What holds for every page. */
const CAUTION =
  'This page works out what the plan says, with the figures printed on the parts and everything at 20 °C. It cannot see your shop: what is built may differ. Unplug everything before you open a box.';
const TIMERS = 'Timers are shown as they stand once their time has run out.';

/** Script or style hold what would end their own elements. */
class MarkupInAssets extends Error {}

/** Throws an error when script or style would end their own elements. */
export function pageHtml(parts: PageParts, assets: PageAssets): string {
  const { plan, report } = parts.drawn;
  if (/<\/script|<!--/i.test(assets.script) || /<\/style/i.test(assets.style))
    throw new MarkupInAssets('script or style of the page hold markup');
  const hasTimer = [...plan.parts.values()].some((p) => p.kind === 'timer');
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${xml(assets.policy)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${xml(plan.title)}</title>
<style>${assets.style}</style>
</head>
<body data-shows="drawn">
<header>
<h1>${xml(plan.title)}</h1>
<p class="verdict ${report.verdict}">${parts.mended ? 'As drawn: ' : ''}${xml(verdictLine(report))}</p>
<p class="caution">${tagHtml('caution')} ${xml(CAUTION)}${hasTimer ? ` ${TIMERS}` : ''}</p>
<noscript><p class="verdict fail">Gates cannot be moved here: this page needs scripts, which are switched off.</p></noscript>
</header>
<main>
<section id="bench" aria-labelledby="h-try">
<div class="side">
${controlsHtml(parts)}
${stateHtml(parts)}
</div>
${drawingHtml(parts)}
${findingsHtml(parts)}
</section>
${truthHtml(parts)}
${voltsHtml(parts)}
${wiresHtml(parts)}
${cautionsHtml(parts)}
</main>
<script type="application/json" id="plan-data">${assets.data}</script>
<script>${assets.script}</script>
</body>
</html>
`;
}
