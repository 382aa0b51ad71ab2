/** Reads a map of runs back: from its lines and words alone, without what it was made from. */
import type { Plan } from '../../../src/plan/plan.ts';
import { columns } from '../../../src/text/wrap.ts';
import { type Element, readSvg } from '../svg-reader.ts';

/** One run as a map tells of it: its mark, how many cores go there, and the two places. */
export interface ReadRun {
  readonly mark: string;
  readonly cores: number;
  readonly from: string;
  readonly to: string;
}

export const asText = ({ mark, cores, from, to }: ReadRun): string =>
  `${mark}: ${cores} ${[from, to].sort().join(' - ')}`;

/** What the plan has between places, worked out by itself. */
export function runsOf(plan: Plan): ReadRun[] {
  const box = (part: string): string => {
    const holder = [...plan.parts.values()].find((p) => p.kind === 'box' && p.holds.includes(part));
    return holder === undefined ? part : box(holder.name);
  };
  return plan.runs.flatMap((run) => {
    const mark = run.piece === undefined ? `${run.entry}` : `${run.entry}.${run.piece}`;
    const pairs = run.cores
      .map((c) => [box(c.a.part), box(c.b.part)].sort())
      .filter(([a, b]) => a !== b)
      .map((pair) => JSON.stringify(pair));
    return [...new Set(pairs)].map((pair) => {
      const [from, to] = JSON.parse(pair) as [string, string];
      return { mark, cores: pairs.filter((p) => p === pair).length, from, to };
    });
  });
}

/** `5 m, 2 cores of bell, from B1 to bandsaw; where`. */
export function readWords(mark: string, words: string): ReadRun & { length: string } {
  const found =
    /^(.*?), (?:(\d+) (?:of the \d+ )?cores?(?: of .*?)?|bare link), from (\S+) to ([^\s;]+)(?:;.*)?$/.exec(
      words,
    );
  if (found === null) throw new Error(`no run: ${words}`);
  return { mark, length: found[1]!, cores: Number(found[2] ?? 1), from: found[3]!, to: found[4]! };
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly text: string;
}
type Piece = readonly [number, number, number, number];

export interface ReadLine {
  readonly run: ReadRun & { length: string };
  /** level pieces, and with the upright ones the two ends */
  readonly level: readonly Piece[];
  readonly ends: readonly (readonly [number, number])[];
}

export interface ReadMap {
  readonly words: readonly Box[];
  readonly sections: readonly {
    readonly lines: readonly ReadLine[];
    readonly places: readonly { readonly x: number; readonly y: number; readonly name: string }[];
  }[];
  readonly levels: readonly Piece[];
}

const number = (e: Element, key: string): number => Number(e.attributes[key]);

function pieces(e: Element): Piece[] {
  return [...e.attributes.d!.matchAll(/M(\S+) ([^L]+)L(\S+) ([^M]+)/g)].map(
    (m) => m.slice(1).map(Number) as unknown as Piece,
  );
}

/** Letters of the map are as wide as 0.615 of their size at most: the widest of the fonts it names, measured. */
function boxOf(e: Element): Box {
  const size = number(e, 'font-size');
  const width = columns(e.text) * size * 0.615;
  const x = e.attributes['text-anchor'] === 'end' ? number(e, 'x') - width : number(e, 'x');
  return { x, y: number(e, 'y') - size * 0.78, width, height: size, text: e.text };
}

/** Ends of a chain of pieces: points that are met an odd number of times. */
function endsOf(all: readonly Piece[]): (readonly [number, number])[] {
  const met = new Map<string, readonly [number, number]>();
  for (const [x1, y1, x2, y2] of all)
    for (const p of [[x1, y1] as const, [x2, y2] as const]) {
      const key = p.map((n) => n.toFixed(1)).join();
      if (met.has(key)) met.delete(key);
      else met.set(key, p);
    }
  return [...met.values()];
}

/** The words of each run, told apart by the marks before them. */
function told(g: Element): { mark: string; words: string }[] {
  const found: { mark: string; words: string }[] = [];
  for (const e of g.children) {
    if (e.name !== 'text') continue;
    if (e.attributes.class === 'mark') found.push({ mark: e.text, words: '' });
    else if (e.attributes['font-weight'] === undefined && e.attributes['font-style'] === undefined)
      found.at(-1)!.words += `${found.at(-1)!.words === '' ? '' : ' '}${e.text}`;
  }
  return found;
}

export function readMap(svg: string): ReadMap {
  const { children } = readSvg(svg);
  const words: Box[] = [];
  const sections: ReadMap['sections'][number][] = [];
  for (const [i, g] of children.entries()) {
    if (g.name === 'text') words.push(boxOf(g));
    if (g.attributes.class !== 'runs') continue;
    const [places, texts] = [children[i + 1]!, children[i + 2]!];
    const own = texts.children.filter((e) => e.name === 'text');
    words.push(...own.map(boxOf));
    const names = own.filter((e) => e.attributes['font-weight'] === 'bold' && e.attributes.class !== 'mark');
    const runs = told(texts);
    const drawn: { level: Piece[]; all: Piece[] }[] = [];
    let way: Piece[] = [];
    for (const e of g.children) {
      if (e.attributes.class === 'way') way = pieces(e);
      else {
        drawn.push({ level: pieces(e), all: [...way, ...pieces(e)] });
        way = [];
      }
    }
    if (drawn.length !== runs.length) throw new Error(`${drawn.length} lines and ${runs.length} words`);
    sections.push({
      lines: drawn.map(({ level, all }, k) => ({
        run: readWords(runs[k]!.mark, runs[k]!.words),
        level,
        ends: endsOf(all),
      })),
      places: places.children.map((e) => {
        const x = number(e, 'x') + number(e, 'width') / 2;
        const y = number(e, 'y') + number(e, 'height') / 2;
        const beside = names
          .filter((n) => Math.abs(number(n, 'y') - y - 4) < 3 && number(n, 'x') > x)
          .sort((a, b) => number(a, 'x') - number(b, 'x'))[0]!;
        return { x, y, name: beside.text.split(':')[0]! };
      }),
    });
  }
  return { words, sections, levels: sections.flatMap((s) => s.lines.flatMap((l) => l.level)) };
}
