/** How far a long piece of work is, on a terminal and in a pipe. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Session } from '../../src/cli/io.ts';
import { progress } from '../../src/cli/progress.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

function watched(isTTY: boolean) {
  const written: string[] = [];
  const push = (text: string) => written.push(text);
  const err = { write: push, raw: push };
  const session = { io: { stderr: { isTTY } }, err } as unknown as Session;
  return { written, bar: progress('trying faults:', session) };
}

const percents = (written: readonly string[]) =>
  written.flatMap((text) => [...(/(\d+) %/.exec(text) ?? [])].slice(1)).map(Number);

describe.each([
  ['a terminal', true],
  ['a pipe', false],
] as const)('on %s', (_, isTTY) => {
  it('never goes back, also where there turns out to be more to do', () => {
    const { written, bar } = watched(isTTY);
    for (const [done, of] of [
      [10, 100],
      [60, 100],
      [61, 300],
      [200, 300],
      [290, 300],
    ] as const) {
      vi.advanceTimersByTime(3000);
      bar.step(done, of);
    }
    const told = percents(written);
    expect(told.length).toBeGreaterThan(2);
    expect(told).toEqual([...told].sort((a, b) => a - b));
    expect(told.at(-1)).toBe(96);
  });

  it('says nothing of work that is over in a blink', () => {
    const { written, bar } = watched(isTTY);
    vi.advanceTimersByTime(400);
    bar.step(1, 2);
    bar.done();
    expect(written).toEqual([]);
  });
});

describe('in a pipe', () => {
  it('is told when it takes over two seconds, a line each, and only what is new', () => {
    const { written, bar } = watched(false);
    vi.advanceTimersByTime(1900);
    bar.step(1, 100);
    expect(written).toEqual([]);
    vi.advanceTimersByTime(200);
    bar.step(2, 100);
    vi.advanceTimersByTime(2100);
    bar.step(2, 100);
    vi.advanceTimersByTime(2100);
    bar.step(40, 100);
    bar.done();
    expect(written).toEqual(['trying faults: 2 %\n', 'trying faults: 40 %\n']);
  });
});
