import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { unifiedDiff } from '../../src/edit/unified-diff.ts';

const lines = (n: number, from = 1) => Array.from({ length: n }, (_, i) => `${from + i}\n`).join('');

/** Applies a unified diff by its own line numbers; throws where the text does not hold what the diff says. */
function patched(before: string, diff: string): string {
  const old = before.match(/[^\n]*\n|[^\n]+$/g) ?? [];
  const out: string[] = [];
  let at = 0;
  const body = diff.match(/[^\n]*\n/g) ?? [];
  for (const [i, line] of body.slice(2).entries()) {
    const text = body[i + 3]?.startsWith('\\ No newline') ? line.slice(1, -1) : line.slice(1);
    const head = /^@@ -(\d+)(?:,(\d+))? \+(\d+)(?:,(\d+))? @@\n$/.exec(line);
    if (head !== null) {
      const start = Number(head[1]) - (head[2] === '0' ? 0 : 1);
      out.push(...old.slice(at, start));
      at = start;
      expect(out.length).toBe(Number(head[3]) - (head[4] === '0' ? 0 : 1));
    } else if (line.startsWith('\\')) continue;
    else {
      if (line[0] !== '+') expect(old[at++]).toBe(text);
      if (line[0] !== '-') out.push(text);
    }
  }
  return [...out, ...old.slice(at)].join('');
}

describe('unified diff', () => {
  it('shows a changed line with three lines round it', () => {
    expect(unifiedDiff(lines(9), lines(9).replace('5', 'five'), 'a.yaml')).toBe(
      '--- a.yaml\n+++ a.yaml\n@@ -2,7 +2,7 @@\n 2\n 3\n 4\n-5\n+five\n 6\n 7\n 8\n',
    );
  });

  it('says nothing of two equal texts', () => expect(unifiedDiff('a\n', 'a\n', 'x')).toBe(''));

  it('parts changes that lie far from each other, and joins near ones', () => {
    const far = unifiedDiff(lines(20), lines(20).replace('3\n', 'x\n').replace('15\n', ''), 'a');
    expect(far.match(/^@@.*/gm)).toEqual(['@@ -1,6 +1,6 @@', '@@ -12,7 +12,6 @@']);
    const near = unifiedDiff(lines(20), lines(20).replace('3\n', 'x\n').replace('10\n', 'y\n'), 'a');
    expect(near.match(/^@@.*/gm)).toEqual(['@@ -1,13 +1,13 @@']);
  });

  it('keeps the line ends of Windows and tells of a missing last one', () => {
    expect(unifiedDiff('a\r\nb\r\n', 'a\r\nc\r\n', 'f')).toContain('-b\r\n+c\r\n');
    expect(unifiedDiff('a\nb', 'a\nb\nc', 'f')).toBe(
      '--- f\n+++ f\n@@ -1,2 +1,3 @@\n a\n-b\n\\ No newline at end of file\n+b\n+c\n\\ No newline at end of file\n',
    );
    expect(unifiedDiff('', 'a\n', 'f')).toContain('@@ -0,0 +1 @@\n+a\n');
    expect(unifiedDiff('a\n', '', 'f')).toContain('@@ -1 +0,0 @@\n-a\n');
  });

  it('ends a name with a blank in it by a tab', () => {
    expect(unifiedDiff('a\n', 'b\n', 'my plan.yaml')).toMatch(
      /^--- my plan\.yaml\t\n\+\+\+ my plan\.yaml\t\n/,
    );
  });

  it('applies, whatever the texts are', () => {
    const text = fc
      .tuple(
        fc.array(fc.constantFrom('a\n', 'b\n', 'c\r\n', '\n', ' d\n', '-e\n', '@@\n'), { maxLength: 30 }),
        fc.constantFrom('', 'end'),
      )
      .map(([all, end]) => all.join('') + end);
    fc.assert(
      fc.property(text, text, (a, b) => {
        expect(patched(a, unifiedDiff(a, b, 'f'))).toBe(b);
      }),
      { numRuns: 500 },
    );
  });
});
