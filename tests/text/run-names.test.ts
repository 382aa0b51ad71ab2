import { expect, it } from 'vitest';
import { type NumberedRun, runMark, runsText, runText } from '../../src/text/run-names.ts';

const plain = (...entries: number[]): NumberedRun[] => entries.map((entry) => ({ entry }));
const pieces = (entry: number, of: number, ...all: number[]): NumberedRun[] =>
  all.map((piece) => ({ entry, piece, pieces: of }));

it('names a run, and a piece of one along several parts', () => {
  expect([runText({ entry: 3 }), runText({ entry: 3, piece: 2, pieces: 4 })]).toEqual([
    'run 3',
    'run 3 piece 2',
  ]);
  expect([runMark({ entry: 3 }), runMark({ entry: 3, piece: 2, pieces: 4 })]).toEqual(['3', '3.2']);
});

it('names several in stretches, a run whose pieces are all meant as one', () => {
  expect(runsText(plain(3))).toBe('run 3');
  expect(runsText(plain(4, 3, 5, 6))).toBe('runs 3 to 6');
  expect(runsText(plain(1, 9, 3, 4, 5, 6))).toBe('runs 1, 3 to 6 and 9');
  expect(runsText(pieces(4, 9, 1, 2, 3))).toBe('run 4 pieces 1 to 3');
  expect(runsText(pieces(4, 3, 3, 1, 2))).toBe('run 4');
  expect(runsText([...plain(3), ...pieces(4, 2, 1, 2), ...pieces(6, 3, 2)])).toBe(
    'runs 3 and 4 and run 6 piece 2',
  );
  expect(runsText(plain(1, 3, 5, 7, 9, 11, 13))).toBe('7 runs from 1 to 13');
  expect(runsText(pieces(2, 20, 1, 3, 5, 7, 9, 11, 13))).toBe('7 pieces of run 2');
});
