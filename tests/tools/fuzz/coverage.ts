/** Which code of ours has run so far, told by the block coverage of the engine that runs it. */
import { type Profiler, Session } from 'node:inspector';

type Range = readonly [number, number];

/** What two lists of ranges have in common. */
function common(a: readonly Range[], b: readonly Range[]): Range[] {
  return a.flatMap(([from, to]) =>
    b.flatMap(([f, t]): Range[] =>
      Math.max(from, f) < Math.min(to, t) ? [[Math.max(from, f), Math.min(to, t)]] : [],
    ),
  );
}

const length = (ranges: readonly Range[]): number => ranges.reduce((sum, [from, to]) => sum + to - from, 0);

export class Coverage {
  readonly #session = new Session();
  /** what has never run of each function that has */
  readonly #never = new Map<string, readonly Range[]>();

  constructor() {
    this.#session.connect();
    this.#session.post('Profiler.enable');
    this.#session.post('Profiler.startPreciseCoverage', { callCount: false, detailed: true });
  }

  /** Functions that ran for the first time, or further than ever, since this was asked last. */
  news(): number {
    let taken: Profiler.ScriptCoverage[] = [];
    this.#session.post('Profiler.takePreciseCoverage', (_error, { result }) => {
      taken = result;
    });
    let news = 0;
    for (const { url, functions } of taken)
      if (url.includes('/src/')) for (const of of functions) if (this.#isNews(url, of)) news++;
    return news;
  }

  #isNews(url: string, { ranges }: Profiler.FunctionCoverage): boolean {
    const whole = ranges[0]!;
    if (whole.count === 0) return false;
    const key = `${url}:${whole.startOffset}:${whole.endOffset}`;
    const idle = outermost(
      ranges.slice(1).flatMap((r): Range[] => (r.count === 0 ? [[r.startOffset, r.endOffset]] : [])),
    );
    const before = this.#never.get(key);
    if (before === undefined) {
      this.#never.set(key, idle);
      return true;
    }
    const now = common(before, idle);
    if (length(now) === length(before)) return false;
    this.#never.set(key, now);
    return true;
  }

  get functions(): number {
    return this.#never.size;
  }
}

/** Ranges that lie in no other, in their order. */
function outermost(ranges: readonly Range[]): Range[] {
  const out: Range[] = [];
  for (const range of [...ranges].sort((a, b) => a[0] - b[0] || b[1] - a[1]))
    if (out.length === 0 || range[0] >= out.at(-1)![1]) out.push(range);
  return out;
}
