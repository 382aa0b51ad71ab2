/** What a plan has to read back as after a list of edits. */

import type { Position } from '../plan/device-figures.ts';
import type { Core, Plan, Run, TerminalRef } from '../plan/plan.ts';
import { splitTerminalKey, terminalKey } from '../plan/terminal-key.ts';
import { colourOf } from '../text/core-colours.ts';
import { metresText } from './add-core.ts';
import { type Edit, type EndRef, isSaying, type Saying } from './edits.ts';
import { saidAfter } from './said-plan.ts';
import { Refusal } from './text-changes.ts';

/** A core that is to be written new. */
export interface Added {
  readonly from: string;
  readonly to: string;
  readonly like: number | undefined;
  readonly metres: number | undefined;
  readonly colour: string;
}

/** The edits sorted out: what each end is to say, which cores go, what comes. */
export interface Orders {
  /** ends to rewrite, with the text they are to hold */
  readonly ends: readonly (EndRef & { readonly to: string })[];
  readonly gone: ReadonlyMap<number, ReadonlySet<number>>;
  /** runs of which no core is left */
  readonly empty: ReadonlySet<number>;
  readonly added: readonly Added[];
  /** changes of words, in order */
  readonly said: readonly Saying[];
}

const nameOf = ({ run, core, end }: EndRef) => `${run} ${core} ${end}`;

/** `PART.TERMINAL` by the names of the program; refuses what the plan does not have. */
function canonical(plan: Plan, written: string): string {
  const { part, terminal: mark } = splitTerminalKey(written);
  const terminal = plan.terminals.get(part)?.find(mark);
  if (terminal === undefined || (terminal === '') === written.includes('.'))
    throw new Refusal(`the plan has no terminal ${written}`);
  return terminalKey(part, terminal);
}

const place = (ref: TerminalRef) => terminalKey(ref.part, ref.terminal);

/** Colours that in some practice are for the earth alone. */
const isForEarth = (name: string): boolean => /^(green|bare)/.test(colourOf(name)?.colour ?? '');

/**
 * A colour of the cable of `run` that the run does not use: as sold, else as other runs of it have. That of the earth is for
 * the earth, and it has no other.
 */
function freeColour(plan: Plan, run: Run, isEarth: boolean): string {
  const colour = anyFreeColour(plan, run, isEarth);
  return colour !== 'jumper' || !isEarth ? colour : plan.practice === 'nec' ? 'green' : 'green-yellow';
}

function anyFreeColour(plan: Plan, run: Run, isEarth: boolean): string {
  const { cable } = run;
  const used = new Set(run.cores.map((core) => core.colour));
  if (cable === undefined || used.size >= cable.cores) return 'jumper';
  const same = plan.runs.filter(
    (r) => r.cable === cable || (cable.stock !== undefined && r.cable?.stock === cable.stock),
  );
  const known = [...(cable.sheathColours ?? []), ...same.flatMap((r) => r.cores.map((core) => core.colour))];
  return known.find((colour) => !used.has(colour) && isForEarth(colour) === isEarth) ?? 'jumper';
}

class Sorter {
  readonly #plan: Plan;
  readonly #ends = new Map<string, EndRef & { readonly to: string }>();
  readonly #gone = new Map<number, Set<number>>();
  readonly #added: Added[] = [];
  readonly #said: Saying[] = [];

  constructor(plan: Plan) {
    this.#plan = plan;
  }

