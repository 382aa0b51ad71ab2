/** The buttons that move gates, switches, selectors and cut-outs, and the line that says what happens. */
import { xml } from '../../text/xml.ts';
import type { Group, PageParts, Setting } from './parts.ts';

const INTRO =
  'Open a gate and see whether the coil pulls in and the load starts: press a button to move what it names, and again to move it back.';
const SPRINGS = 'Push buttons spring back at the machine; here they stay pressed until you press them again.';

export function controlsHtml({ groups, circuit }: PageParts): string {
  const springs = circuit.inputs.some((i) => i.kind === 'button') ? ` ${SPRINGS}` : '';
  return `<h2 id="h-try">Try it</h2>
<p>${groups.length === 0 ? 'This plan has nothing to move by hand.' : INTRO + springs}</p>
${groups.map(groupHtml).join('\n')}
<div class="group"><button type="button" id="to-rest"><span class="name">Everything back to rest</span></button>
<button type="button" id="repower"><span class="name">Power off and on</span></button></div>
<div id="said" role="status" aria-live="polite" tabindex="0"></div>`;
}

function groupHtml({ title, part, settings }: Group): string {
  const buttons = settings.map((s) => buttonHtml(s, part)).join('\n');
  return `<div class="group" role="group" aria-label="${xml(title)}"><h3>${xml(title)}</h3>
${buttons}</div>`;
}

/** The state is told by `aria-pressed`; the word that shows it is for eyes. */
function buttonHtml({ input, name, on, off }: Setting, part: string | undefined): string {
  const what = input === undefined ? `data-rest="${xml(part ?? '')}"` : `data-input="${input}"`;
  const words = `data-on="${xml(on)}" data-off="${xml(off)}"`;
  return `<button type="button" ${what} ${words} aria-pressed="${input === undefined}"><span class="name">${xml(name)}</span> <span class="word" aria-hidden="true">${xml(input === undefined ? on : off)}</span></button>`;
}
