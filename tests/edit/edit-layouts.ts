/** Plans of joints and gates written in many layouts, from a model that edits can be made in as well. */
import type { Edit } from '../../src/edit/edits.ts';

export interface ModelEnd {
  readonly to: string;
  readonly quotes: 'none' | 'single' | 'double';
}
export interface ModelCore {
  readonly colour: string;
  readonly a: ModelEnd;
  readonly b: ModelEnd;
}
export interface ModelRun {
  readonly layout: number;
  readonly cores: readonly ModelCore[];
}
export interface Model {
  readonly runs: readonly ModelRun[];
  readonly crlf: boolean;
  /** the list of runs in brackets */
  readonly brackets: boolean;
  /** something behind the runs; else the file ends with them, with or without a line break */
  readonly tail: boolean;
  readonly open: boolean;
}

export const TERMINALS = [
  ...Array.from({ length: 8 }, (_, i) => `j${i}`),
  ...['null', 'Ölfaß', 'g1.COM', 'g1.NO', 'g1.NC', 'g2.COM', 'g2.NO', 'K1.A1', 'K1.A2', 'K1.COM'],
];
export const COLOURS = ['red', 'white', 'grün-gelb', '"blue 2"', 'no'];
export const LAYOUTS = 6;

const HEAD = `# a file laid out by many hands
format: 1
stock:
  snap: {kind: gate}
  bell: {kind: cable, gauge: 20 AWG, cores: 5}
parts: # what there is
${TERMINALS.filter((t) => !t.includes('.'))
  .map((t) => `  ${t === 'null' ? '"null"' : t}: {kind: joint}`)
  .join('\n')}
  g1: {from: snap}
  g2: {from: snap}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm}, contact: {ratings: [5 A 250 V AC]}}

`;

function end({ to, quotes }: ModelEnd): string {
  if (quotes === 'double') return `"${to}"`;
  return quotes === 'single' || to === 'null' ? `'${to}'` : to;
}

function cores(
  run: ModelRun,
  write: (colour: string, a: string, b: string, last: boolean) => string,
): string {
  return run.cores.map((c, i) => write(c.colour, end(c.a), end(c.b), i === run.cores.length - 1)).join('');
}

function flow(run: ModelRun): string {
  const list = cores(run, (colour, a, b, last) => `${colour}: [${a}, ${b}]${last ? '' : ', '}`);
  return `{cable: bell, length: 2 m, cores: {${list}}}`;
}

/** One run as the lines of a list entry, without the dash; continuation lines have their indentation. */
function written(run: ModelRun, brackets: boolean): string {
  switch (brackets ? [0, 1, 4][run.layout % 3] : run.layout) {
    case 1:
      return `{cable: bell, # remark, with comma\n      length: 2 m,\n      cores: {\n${cores(run, (colour, a, b, last) => `        ${colour}: [${a},\n          ${b}]${last ? '' : ','} # ${colour} core\n`)}      }}`;
    case 2:
      return `cable: bell\n    length: 2 m   # one way\n    cores:\n${cores(run, (colour, a, b) => `        # above, é 漢\n        ${colour}: [ ${a} ,${b} ]  # behind\n`).trimEnd()}`;
    case 3:
      return `cores:\n${cores(run, (colour, a, b) => `      ${colour}:\n        - ${a} # a: first\n\n        - ${b}\n`)}    cable: bell\n    length: 2 m`;
    case 4:
      return `{cores: {${cores(run, (colour, a, b) => `${colour}: [${a},${b}],`)}}, length: 2 m, cable: bell}`;
    case 5:
      return `length: 2 m\n    cable: bell\n    cores: {${cores(run, (colour, a, b, last) => `${colour}: [${a}, ${b}]${last ? '' : '\n      , '}`)}}`;
    default:
      return `${flow(run)} # plain`;
  }
}

export function render(model: Model): string {
  const { runs, brackets } = model;
  const list = brackets
    ? `runs: [\n${runs.map((run) => `  ${flow(run)}, # ${run.layout}\n`).join('')}]`
    : `runs:\n${runs.map((run) => `  - ${written(run, false)}`).join('\n')}`;
  const tail = model.tail
    ? '\n\n# what is meant\nintent:\n  K1: {runs-on: [g1, g2]}\n'
    : model.open
      ? ''
      : '\n';
  const text = HEAD + list + tail;
  return model.crlf ? text.replaceAll('\n', '\r\n') : text;
}

/** The model after edits that only move and swap, or the cores of every run after any. */
export function edited(model: Model, edits: readonly Edit[]): ModelRun[] {
  const runs = model.runs.map((run) => ({
    ...run,
    cores: run.cores.map((core): ModelCore | undefined => core),
  }));
  const put = (at: { run: number; core: number; end: 'a' | 'b' }, to: string) => {
    const list = runs[at.run]!.cores;
    const core = list[at.core]!;
    list[at.core] = { ...core, [at.end]: { ...core[at.end], to } };
  };
  for (const edit of edits) {
    if (edit.do === 'move') put(edit, edit.to);
    else if (edit.do === 'swap') {
      const [x, y] = [edit.first, edit.second].map((at) => runs[at.run]!.cores[at.core]![at.end].to);
      put(edit.first, y!);
      put(edit.second, x!);
    }
  }
  for (const edit of edits) if (edit.do === 'remove') runs[edit.run]!.cores[edit.core] = undefined;
  const kept = runs
    .map((run) => ({ ...run, cores: run.cores.filter((core) => core !== undefined) }))
    .filter((run) => run.cores.length > 0);
  const plain = (to: string): ModelEnd => ({ to, quotes: 'none' });
  const added = edits.flatMap((edit): ModelRun[] =>
    edit.do === 'add'
      ? [{ layout: 0, cores: [{ colour: '?', a: plain(edit.from), b: plain(edit.to) }] }]
      : [],
  );
  return [...kept, ...added];
}