  #written(ref: EndRef): string {
    const core = this.#plan.runs[ref.run]?.cores[ref.core];
    if (core === undefined) throw new Refusal(`the plan has no core ${ref.core + 1} in run ${ref.run + 1}`);
    return this.#ends.get(nameOf(ref))?.to ?? core[ref.end].written;
  }

  #put({ run, core, end }: EndRef, to: string): void {
    this.#ends.set(nameOf({ run, core, end }), { run, core, end, to });
  }

  take(edit: Edit): void {
    if (isSaying(edit)) this.#said.push(edit);
    else if (edit.do === 'move') {
      this.#written(edit);
      canonical(this.#plan, edit.to);
      this.#put(edit, edit.to);
    } else if (edit.do === 'swap') {
      const [first, second] = [this.#written(edit.first), this.#written(edit.second)];
      this.#put(edit.first, second);
      this.#put(edit.second, first);
    } else if (edit.do === 'remove') {
      this.#written({ ...edit, end: 'a' });
      const cores = this.#gone.get(edit.run) ?? new Set();
      if (cores.has(edit.core))
        throw new Refusal(`core ${edit.core + 1} of run ${edit.run + 1} is removed twice`);
      this.#gone.set(edit.run, cores.add(edit.core));
    } else this.#add(edit);
  }

  #add({ from, to, like, metres }: Extract<Edit, { do: 'add' }>): void {
    for (const end of [from, to]) canonical(this.#plan, end);
    if (metres !== undefined && !(Number.isFinite(metres) && metres >= 0.001))
      throw new Refusal('a new core needs a length of at least 1 mm');
    const run = like === undefined ? undefined : this.#plan.runs[like];
    if (like !== undefined && (run === undefined || run.link))
      throw new Refusal(`the plan has no cable in run ${like + 1} that a new core could take`);
    const isEarth = [from, to].some((end) => end.endsWith('.PE'));
    const colour = run === undefined ? 'link' : freeColour(this.#plan, run, isEarth);
    this.#added.push({ from, to, like, metres, colour });
  }

  orders(): Orders {
    const { runs } = this.#plan;
    const empty = new Set(
      [...this.#gone].filter(([run, cores]) => runs[run]!.cores.length === cores.size).map(([run]) => run),
    );
    for (const { run, core } of this.#ends.values())
      if (this.#gone.get(run)?.has(core))
        throw new Refusal(`core ${core + 1} of run ${run + 1} is both moved and removed`);
    // An end that is put back where it was needs no change in the file.
    const ends = [...this.#ends.values()].filter(
      (end) => runs[end.run]!.cores[end.core]![end.end].written !== end.to,
    );
    return { ends, gone: this.#gone, empty, added: this.#added, said: this.#said };
  }
}

/** The edits sorted out; refuses those that contradict each other or the plan. */
export function sortOut(plan: Plan, edits: readonly Edit[]): Orders {
  const sorter = new Sorter(plan);
  for (const edit of edits) sorter.take(edit);
  return sorter.orders();
}

/**
 * The plan that a file reads back as once the edits are made in it; new ends stand where those stood that they take the
 * place of. Undefined where the edits contradict each other or the plan.
 */
export function planAfter(plan: Plan, edits: readonly Edit[]): Plan | undefined {
  try {
    return planWith(plan, sortOut(plan, edits));
  } catch (error) {
    if (error instanceof Refusal) return undefined;
    throw error;
  }
}

/** Where a new core is said to stand in a file that has no core yet. */
const TOP: Position = { line: 1, column: 1 };

/** Runs along parts, by their number, of which a core is changed: the file gets them as one run a piece. */
export function writtenOut(plan: Plan, ends: Orders['ends'], gone: Orders['gone']): ReadonlySet<number> {
  const runs = [...ends.map((end) => end.run), ...gone.keys()].map((run) => plan.runs[run]!);
  return new Set(runs.flatMap((run) => (run.piece === undefined ? [] : [run.entry])));
}

/** A run that is no piece of another. */
function single({ piece: _piece, pieces: _pieces, ...run }: Run): Run {
  return run;
}

/** The number of each run: pieces that stand behind each other in the file's list share theirs. */
function entriesOf(runs: readonly Omit<Run, 'index'>[]): number[] {
  let entry = 0;
  return runs.map((run, index) => {
    const before = runs[index - 1];
    const same = run.piece !== undefined && before?.piece !== undefined && before.entry === run.entry;
    if (!same) entry++;
    return entry;
  });
}

export function planWith(read: Plan, { ends, gone, empty, added, said }: Orders): Plan {
  const plan = saidAfter(read, said);
  const moved = new Map(ends.map((end) => [nameOf(end), end.to]));
  const ref = (to: string, at: Position): TerminalRef => ({
    ...splitTerminalKey(canonical(plan, to)),
    written: to,
    at,
  });
  const open = writtenOut(plan, ends, gone);
  const kept = plan.runs.flatMap((written, r): Omit<Run, 'index'>[] => {
    const run = open.has(written.entry) ? single(written) : written;
    if (empty.has(r)) return [];
    const cores = run.cores.flatMap((core, c): Core[] => {
      if (gone.get(r)?.has(c)) return [];
      const at = (end: 'a' | 'b') => {
        const to = moved.get(nameOf({ run: r, core: c, end }));
        return to === undefined ? core[end] : ref(to, core[end].at);
      };
      return [{ ...core, a: at('a'), b: at('b') }];
    });
    return [{ ...run, cores }];
  });
  const at = plan.runs[0]?.at ?? TOP;
  const fresh = added.map(({ from, to, like, metres, colour }): Omit<Run, 'index'> => {
    const cores = [{ run: 0, colour, a: ref(from, at), b: ref(to, at), at }];
    if (like === undefined) return { link: true, entry: 0, at, cores };
    const { name: _, ...run } = single(plan.runs[like]!);
    return { ...run, cores, ...(metres === undefined ? {} : { length: metres }) };
  });
  const all = [...kept, ...fresh];
  const entries = entriesOf(all);
  const runs = all.map((run, index) => ({
    ...run,
    index,
    entry: entries[index]!,
    cores: run.cores.map((core) => ({ ...core, run: index })),
  }));
  return { ...plan, runs };
}

/** The wiring of a plan, one text a run, with everything but its places in the file; lengths in whole millimetres. */
export function wiringOf(plan: Plan): string[] {
  return plan.runs.map(({ cable, length, link, name, route, slack, cores }) =>
    JSON.stringify([
      cable,
      length === undefined ? null : metresText(length),
      link,
      name,
      route,
      slack,
      cores.map((core) => [core.colour, core.marked ?? null, place(core.a), place(core.b)]),
    ]),
  );
}
