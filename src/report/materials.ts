/** What to buy, and the least rating that would still do. */
import type { LeastRatings, MaterialCable, MaterialItem, Materials } from '../lists/materials-model.ts';
import { cutInBoth, type LengthUnit } from '../text/lengths.ts';
import {
  type Block,
  type ColumnOf,
  heading,
  type Item,
  list,
  paragraph,
  type Table,
  table,
  WRITTEN,
} from './blocks.ts';
import { toldBlocks } from './told.ts';

const LEAST =
  'Least ratings are found by checking this plan with other ratings in it; each passes with all else as it stands. Look for the figure or more, with the other figures of the part unchanged. A caution named beside a figure is one that the check gives with it: it does not fail the plan.';
const NO_LEAST = 'Least ratings are not worked out, because the plan fails its check.';
const cableNote = (unit: LengthUnit): string =>
  `Cable has its slack in it: what each run states, else 10 %, and at least ${unit === 'ft' ? '4 in (10 cm)' : '10 cm'} at each end (common practice, no source). A price of cable counts as that of a metre.`;

const money = (x: number | null): string => (x === null ? '' : x.toFixed(2));
const figures = ({ least }: LeastRatings): string => least.map((l) => l.words).join('; ');

/** The list for a terminal or as Markdown. */
export function materialsDocument(goods: Materials, title: string): Block[] {
  const { parts, cables } = entries(goods);
  // In text the word stands there though nothing is below it.
  const head = heading(2, 'Parts', { plain: 'Parts:', only: parts.length === 0 ? ['text'] : WRITTEN });
  return [
    heading(1, `Materials for ${title}`),
    ...toldBlocks(goods.check),
    leastNote(goods),
    head,
    list('goods', parts),
    ...(cables.length === 0
      ? []
      : [
          heading(2, 'Cable', { runIn: true }),
          paragraph(cableNote(goods.unit)),
          list('goods', cables, { close: true }),
        ]),
    ...(goods.joints.length === 0 ? [] : [JOINTS, jointTable(goods)]),
    ...(goods.small.length === 0 ? [] : [SMALL, smallTable(goods)]),
    heading(2, 'Total', { plain: '' }),
    paragraph(totalWords(goods)),
  ];
}

/** What is said of the least ratings before the parts. */
function leastNote({ check }: Materials): Block {
  return paragraph(check.verdict === 'fail' ? NO_LEAST : LEAST, { close: true });
}

function entries(goods: Materials): { parts: Item[]; cables: Item[] } {
  // Of a plan that fails it is said once, before the parts.
  const least = (x: LeastRatings) => (goods.check.verdict === 'fail' ? [] : leastWords(x));
  const parts = goods.items.map((i) => ({
    text: `${i.count} x ${i.spec}`,
    more: [
      i.names.join(', '),
      ...least(i),
      ...(i.price === null ? [] : [`${money(i.price)} each, ${money(i.sum)} in all.`]),
    ],
  }));
  const cables = goods.cables.map((c) => ({
    text: `${cutInBoth(c.metres, goods.unit)} ${c.name}: ${c.spec}`,
    more: [
      c.pieces === 1 ? '1 piece' : `${c.pieces} pieces`,
      ...(c.unmeasured > 0 ? [`${c.unmeasured} of them without a length in the plan, not counted.`] : []),
      ...least(c),
      ...(c.price === null ? [] : [`${money(c.price)} a metre, ${money(c.sum)} in all.`]),
    ],
  }));
  return { parts, cables };
}

/** `at least: A; or B`, and what cannot be told with its reason. */
function leastWords(x: LeastRatings): string[] {
  const found = figures(x);
  return [
    ...(found === '' ? [] : [`Least that still passes: ${found}.`]),
    ...x.untold.map((why) => `The least rating cannot be told: ${why.replace(/\.$/, '')}.`),
  ];
}

const JOINTS = heading(2, 'Joints', { plain: 'Joints, each a wire nut or connector for its wires:' });
const SMALL = heading(2, 'Small parts', {
  plain: 'Small parts (common practice, no source), without spares:',
});

function jointTable({ joints }: Materials): Table {
  return table(joints, [
    { head: 'count', of: (j) => `${j.count}` },
    { head: 'wires in each', of: (j) => j.wires },
    { head: 'names', of: (j) => j.names.join(', ') },
  ]);
}

