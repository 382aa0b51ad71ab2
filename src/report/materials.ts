/** The list of materials as text, Markdown and CSV. */
import type { LeastRatings, Materials } from '../lists/materials-model.ts';
import {
  feetWords,
  type Listing,
  type Look,
  listingCsv,
  listingLines,
  listingMarkdown,
  markdownText,
  metreWords,
  paragraph,
  toldLine,
} from './lists.ts';

const money = (x: number | null): string => (x === null ? '' : x.toFixed(2));

/** `at least: A; or B`, and what cannot be told with its reason. */
function leastWords({ least, untold }: LeastRatings): string[] {
  const found = least.map((l) => l.words).join('; ');
  return [
    ...(found === '' ? [] : [`Least that still passes: ${found}.`]),
    ...untold.map((why) => `The least rating cannot be told: ${why.replace(/\.$/, '')}.`),
  ];
}

interface Entry {
  readonly head: string;
  readonly lines: readonly string[];
}

function entries(list: Materials): { parts: Entry[]; cables: Entry[] } {
  // Of a plan that fails it is said once, before the parts.
  const least = (x: LeastRatings) => (list.check.verdict === 'fail' ? [] : leastWords(x));
  const parts = list.items.map((i) => ({
    head: `${i.count} x ${i.spec}`,
    lines: [
      i.names.join(', '),
      ...least(i),
      ...(i.price === null ? [] : [`${money(i.price)} each, ${money(i.sum)} in all.`]),
    ],
  }));
  const cables = list.cables.map((c) => ({
    head: `${metreWords(c.metres)} (${feetWords(c.metres)}) ${c.name}: ${c.spec}`,
    lines: [
      c.pieces === 1 ? '1 piece' : `${c.pieces} pieces`,
      ...(c.unmeasured > 0 ? [`${c.unmeasured} of them without a length in the plan, not counted.`] : []),
      ...least(c),
      ...(c.price === null ? [] : [`${money(c.price)} a metre, ${money(c.sum)} in all.`]),
    ],
  }));
  return { parts, cables };
}

function jointListing(list: Materials): Listing {
  return {
    head: ['count', 'wires in each', 'names'],
    rows: list.joints.map((j) => [`${j.count}`, j.wires, j.names.join(', ')]),
  };
}

function smallListing(list: Materials): Listing {
  return { head: ['count', 'what'], rows: list.small.map((s) => [`${s.count}`, s.what]) };
}

/** Never a sum without what is missing from it. */
function totalLines({ total, unpriced }: Materials): string[] {
  if (total === null) return ['No price is given in the plan, so there is no total.'];
  if (unpriced.length === 0) return [`Total: ${money(total)}.`];
  return [`Total of what has a price: ${money(total)}. Without a price: ${unpriced.join(', ')}.`];
}

const LEAST =
  'Least ratings are found by checking this plan with other ratings in it; each passes with all else as it stands. Look for the figure or more, with the other figures of the part unchanged. A caution named beside a figure is one that the check gives with it: it does not fail the plan.';
const NO_LEAST = 'Least ratings are not worked out, because the plan fails its check.';
/** What is said of the least ratings before the parts. */
export const leastNote = (list: Materials): string => (list.check.verdict === 'fail' ? NO_LEAST : LEAST);
const CABLE =
  'Cable has its slack in it: what each run states, else 10 %, and at least 10 cm at each end (common practice, no source). A price of cable counts as that of a metre.';

/** The list in `width` columns. */
export function renderMaterialsText(list: Materials, title: string, look: Look): string {
  const say = (text: string, first = '', rest?: string) => paragraph(text, look, first, rest);
  const told = toldLine(list.check);
  const { parts, cables } = entries(list);
  const entry = (e: Entry) => [...say(e.head, '', '    '), ...e.lines.flatMap((l) => say(l, '    '))];
  const blocks = [
    [...say(`Materials for ${title}`), ...(told === undefined ? [] : say(told)), ...say(leastNote(list))],
    ['Parts:', ...parts.flatMap(entry)],
    ...(cables.length === 0 ? [] : [[...say(`Cable. ${CABLE}`), ...cables.flatMap(entry)]]),
    ...(list.joints.length === 0
      ? []
      : [
          [
            ...say('Joints, each a wire nut or connector for its wires:'),
            ...listingLines(jointListing(list), look),
          ],
        ]),
    ...(list.small.length === 0
      ? []
      : [
          [
            ...say('Small parts (common practice, no source), without spares:'),
            ...listingLines(smallListing(list), look),
          ],
        ]),
    totalLines(list).flatMap((l) => say(l)),
  ];
  return `${blocks.map((b) => b.join('\n')).join('\n\n')}\n`;
}

/** Every line of the list as a row; `least` and `untold` in words. */
function table(list: Materials): Listing {
  const least = (x: LeastRatings) => [x.least.map((l) => l.words).join('; '), x.untold.join('; ')];
  return {
    head: ['what', 'spec', 'count', 'names', 'metres', 'feet', 'least', 'cannot be told', 'price', 'sum'],
    rows: [
      ...list.items.map((i) => [
        ...[
          i.kind,
          i.spec,
          `${i.count}`,
          i.names.join(' '),
          '',
          '',
          ...least(i),
          money(i.price),
          money(i.sum),
        ],
      ]),
      ...list.cables.map((c) => [
        ...['cable', `${c.name}: ${c.spec}`, `${c.pieces}`, '', `${c.metres}`, `${c.feet}`, ...least(c)],
        ...[money(c.price), money(c.sum)],
      ]),
      ...list.joints.map((j) => ['joint', j.wires, `${j.count}`, j.names.join(' '), '', '', '', '', '', '']),
      ...list.small.map((s) => ['small part', s.what, `${s.count}`, '', '', '', '', '', '', '']),
    ],
  };
}

/** Comma-separated values (RFC 4180), one row a thing to buy. */
export function renderMaterialsCsv(list: Materials): string {
  return listingCsv(table(list));
}

export function renderMaterialsMarkdown(list: Materials, title: string): string {
  const told = toldLine(list.check);
  const { parts, cables } = entries(list);
  const item = (e: Entry) => [`* ☐ ${markdownText(e.head)}`, ...e.lines.map((l) => `  * ${markdownText(l)}`)];
  const section = (name: string, lines: readonly string[]) =>
    lines.length === 0 ? [] : ['', `## ${name}`, '', ...lines];
  const out = [
    `# ${markdownText(`Materials for ${title}`)}`,
    ...(told === undefined ? [] : ['', markdownText(told)]),
    ...['', markdownText(leastNote(list))],
    ...section('Parts', parts.flatMap(item)),
    ...(cables.length === 0 ? [] : section('Cable', [markdownText(CABLE), '', ...cables.flatMap(item)])),
    ...(list.joints.length === 0 ? [] : section('Joints', listingMarkdown(jointListing(list)))),
    ...(list.small.length === 0 ? [] : section('Small parts', listingMarkdown(smallListing(list)))),
    ...section('Total', totalLines(list).map(markdownText)),
  ];
  return `${out.join('\n')}\n`;
}
