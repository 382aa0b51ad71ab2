/** The buttons that move gates, switches, selectors and cut-outs, and what is seen at once when one is pressed. */

import { isOwn } from '../../circuit/positions.ts';
import { verdictLine } from '../../findings/report-sentences.ts';
import { xml } from '../../text/xml.ts';
import type { Group, PageParts, Setting } from './parts.ts';

const INTRO =
  'Open a gate and see whether the coil pulls in and the load starts: press a button to move what it names, and again to move it back.';
const SPRINGS = 'Push buttons spring back at the machine; here they stay pressed until you press them again.';

export function controlsHtml(parts: PageParts): string {
  const { groups, drawn } = parts;
  const springs = drawn.circuit.inputs.some((i) => i.kind === 'button') ? ` ${SPRINGS}` : '';
  return `<h2 id="h-try">Try it</h2>
<p>${groups.length === 0 ? 'This plan has nothing to move by hand.' : INTRO + springs}</p>
<div id="answers">${switchHtml(parts)}${chipsHtml(parts)}
<div id="said" role="status" aria-live="polite" tabindex="0"></div></div>
${groups.map(groupHtml).join('\n')}
<div class="group"><button type="button" id="to-rest"><span class="name">Everything back to rest</span></button>
<button type="button" id="repower"><span class="name">Power off and on</span></button></div>`;
}

function switchHtml({ mended }: PageParts): string {
  if (mended === undefined) return '';
  const button = (as: string, words: string) =>
    `<button type="button" data-shows="${as}" aria-pressed="${as === 'drawn'}">${words}</button>`;
  return `<div class="switch" role="group" aria-label="Which plan is shown">${button('drawn', 'As drawn')}${button('mended', 'As mended')}</div>
<p data-as="mended">Mended in this page alone, and checked again. ${xml(verdictLine(mended.report))}</p>`;
}

/** A line of loads and coils, each with its state; pressing one shows it in the drawing. */
function chipsHtml({ drawn: { circuit }, targets }: PageParts): string {
  const relays = circuit.relays.filter(isOwn).map((r) => r.part);
  const parts = [...relays, ...targets.filter((t) => !relays.includes(t))];
  if (parts.length === 0) return '';
  const chips = parts.map(
    (part) =>
      `<li><button type="button" class="chip" data-chip="${xml(part)}"><span class="name">${xml(part)}</span> <span class="word"></span></button></li>`,
  );
  return `<ul class="chips" aria-label="Coils and loads now; press one to see it in the drawing">${chips.join('')}</ul>`;
}

/** Buttons of a group that all stand in view; more of them scroll in a box of their own. */
const MANY = 24;

function groupHtml({ title, part, settings }: Group): string {
  const buttons = settings.map((s) => buttonHtml(s, part)).join('\n');
  return `<div class="group${settings.length > MANY ? ' many' : ''}" role="group" aria-label="${xml(title)}"><h3>${xml(title)}</h3>
${buttons}</div>`;
}

/** The state is told by `aria-pressed`; the word that shows it is for eyes. */
function buttonHtml({ input, name, on, off }: Setting, part: string | undefined): string {
  const what = input === undefined ? `data-rest="${xml(part ?? '')}"` : `data-input="${input}"`;
  const words = `data-on="${xml(on)}" data-off="${xml(off)}"`;
  return `<button type="button" ${what} ${words} aria-pressed="${input === undefined}"><span class="name">${xml(name)}</span> <span class="word" aria-hidden="true">${xml(input === undefined ? on : off)}</span></button>`;
}