function smallTable({ small }: Materials): Table {
  return table(small, [
    { head: 'count', of: (s) => `${s.count}` },
    { head: 'what', of: (s) => s.what },
  ]);
}

/** Never a sum without what is missing from it. */
function totalWords({ total, unpriced }: Materials): string {
  if (total === null) return 'No price is given in the plan, so there is no total.';
  if (unpriced.length === 0) return `Total: ${money(total)}.`;
  return `Total of what has a price: ${money(total)}. Without a price: ${unpriced.join(', ')}.`;
}

/** The list with boxes to tick, as tables on paper. */
export function shoppingBlocks(goods: Materials): Block[] {
  const { items, cables, joints, small, total, unpriced } = goods;
  // Of a plan that fails it is said once, before the parts.
  const least = (x: LeastRatings) =>
    goods.check.verdict === 'fail' ? '' : [...x.least.map((l) => l.words), ...x.untold].join('; ');
  const tick = { head: '', of: () => ({ box: 'tick' }) as const };
  const asLeast = { head: 'least that would still do', of: least };
  const others = [
    ...joints.map((j) => ({ count: j.count, what: `joint for ${j.wires}`, names: j.names.join(', ') })),
    ...small.map((s) => ({ ...s, names: '' })),
  ];
  const name = 'goods';
  return [
    leastNote(goods),
    table<MaterialItem>(
      items,
      [
        tick,
        { head: 'how many', of: (m) => `${m.count}` },
        { head: 'what', of: (m) => m.spec },
        { head: 'for', of: (m) => m.names.join(', ') },
        asLeast,
      ],
      { name },
    ),
    table<MaterialCable>(
      cables,
      [
        tick,
        { head: 'length', of: (c) => cutInBoth(c.metres, goods.unit) },
        { head: 'cable', of: (c) => `${c.name}: ${c.spec}` },
        { head: 'note', of: (c) => (c.unmeasured === 0 ? '' : `${c.unmeasured} more of unknown length`) },
        asLeast,
      ],
      { name },
    ),
    table(
      others,
      [
        tick,
        { head: 'how many', of: (x) => `${x.count}` },
        { head: 'what', of: (x) => x.what },
        { head: 'for', of: (x) => x.names },
      ],
      { name },
    ),
    ...(total === null
      ? []
      : [
          paragraph(
            `Priced: ${money(total)}.${unpriced.length === 0 ? '' : ` Without a price: ${unpriced.join(', ')}.`}`,
          ),
        ]),
  ];
}

/** One row a thing to buy, as `materialsTable` has it. */
interface Bought {
  readonly what: string;
  readonly spec: string;
  readonly count: number;
  readonly names?: readonly string[];
  readonly metres?: number;
  readonly feet?: number;
  readonly rating?: LeastRatings & { readonly price: number | null; readonly sum: number | null };
}

/** Every line of the list as a row; `least` and `cannot be told` in words. */
export function materialsTable({ items, cables, joints, small }: Materials): Block[] {
  const bought: Bought[] = [
    ...items.map((i) => ({ ...i, what: i.kind, rating: i })),
    ...cables.map((c) => ({ ...c, what: 'cable', spec: `${c.name}: ${c.spec}`, count: c.pieces, rating: c })),
    ...joints.map((j) => ({ ...j, what: 'joint', spec: j.wires })),
    ...small.map((s) => ({ what: 'small part', spec: s.what, count: s.count })),
  ];
  const columns: ColumnOf<Bought>[] = [
    { head: 'what', of: (b) => b.what },
    { head: 'spec', of: (b) => b.spec },
    { head: 'count', of: (b) => `${b.count}` },
    { head: 'names', of: (b) => (b.names ?? []).join(' ') },
    { head: 'metres', of: (b) => `${b.metres ?? ''}` },
    { head: 'feet', of: (b) => `${b.feet ?? ''}` },
    { head: 'least', of: ({ rating }) => (rating === undefined ? '' : figures(rating)) },
    { head: 'cannot be told', of: ({ rating }) => rating?.untold.join('; ') ?? '' },
    { head: 'price', of: ({ rating }) => money(rating?.price ?? null) },
    { head: 'sum', of: ({ rating }) => money(rating?.sum ?? null) },
  ];
  return [table(bought, columns)];
}
