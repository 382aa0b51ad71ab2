/** What a map of the runs says beside its lines, the same on a terminal and on paper; nothing is escaped here. */
import { lengthUnit } from '../../plan/length-unit.ts';
import type { Plan, Run } from '../../plan/plan.ts';
import { countedCores } from '../../text/core-names.ts';
import { lengthWords } from '../../text/lengths.ts';
import { runMark } from '../../text/run-names.ts';
import { columns, wrap } from '../../text/wrap.ts';
import type { LaidRun, LaidSection } from './lay-runs.ts';
import type { Network, Place } from './places.ts';

export const SECTION_TITLES = { 'low voltage': 'Low voltage', mains: 'Mains' } as const;

/** `2 cores of bell`, `1 of the 2 cores of bell`, `bare link`. */
function coreWords({ run, cores }: LaidRun['leg']): string {
  if (run.link) return 'bare link';
  const all = run.cable?.cores ?? run.cores.length;
  const count = cores === all ? countedCores(cores) : `${cores} of the ${countedCores(all)}`;
  const what = run.cable?.stock ?? run.cable?.gauge;
  return what === undefined ? count : `${count} of ${what}`;
}

/** `5 m, 2 cores of bell, from B1 to bandsaw; under the bench`. */
function runWords({ leg, from, to }: LaidRun): string {
  const { run } = leg;
  const length = run.length === undefined ? 'length not given' : lengthWords(run.length, run.unit ?? 'm');
  const about = [run.name, run.route].filter((w) => w !== undefined);
  return [`${length}, ${coreWords(leg)}, from ${from.name} to ${to.name}`, ...about].join('; ');
}

/** `B1: K1, D1, feed`; a part by itself has its name alone. */
function placeWords({ name, holds }: Place): string {
  return holds.length === 0 ? name : `${name}: ${holds.join(', ')}`;
}

/** `5 runs between 6 places, 14 m of cable in all`. */
export function sumWords({ legs, places }: Network, plan: Plan): string {
  const runs = [...new Set(legs.map((leg) => leg.run))];
  const metres = runs.reduce((sum, run) => sum + (run.length ?? 0), 0);
  const unknown = runs.filter((run) => run.length === undefined).length;
  const rest = unknown === 0 ? '' : `, ${unknown} of them without a length`;
  const count = `${runs.length} ${runs.length === 1 ? 'run' : 'runs'}`;
  return `${count} between ${places.length} places, ${lengthWords(metres, lengthUnit(plan))} in all${rest}`;
}

/** What stands on one line: the place at the end of it, and the run that lies on it. Lines of text, in columns. */
export interface LineWords {
  /** m at which the name begins */
  readonly at: number;
  readonly name: readonly string[];
  /** it is told at another line as well */
  readonly again: boolean;
  readonly box: boolean;
  readonly run: Run | undefined;
  readonly mark: string;
  readonly words: readonly string[];
}

const NOTHING: LineWords = {
  at: 0,
  name: [],
  again: false,
  box: false,
  run: undefined,
  mark: '',
  words: [],
};

/** The words of every line; `clean` makes them fit for the form, `nameRoom` and `wordRoom` are columns. */
export function lineWords(
  laid: LaidSection,
  clean: (text: string) => string,
  nameRoom: (at: number) => number,
  wordRoom: number,
): LineWords[] {
  const lines = Array.from({ length: laid.lines }, () => NOTHING);
  for (const { place, line, at } of laid.places)
    lines[line] = {
      ...lines[line]!,
      at,
      name: wrap(clean(placeWords(place)), nameRoom(at)),
      box: place.holds.length > 0,
    };
  for (const run of laid.runs) {
    const own = {
      run: run.leg.run,
      mark: runMark(run.leg.run),
      words: wrap(clean(runWords(run)), wordRoom),
    };
    const at = run.path.at(-1)!.at;
    const again = run.again
      ? { at, name: wrap(clean(`${run.to.name} again`), nameRoom(at)), again: true, box: false }
      : {};
    lines[run.line] = { ...lines[run.line]!, ...again, ...own };
  }
  return lines;
}

/** Columns that the longest of so many lines takes. */
export const widest = (lines: readonly string[]): number =>
  lines.reduce((most, text) => Math.max(most, columns(text)), 0);
