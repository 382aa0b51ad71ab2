/** A gate more or less in a cable along parts, where its short form can say so. */
import { isMap, isScalar, isSeq, type Node } from 'yaml';
import type { Plan, Run } from '../plan/plan.ts';
import { inBrackets } from './add-core.ts';
import { listSplices, plainEntry, sumText } from './grow-lists.ts';
import type { Growth } from './growth.ts';
import { insertEntry } from './insert-entry.ts';
import { taken } from './remove-core.ts';
import { type Held, type Listed, type PlanText, rangeOf, rewritten, type Splice } from './text-changes.ts';
import { spell } from './yaml-scalar.ts';

/** The lengths of the pieces of such a run: a list, or one for each. */
interface Form {
  readonly map: Held;
  readonly along: Node;
  readonly lengths: Listed | undefined;
}

function formOf(file: PlanText, run: Run): Form | undefined {
  const node = file.runs.items[file.itemOf(run.index)];
  if (node === undefined || !isMap(node)) return undefined;
  file.own(node, `run ${run.entry}`);
  const along = file.value(node as Held, 'along');
  const lengths = file.value(node as Held, 'lengths');
  if (along === undefined || (lengths !== undefined && !isSeq(lengths))) return undefined;
  if (lengths !== undefined) file.own(lengths, `the lengths of run ${run.entry}`);
  return { map: node as Held, along, lengths: lengths as Listed | undefined };
}

/** The splices for runs along parts; undefined where their form cannot say it and they have to be written out. */
export function alongSplices(
  file: PlanText,
  plan: Plan,
  growth: Growth,
  pieces: readonly number[],
): Splice[] | undefined {
  const [first, ...more] = pieces.map((run) => plan.runs[run]!);
  if (first === undefined || more.some((run) => run.entry !== first.entry)) return undefined;
  const touched = [...growth.ends.map(({ run }) => run), ...growth.gone];
  if (touched.some((run) => !pieces.includes(run))) return undefined;
  const form = formOf(file, first);
  if (form === undefined) return undefined;
  const long =
    growth.do === 'add' ? lengthened(file, plan, growth, form) : shortened(file, plan, growth, form);
  if (long === undefined) return undefined;
  const { gate, like } = growth;
  const { along } = form;
  const isNamed =
    isSeq(along) && (along as Listed).items.some((i) => isScalar(i) && file.keyOf(i) === (like ?? gate));
  if (!isNamed) return long;
  return [
    ...listSplices(file, along, like ?? gate, like === undefined ? undefined : gate, 'the stops'),
    ...long,
  ];
}

const isAt = (run: Run, end: 'a' | 'b', part: string) => run.cores.every((core) => core[end].part === part);

function lengthened(
  file: PlanText,
  plan: Plan,
  { like, fresh, ends, lengths }: Growth,
  form: Form,
): Splice[] | undefined {
  if (fresh === undefined || like === undefined) return undefined;
  const run = plan.runs[fresh.like]!;
  const isCut = ends.length > 0;
  const isStar = fresh.cores.some(({ a }) => !a.startsWith(`${like}.`));
  if (isStar || !isAt(run, isCut ? 'a' : 'b', like) || (!isCut && run.piece !== run.pieces)) return undefined;
  if (form.lengths === undefined) {
    const all = [fresh.length.metres, ...lengths.map(({ metres }) => metres)];
    if (all.every((metres) => Math.abs(metres - run.length!) < 1e-9)) return [];
    const onward = lengths[0];
    return onward !== undefined && 'text' in onward
      ? eachItsOwn(file, form.map, run, [fresh.length.text, onward.text])
      : undefined;
  }
  const index = run.piece! - 1;
  const entry = plainEntry((flow) => spell(fresh.length.text, flow), '- ');
  const onward = lengths[0];
  const node = form.lengths.items[index];
  if (node === undefined) return undefined;
  return [
    ...insertEntry(file, form.lengths, index, isCut ? 'before' : 'behind', entry),
    ...(onward !== undefined && 'text' in onward
      ? [rewritten(file.text, node, form.lengths.flow === true, onward.text)]
      : []),
  ];
}

/** The splice that has one field of a run say something else, under another key. */
function pairSplice(file: PlanText, map: Held, old: string, key: string, text: string): Splice[] | undefined {
  const pair = map.items.find((item) => file.keyOf(item.key) === old);
  if (pair?.value == null) return undefined;
  const [start, end] = [rangeOf(pair.key)[0], rangeOf(pair.value)[1]];
  return file.text.slice(start, end).includes('\n') ? undefined : [{ start, end, text: `${key}: ${text}` }];
}

/** One length for all pieces as a list, with two in place of that of `run`. */
function eachItsOwn(file: PlanText, map: Held, run: Run, texts: readonly string[]): Splice[] | undefined {
  const node = file.value(map, 'length');
  const word = node === undefined ? '' : inBrackets(file, file.plain(node));
  const all = Array.from({ length: run.pieces! }, () => [word]);
  all[run.piece! - 1] = texts.map((text) => spell(text, true));
  return pairSplice(file, map, 'length', 'lengths', `[${all.flat().join(', ')}]`);
}

function shortened(
  file: PlanText,
  plan: Plan,
  { gate, gone, lengths }: Growth,
  { map, lengths: list }: Form,
): Splice[] | undefined {
  const [first, ...more] = gone.map((run) => plan.runs[run]!);
  if (first?.piece === undefined || more.length > 0 || !isAt(first, 'b', gate)) return undefined;
  const index = first.piece - 1;
  const [length, ...rest] = lengths;
  if (length === undefined) {
    if (first.pieces === 1 || first.piece !== first.pieces) return undefined;
    return list === undefined ? [] : taken(file.text, list, new Set([index]));
  }
  const next = plan.runs[length.run]!;
  if (rest.length > 0 || next.piece !== first.piece + 1 || list === undefined) return undefined;
  const [mine, theirs] = [list.items[index], list.items[index + 1]];
  if (mine === undefined || theirs === undefined) return undefined;
  const sum = sumText(file.keyOf(mine), file.keyOf(theirs), length.metres);
  // What was one length for all pieces is one again.
  const others = list.items.filter((item) => item !== mine && item !== theirs);
  if (others.length > 0 && others.every((item) => file.keyOf(item) === sum)) {
    const one = pairSplice(file, map, 'lengths', 'length', spell(sum, true));
    if (one !== undefined) return one;
  }
  return [...taken(file.text, list, new Set([index])), rewritten(file.text, theirs, list.flow === true, sum)];
}
