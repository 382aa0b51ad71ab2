/** Figures by which a drawing is judged: how straight its conductors run, and how well they use the paper. */
import type { Drawing, DrawnCore, Point } from '../../src/draw/drawing.ts';

export interface DrawingFigures {
  /** corners of all conductors */
  readonly bends: number;
  /** px of all conductors, and of the least way between their ends */
  readonly length: number;
  readonly least: number;
  /** places where two conductors cross */
  readonly crossings: number;
}

const way = (a: Point, b: Point): number => Math.abs(a.x - b.x) + Math.abs(a.y - b.y);

const lengthOf = ({ path }: DrawnCore): number =>
  path.slice(1).reduce((sum, p, i) => sum + way(path[i]!, p), 0);

interface Piece {
  readonly core: string;
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

/** Level and upright pieces of all conductors. */
function piecesOf(cores: readonly DrawnCore[]): { level: Piece[]; upright: Piece[] } {
  const [level, upright]: [Piece[], Piece[]] = [[], []];
  for (const { id, path } of cores)
    path.slice(1).forEach((q, i) => {
      const p = path[i]!;
      if (p.y === q.y) level.push({ core: id, at: p.y, from: Math.min(p.x, q.x), to: Math.max(p.x, q.x) });
      else upright.push({ core: id, at: p.x, from: Math.min(p.y, q.y), to: Math.max(p.y, q.y) });
    });
  return { level, upright };
}

/** Places where conductors cross, each once however many lie there. */
function crossingsOf(cores: readonly DrawnCore[]): number {
  const { level, upright } = piecesOf(cores);
  level.sort((a, b) => a.at - b.at);
  const places = new Set<string>();
  for (const u of upright)
    for (const l of level) {
      if (l.at >= u.to) break;
      if (l.at > u.from && u.at > l.from && u.at < l.to && u.core !== l.core) places.add(`${u.at} ${l.at}`);
    }
  return places.size;
}

/** The figures of one drawing. */
export function figuresOf({ cores }: Drawing): DrawingFigures {
  const ends = cores.map(({ path }) => way(path[0]!, path.at(-1)!));
  return {
    bends: cores.reduce((sum, { path }) => sum + Math.max(0, path.length - 2), 0),
    length: cores.reduce((sum, core) => sum + lengthOf(core), 0),
    least: ends.reduce((sum, end) => sum + end, 0),
    crossings: crossingsOf(cores),
  };
}
