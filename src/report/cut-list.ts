/** The cut list: what to cut from which cable, and what is left. */
import type { CableCuts, WireList } from '../lists/wirelist-model.ts';
import { countedCores } from '../text/core-names.ts';
import { cutInBoth, cutWords, type LengthUnit } from '../text/lengths.ts';
import { type Block, type ColumnOf, heading, list, paragraph, table } from './blocks.ts';

type Piece = CableCuts['pieces'][number];

const LEAST_END = { m: '10 cm', ft: '4 in (10 cm)' } as const;
const ROUNDED = { m: 'centimetre', ft: 'inch' } as const;
export const lengthsNote = (unit: LengthUnit): string =>
  `Lengths have their slack in them: what the run states, else 10 %, and at least ${LEAST_END[unit]} at each end (common practice, no source), rounded up to the ${ROUNDED[unit]}. All cores of a run are one piece.`;

const other = (unit: LengthUnit): LengthUnit => (unit === 'ft' ? 'm' : 'ft');

const columns = (unit: LengthUnit): readonly ColumnOf<Piece>[] => [
  {
    head: 'piece',
    of: (p) => `run ${p.mark.replace('.', ' piece ')}${p.name === null ? '' : ` ${p.name}`}`,
  },
  { head: 'length', of: (p) => cutWords(p.length, p.unit) || 'not stated' },
  {
    head: unit === 'ft' ? 'metres' : 'feet',
    of: (p) => cutWords(p.length, other(p.unit)),
  },
  { head: 'cores', of: (p) => p.colours.join(', ') },
  { head: 'route', of: (p) => p.route ?? '' },
  { head: 'unused', of: (p) => (p.spare > 0 ? `${p.spare}` : '') },
];

export function cableWords({ cable, gauge, cores, pieces, total }: CableCuts, unit: LengthUnit): string {
  const what = cable.startsWith(gauge) ? cable : `${cable}, ${gauge}, ${countedCores(cores)}`;
  const count = pieces.length === 1 ? '1 piece' : `${pieces.length} pieces`;
  return `${what}: ${count}, ${cutInBoth(total, unit)} in all`;
}

/** One sentence a reel, then what is left of all of them. */
function reelWords({ reels, waste }: CableCuts, unit: LengthUnit): string[] {
  const words = (metres: number) => cutWords(metres, unit);
  if (reels === null) return [];
  const lines = reels.map((r, i) => {
    const pieces = r.pieces.map((p) => `${words(p.length)} (run ${p.mark})`).join(', ');
    return `Reel ${i + 1} of ${words(r.length)}: ${pieces}; ${words(r.waste)} left.`;
  });
  return [
    ...lines,
    `Left on ${reels.length === 1 ? 'the reel' : `${reels.length} reels`}: ${words(waste ?? 0)}.`,
  ];
}

/** Cable by cable, and reel by reel where reels are given. */
export function cutBlocks({ cuts, unit }: Pick<WireList, 'cuts' | 'unit'>): Block[] {
  return [
    heading(2, 'Cut list', { runIn: true }),
    paragraph(lengthsNote(unit)),
    ...cuts.flatMap((c) => [
      heading(3, cableWords(c, unit)),
      table(c.pieces, columns(unit)),
      list('indent', reelWords(c, unit), { close: true }),
    ]),
  ];
}

interface Cut {
  readonly of: CableCuts;
  readonly piece: Piece;
}

/** Every piece as a row; lengths in m, and as they are cut where the plan has feet. */
export function cutTable({ cuts, unit }: WireList): Block {
  const pieces = cuts.flatMap((of) => of.pieces.map((piece) => ({ of, piece })));
  return table(pieces, [
    { head: 'cable', of: ({ of }) => of.cable },
    { head: 'gauge', of: ({ of }) => of.gauge },
    { head: 'cores', of: ({ of }) => `${of.cores}` },
    { head: 'run', of: ({ piece }) => piece.mark },
    { head: 'name', of: ({ piece }) => piece.name ?? '' },
    { head: 'route', of: ({ piece }) => piece.route ?? '' },
    { head: 'length m', of: ({ piece }) => (piece.length === null ? '' : `${piece.length}`) },
    ...(unit === 'ft'
      ? [{ head: 'length', of: ({ piece }: Cut) => cutWords(piece.length, piece.unit) }]
      : []),
    { head: 'colours', of: ({ piece }) => piece.colours.join(' ') },
    { head: 'unused cores', of: ({ piece }) => `${piece.spare}` },
  ]);
}
