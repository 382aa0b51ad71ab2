/** A plan's text with the places of its core ends, so that a mistake can be written into it without a rewrite. */
import { isMap, isScalar, isSeq, parseDocument } from 'yaml';
import { keyOf, readWiring, type Wiring } from '../brute-read.ts';

export type Side = 0 | 1;

/** One end of one core (or link) and where it stands in the text. */
export interface End {
  core: number;
  side: Side;
  written: string;
  /** the one key of its terminal */
  key: string;
  from: number;
  to: number;
}

export interface Core {
  run: number;
  /** colour, or `link` */
  colour: string;
  ends: [End, End];
  line: number;
  /** text that goes when this core is left out */
  span: [number, number];
}

export interface Splice {
  from: number;
  to: number;
  put: string;
}

export interface Sheet {
  text: string;
  wiring: Wiring;
  cores: Core[];
  ends: End[];
  /** where `parts:` ends its line, and where the last run ends its line */
  partsAt: number;
  runsEnd: number;
}

export const partOf = (terminal: string): string => terminal.split('.')[0]!;
export const lineAt = (text: string, offset: number): number => text.slice(0, offset).split('\n').length;

/** Writes all the changes, none of which may overlap. */
export function splice(text: string, changes: readonly Splice[]): string {
  let out = text;
  for (const c of [...changes].sort((a, b) => b.from - a.from)) {
    out = out.slice(0, c.from) + c.put + out.slice(c.to);
  }
  return out;
}

function wholeLines(text: string, from: number, to: number): [number, number] {
  const start = text.lastIndexOf('\n', from) + 1;
  const next = text.indexOf('\n', Math.max(start, to - 1));
  return [start, next < 0 ? text.length : next + 1];
}

/** Reads the cores and their places; throws on a text that is no plan. */
export function sheetOf(text: string): Sheet {
  const doc = parseDocument(text);
  const wiring = readWiring(text);
  const cores: Core[] = [];
  const ends: End[] = [];
  const add = (run: number, colour: string, pair: unknown, span: [number, number]): void => {
    if (!isSeq(pair) || pair.items.length !== 2) return;
    const made = pair.items.map((x, side): End => {
      if (!isScalar(x) || !x.range) throw new Error('corpus: an end without a place');
      const written = String(x.value);
      return {
        core: cores.length,
        side: side as Side,
        written,
        key: keyOf(wiring.parts, written),
        from: x.range[0],
        to: x.range[1],
      };
    });
    cores.push({ run, colour, ends: [made[0]!, made[1]!], line: lineAt(text, made[0]!.from), span });
    ends.push(...made);
  };
  const runs = doc.get('runs');
  let runsEnd = text.length;
  if (isSeq(runs)) {
    runs.items.forEach((run, r) => {
      if (!isMap(run) || !run.range) return;
      const whole = wholeLines(text, run.range[0], run.range[1]);
      runsEnd = whole[1];
      const map = run.get('cores');
      if (!isMap(map)) {
        add(r, 'link', run.get('link', true), whole);
        return;
      }
      const places = map.items.map((p): [number, number] => {
        const [key, value] = [p.key, p.value];
        if (!isScalar(key) || !isSeq(value) || !key.range || !value.range) throw new Error('corpus: a core');
        return [key.range[0], value.range[1]];
      });
      map.items.forEach((p, i) => {
        const [next, last] = [places[i + 1], places[i - 1]];
        const span: [number, number] =
          places.length === 1 ? whole : next ? [places[i]![0], next[0]] : [last![1], places[i]![1]];
        add(r, String(isScalar(p.key) ? p.key.value : i), p.value, span);
      });
    });
  }
  const at = text.search(/^parts:.*$/m);
  return { text, wiring, cores, ends, partsAt: text.indexOf('\n', at) + 1, runsEnd };
}

/** The text with one more jumper. */
export const withLink = (s: Sheet, a: string, b: string): string =>
  splice(s.text, [{ from: s.runsEnd, to: s.runsEnd, put: `  - {link: [${a}, ${b}]}\n` }]);

/** The text with one core left out. */
export const without = (s: Sheet, core: Core): string =>
  splice(s.text, [{ from: core.span[0], to: core.span[1], put: '' }]);
