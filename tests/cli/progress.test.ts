/** How far a long piece of work is, on a terminal and in a pipe. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Session } from '../../src/cli/io.ts';
import { main } from '../../src/cli/main.ts';
import { progress } from '../../src/cli/progress.ts';
import { WHOLE } from '../helpers/share.ts';

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

describe('of a command', () => {
  /** What comes to standard error on a terminal whose clock runs so fast that every step is told. */
  async function told(args: readonly string[]): Promise<string[]> {
    const written: string[] = [];
    vi.useRealTimers();
    let now = Date.now();
    const clock = vi.spyOn(Date, 'now').mockImplementation(() => (now += 600));
    try {
      const io = {
        stdin: (async function* () {})(),
        stdout: { write: () => true },
        stderr: { isTTY: true, write: (text: string) => written.push(text) },
        env: {},
      };
      expect(await main(args, io)).toBe(0);
    } finally {
      clock.mockRestore();
    }
    return written;
  }
  const plan = 'examples/linnet-garage.yaml';

  it.each([
    ['meter', plan],
    ...(WHOLE
      ? [
          ['faults', plan],
          ['sheet', '-o', '-', plan],
        ]
      : []),
  ])('%s goes forward alone, and is wiped at the end', async (...args) => {
    const written = await told(args);
    const shown = percents(written);
    expect(shown.length).toBeGreaterThan(2);
    expect(shown).toEqual([...shown].sort((a, b) => a - b));
    expect(shown.at(-1)).toBeLessThanOrEqual(100);
    expect(written.at(-1)).toMatch(/^\r +\r$/);
  });

  it.each([['mend', plan], ...(WHOLE ? [['hunt', plan]] : [])])('%s has none', async (...args) => {
    expect(await told(args)).toEqual([]);
  });
});
