/** Judging where cores meet: what lies over, touches or parts from what, and the dots that say so. */
import type { Drawing, Point } from '../../src/draw/drawing.ts';
import { lineOf, placeKey, placeText, stepped } from './geometry-lines.ts';
import { type Strand, type Stranded, strandsOf } from './geometry-strands.ts';

/** One straight piece of a strand, from `points[nth]` on: from `low` to `high` along its row. */
interface Piece {
  readonly strand: Strand;
  readonly nth: number;
  readonly low: number;
  readonly high: number;
}

type Rows = Map<number, Piece[]>;

/** Horizontal pieces by their y and vertical ones by their x, each row in order. */
function rowsOf(strands: readonly Strand[]): { level: Rows; upright: Rows } {
  const [level, upright]: [Rows, Rows] = [new Map(), new Map()];
  for (const strand of strands) {
    for (let nth = 0; nth + 1 < strand.points.length; nth++) {
      const [p, q] = [strand.points[nth]!, strand.points[nth + 1]!];
      if (p.x !== q.x && p.y !== q.y) continue;
      const [rows, at, a, b] = p.y === q.y ? [level, p.y, p.x, q.x] : [upright, p.x, p.y, q.y];
      const piece = { strand, nth, low: Math.min(a, b), high: Math.max(a, b) };
      const row = rows.get(at);
      if (row === undefined) rows.set(at, [piece]);
      else row.push(piece);
    }
  }
  for (const rows of [level, upright]) for (const row of rows.values()) row.sort((a, b) => a.low - b.low);
  return { level, upright };
}

/** Two cores, one of each strand; one alone where the strands hold no other. */
function pairOf(a: Strand, b: Strand): [string, string | undefined] {
  const x = a.cores.find((core) => !b.cores.includes(core)) ?? a.cores[0]!;
  return [x, b.cores.find((core) => core !== x)];
}

function overlaps(rows: Rows, place: (along: number, at: number) => Point): string[] {
  const faults: string[] = [];
  for (const [at, row] of rows) {
    row.forEach((a, i) => {
      for (let j = i + 1; j < row.length && row[j]!.low < a.high; j++) {
        const b = row[j]!;
        const [x, y] = pairOf(a.strand, b.strand);
        const who =
          y === undefined ? `core ${x} lies over itself` : `cores ${x} and ${y} lie over each other`;
        const [from, to] = [place(b.low, at), place(Math.min(a.high, b.high), at)];
        faults.push(`${who} from ${placeText(from)} to ${placeText(to)}`);
      }
    });
  }
  return faults;
}

function* through(row: readonly Piece[] | undefined, along: number): Iterable<Piece> {
  for (const piece of row ?? []) {
    if (piece.low > along) return;
    if (piece.high >= along) yield piece;
  }
}

/** True where two strands join at a place. */
const joinAt = (a: Strand, b: Strand, p: Point): boolean =>
  a.ends.some((knot) => b.ends.includes(knot) && knot.at.x === p.x && knot.at.y === p.y);

/** Corners and ends of strands that lie on another strand, or on their own once more. */
function touches(strands: readonly Strand[], { level, upright }: { level: Rows; upright: Rows }): string[] {
  const faults: string[] = [];
  for (const strand of strands) {
    strand.points.forEach((p, i) => {
      for (const other of [...through(level.get(p.y), p.x), ...through(upright.get(p.x), p.y)]) {
        const own = other.strand === strand;
        if (own ? other.nth === i || other.nth === i - 1 : joinAt(strand, other.strand, p)) continue;
        const [x, y] = pairOf(strand, other.strand);
        const who = y === undefined ? `core ${x} touches itself` : `core ${x} turns or ends on core ${y}`;
        faults.push(`${who} at ${placeText(p)}`);
      }
    });
  }
  return faults;
}

function dotFaults(dots: readonly Point[], { partings, ports }: Stranded): string[] {
  const drawn = new Set<string>();
  const faults: string[] = [];
  for (const dot of dots.map(stepped)) {
    const key = placeKey(dot);
    if (drawn.has(key)) faults.push(`two dots at ${placeText(dot)}`);
    drawn.add(key);
    if (!partings.has(key) && !ports.has(key))
      faults.push(`dot at ${placeText(dot)}, where no cores of one terminal part`);
  }
  for (const [key, text] of partings) if (!drawn.has(key)) faults.push(text);
  return faults;
}

/** Faults of cores among themselves, and of dots; empty when right. Paths must be level and upright. */
export function meetFaults({ cores, dots }: Drawing): string[] {
  const stranded = strandsOf(cores.map(lineOf));
  const { strands } = stranded;
  const rows = rowsOf(strands);
  const faults = [
    ...stranded.faults,
    ...overlaps(rows.level, (along, at) => ({ x: along, y: at })),
    ...overlaps(rows.upright, (along, at) => ({ x: at, y: along })),
    ...touches(strands, rows),
    ...dotFaults(dots, stranded),
  ];
  return [...new Set(faults)];
}
