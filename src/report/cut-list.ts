/** The cut list: what to cut from which cable, and what is left. */
import type { CableCuts, WireList } from '../lists/wirelist.ts';
import { countedCores } from '../text/core-names.ts';
import { type Block, type ColumnOf, heading, list, PRINTED, paragraph, table, WRITTEN } from './blocks.ts';
import { feetWords, metreWords } from './lengths.ts';

type Piece = CableCuts['pieces'][number];

const LENGTHS =
  'Lengths have their slack in them: what the run states, else 10 %, and at least 10 cm at each end (common practice, no source), rounded up to the centimetre. All cores of a run are one piece.';

const COLUMNS: readonly ColumnOf<Piece>[] = [
  { head: '', only: PRINTED, of: () => ({ box: 'tick' }) },
  { head: 'piece', only: WRITTEN, of: (p) => `run ${p.mark}${p.name === null ? '' : ` ${p.name}`}` },
  { head: 'length', only: WRITTEN, of: (p) => metreWords(p.length) || 'not stated' },
  { head: 'cut', only: PRINTED, of: (p) => metreWords(p.length) || 'length not given' },
  { head: 'feet', only: WRITTEN, of: (p) => (p.length === null ? '' : feetWords(p.length)) },
  { head: 'run', only: PRINTED, of: (p) => p.mark },
  {
    head: 'where',
    only: PRINTED,
    of: (p) => [p.name ?? '', p.route ?? ''].filter((t) => t !== '').join(', '),
  },
  { head: 'cores', only: WRITTEN, of: (p) => p.colours.join(', ') },
  { head: 'cores used', only: PRINTED, of: (p) => p.colours.join(', ') },
  { head: 'route', only: WRITTEN, of: (p) => p.route ?? '' },
  { head: 'unused', only: WRITTEN, of: (p) => (p.spare > 0 ? `${p.spare}` : '') },
];

function cableWords({ cable, gauge, cores, pieces, total }: CableCuts): string {
  const what = cable.startsWith(gauge) ? cable : `${cable}, ${gauge}, ${countedCores(cores)}`;
  const count = pieces.length === 1 ? '1 piece' : `${pieces.length} pieces`;
  return `${what}: ${count}, ${metreWords(total)} (${feetWords(total)}) in all`;
}

/** One sentence a reel, then what is left of all of them. */
function reelWords({ reels, waste }: CableCuts): string[] {
  if (reels === null) return [];
  const lines = reels.map((r, i) => {
    const pieces = r.pieces.map((p) => `${metreWords(p.length)} (run ${p.mark})`).join(', ');
    return `Reel ${i + 1} of ${metreWords(r.length)}: ${pieces}; ${metreWords(r.waste)} left.`;
  });
  return [
    ...lines,
    `Left on ${reels.length === 1 ? 'the reel' : `${reels.length} reels`}: ${metreWords(waste ?? 0)}.`,
  ];
}

/** Cable by cable. On paper nothing is said of reels: the printed sheet is made without them. */
export function cutBlocks({ cuts }: Pick<WireList, 'cuts'>): Block[] {
  return [
    heading(2, 'Cut list', { runIn: true, only: WRITTEN }),
    paragraph(LENGTHS, { only: WRITTEN }),
    ...cuts.flatMap((c) => [
      heading(3, cableWords(c), { only: WRITTEN }),
      heading(2, c.cable, { only: PRINTED }),
      paragraph(`${c.gauge}, ${countedCores(c.cores)}: ${metreWords(c.total)} in all`, { only: PRINTED }),
      table(c.pieces, COLUMNS, { name: 'cuts' }),
      list('indent', reelWords(c), { only: WRITTEN, close: true }),
    ]),
  ];
}

/** Every piece as a row; lengths in m. */
export function cutTable({ cuts }: WireList): Block {
  const pieces = cuts.flatMap((of) => of.pieces.map((piece) => ({ of, piece })));
  return table(pieces, [
    { head: 'cable', of: ({ of }) => of.cable },
    { head: 'gauge', of: ({ of }) => of.gauge },
    { head: 'cores', of: ({ of }) => `${of.cores}` },
    { head: 'run', of: ({ piece }) => piece.mark },
    { head: 'name', of: ({ piece }) => piece.name ?? '' },
    { head: 'route', of: ({ piece }) => piece.route ?? '' },
    { head: 'length m', of: ({ piece }) => (piece.length === null ? '' : `${piece.length}`) },
    { head: 'colours', of: ({ piece }) => piece.colours.join(' ') },
    { head: 'unused cores', of: ({ piece }) => `${piece.spare}` },
  ]);
}
