/** The repair that a page shows at work, and what stays open with it. */
import { behindVerdict } from '../../findings/report-model.ts';
import { verdictLine } from '../../findings/report-sentences.ts';
import { list } from '../../report/blocks.ts';
import { asHtml } from '../../report/forms/html.ts';
import { xml } from '../../text/xml.ts';
import type { PageParts } from './parts.ts';

/** Messages of what is still open that are told beside the switch. */
const MOST_OPEN = 5;

/** What was done in the mended plan, and what the check says of it. */
export function mendingHtml({ mended }: PageParts): string {
  if (mended === undefined) return '';
  const { repair, report, findings } = mended;
  const grave = behindVerdict(report);
  const open = findings.slice(0, MOST_OPEN);
  const more = findings.length - open.length;
  const items = open.map((f) => `${f.severity.toUpperCase()}: ${f.message}`);
  const still =
    findings.length === 0
      ? '<p>Nothing is left that the check speaks of.</p>'
      : `<p>${grave.length === 0 ? 'Still open, though none of it fails the plan:' : 'Still open:'}</p>
${asHtml([list('dash', [...items, ...(more > 0 ? [`and ${more} more, below`] : [])])])}`;
  return `<div class="mending"><h3>As mended</h3>
<p>A repair was found for this plan as it is drawn, the first that <code>pullin mend</code> tells:</p>
${asHtml([list('number', [...repair.words])])}
<p>The plan with it was checked again in whole. ${xml(verdictLine(report))}</p>
${still}
<p>The plan's file, and whatever is built, stay as drawn until somebody moves these cores.</p></div>`;
}
