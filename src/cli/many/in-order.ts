/** Pieces of work done several at a time and used in their order. */

/** Characters of what is done that may wait for something before it; beyond them nothing new is begun. */
const MOST_WAITING = 8_000_000;

export interface Pieces<T> {
  readonly count: number;
  /** how many are worked on at the same time */
  readonly atOnce: number;
  readonly work: (index: number) => Promise<T>;
  /** characters that it takes while it waits */
  readonly size: (done: T) => number;
  /** called once for each, in order, one after the other */
  readonly use: (done: T, index: number) => Promise<void>;
  /** called when one that has to wait is done, with how many are done */
  readonly waits?: (done: number) => void;
  /** settles when nothing more is to be done */
  readonly stop: Promise<unknown>;
}

/**
 * Does the pieces and uses each as soon as it and all before it are done. What is done too early waits, up to so many
 * characters in all, so that a slow first piece holds no more memory than that. Resolves to how many were used: less than
 * `count` only where `stop` settled.
 */
export async function inOrder<T>(pieces: Pieces<T>): Promise<number> {
  const { count, atOnce, work, size, use, stop } = pieces;
  const busy = new Map<number, Promise<number>>();
  const waiting = new Map<number, T>();
  let [begun, due, held] = [0, 0, 0];
  let stopped = false;
  const stopping = stop.then(() => {
    stopped = true;
    return -1;
  });
  const begin = (index: number) =>
    busy.set(
      index,
      work(index).then((done) => {
        waiting.set(index, done);
        held += size(done);
        return index;
      }),
    );
  while (due < count) {
    while (begun < count && busy.size < atOnce && held <= MOST_WAITING) begin(begun++);
    const index = await Promise.race([stopping, ...busy.values()]);
    if (stopped) break;
    busy.delete(index);
    if (index !== due) pieces.waits?.(due + waiting.size);
    for (let done = waiting.get(due); done !== undefined && !stopped; done = waiting.get(due)) {
      waiting.delete(due);
      held -= size(done);
      await use(done, due);
      due++;
    }
    if (stopped) break;
  }
  return due;
}
