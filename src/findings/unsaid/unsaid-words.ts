/** How a finding is told that turns on figures which the plan leaves out. */
import type { Unsaid, Value } from '../../ratings/unsaid/ends.ts';
import type { Study } from '../../study/study.ts';
import { rounded } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import { type Found, found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { entry } from '../starts/value-unsaid.ts';
import type { Settling } from './settle.ts';

/** Figures told one by one; of more it is told how many. */
const MOST_TOLD = 30;

/** The doubt in place of a finding that stands at the worse ends and not at the better ones. */
export function turnsOn(finding: Finding, settling: readonly Settling[], named: boolean): Found {
  const alone = settling.some((s) => s.from !== undefined);
  const names = settling.map((s, i) => (i > MOST_TOLD ? '' : nameOf(s.unsaid)));
  const verb = names.length === 1 || alone ? 'is not stated' : 'are not stated';
  const list = alone ? orList(names) : listOf(names);
  // Where nothing was found that does, all that is left out may bear on it, and a large plan leaves out hundreds of figures.
  const told = settling.length > MOST_TOLD ? settling.slice(0, MOST_TOLD) : settling;
  const more = settling.length - told.length;
  const bounds = [...new Set(told.map((s) => `${nameOf(s.unsaid)} ${rangeOf(s.unsaid)}`))];
  if (more > 0) bounds.push(`and of ${more} more`);
  return {
    ...finding,
    // A finding that speaks of the figure itself keeps its name.
    id: named ? finding.id : entry.id,
    severity: 'doubt',
    parts: [...new Set([...finding.parts, ...told.flatMap((s) => s.unsaid.parts.slice(0, 1))])],
    message: `${list} ${verb}, and on that it turns: at the worse end, ${finding.message}`,
    why: `What is left out counts at both ends of what is usual: ${bounds.join('; ')}. At the better end this finding is gone.`,
    fix: fixOf(settling, alone),
    basis: finding.basis,
    cause: null,
    also: [],
    twin: { name: finding.id, alike: `${finding.id} ${more > 0 ? 'many' : names.join()}` },
  };
}

/** The doubt of a plan that would take too long to be judged at both ends of all that it leaves out. */
export function notWeighed(study: Study): Found {
  return found(study.plan, entry, {
    parts: [],
    message: 'not all that the plan leaves out was tried at both ends of what is usual',
    why: 'With so many parts that hang on one another that would take too long, and the check gave up. Nothing was guessed: what is not told may still be wrong.',
    fix: 'State what the plan leaves out, or split it into plans that share no circuit, and check each.',
    basis: entry.basis,
  });
}

function fixOf(settling: readonly Settling[], alone: boolean): string {
  // One more than is told, so that the list says that there are more.
  const each = settling.map((s, i) => (i > MOST_TOLD ? '' : `${fieldOf(s.unsaid)}${enough(s)}`));
  if (each.length === 1) return `State ${each[0]}.`;
  return alone ? `State ${orList(each)}; one of them may be enough.` : `State ${listOf(each)}.`;
}

function enough({ unsaid, from, below }: Settling): string {
  if (from === undefined) return '';
  if (typeof from === 'string') return ` (${from} settles it)`;
  const value = towards(from, below === true);
  return ` (${valueText(unsaid, value)} or ${below ? 'less' : 'more'} settles it)`;
}

/** Three digits, never beyond the value. */
function towards(value: number, down: boolean): number {
  if (value === 0) return 0;
  const scale = 10 ** (2 - Math.floor(Math.log10(Math.abs(value))));
  return (down ? Math.floor(value * scale) : Math.ceil(value * scale)) / scale;
}

const orList = (names: readonly string[]): string => listOf(names).replace(/ and (?=[^,]*$)/, ' or ');

/** `ambient`, `PS1 regulation`, `K1 coil.pull-in`. */
function nameOf({ parts, field }: Unsaid): string {
  return parts.length === 0 ? field : `${field} of ${listOf(parts, 3)}`;
}

/** As it is typed: `coil: {pull-in: ...} of K1`. */
function fieldOf({ parts, field }: Unsaid): string {
  const [outer, inner] = field.split('.');
  const typed = inner === undefined ? `${outer}:` : `${outer}: {${inner}: ...}`;
  return parts.length === 0 ? typed : `${typed} of ${listOf(parts, 3)}`;
}

function rangeOf(unsaid: Unsaid): string {
  const values = Object.values(unsaid.at);
  const sorted = [...new Set(values)].sort((a, b) => (Number(a) < Number(b) ? -1 : 1));
  const words = sorted.filter((_, i) => i === 0 || i === sorted.length - 1).map((v) => valueText(unsaid, v));
  const { mark, basis } = unsaid.row;
  return `${words.join(unsaid.unit === 'word' ? ' or ' : ' to ')} (${basis}${mark === 'memory' ? ', from memory' : ''})`;
}

/** With its unit, as a person writes it. */
export function valueText({ unit }: Unsaid, value: Value): string {
  if (typeof value === 'string' || unit === 'word') return String(value);
  if (unit === 'share' || unit === '% of rated')
    return `${rounded(value * 100)} %${unit === 'share' ? '' : ' of rated'}`;
  // It is written in horsepower, which the plan's motor need not state.
  if (unit === 'A of a motor') return `for a motor of ${rounded(value)} A`;
  return unit === 'times' ? `${rounded(value)} times` : `${rounded(value)} ${unit}`;
}
