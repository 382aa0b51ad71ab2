/** What to buy, as a section of the printed sheet. */
import { feetWords } from '../lists.ts';
import { leastNote } from '../materials.ts';
import { filled, metres, paragraph, table } from './html.ts';
import type { Cell, SheetParts } from './parts.ts';

/** What to buy, and the least rating that would still do. */
export function shopping({ materials }: SheetParts): string {
  // Of a plan that fails it is said once, before the parts.
  const fails = materials.check.verdict === 'fail';
  const least = (l: {
    readonly least: readonly { readonly words: string }[];
    readonly untold: readonly string[];
  }) => (fails ? [] : [...l.least.map((x) => x.words), ...l.untold]).join('; ');
  const parts = materials.items.map((m): Cell[] => [
    { tick: true },
    `${m.count}`,
    m.spec,
    m.names.join(', '),
    least(m),
  ]);
  const cables = materials.cables.map((c): Cell[] => [
    { tick: true },
    `${metres(c.metres)} (${feetWords(c.metres)})`,
    `${c.name}: ${c.spec}`,
    c.unmeasured === 0 ? '' : `${c.unmeasured} more of unknown length`,
    least(c),
  ]);
  const joints = materials.joints.map((j): Cell[] => [
    { tick: true },
    `${j.count}`,
    `joint for ${j.wires}`,
    j.names.join(', '),
  ]);
  const small = materials.small.map((s): Cell[] => [{ tick: true }, `${s.count}`, s.what, '']);
  const total =
    materials.total === null
      ? ''
      : `Priced: ${materials.total.toFixed(2)}.${materials.unpriced.length === 0 ? '' : ` Without a price: ${materials.unpriced.join(', ')}.`}`;
  const head = ['', 'how many', 'what', 'for', 'least that would still do'];
  return `<section><h2>Materials</h2>
${paragraph(leastNote(materials))}
${table(...filled(head, parts), 'goods')}
${table(...filled(['', 'length', 'cable', 'note', 'least that would still do'], cables), 'goods')}
${table(...filled(['', 'how many', 'what', 'for'], [...joints, ...small]), 'goods')}
${paragraph(total)}</section>`;
}
