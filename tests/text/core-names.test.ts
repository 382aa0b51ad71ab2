import { expect, it } from 'vitest';
import {
  bothCores,
  coreBetween,
  coreFromTo,
  coresOf,
  countedCores,
  drawnInLetters,
  drawnInWords,
  theCore,
} from '../../src/text/core-names.ts';

const red = { colour: 'red', a: 'bandsaw.COM', b: 'planer.COM' };

it('names a core by its colour, and a link as one', () => {
  expect(theCore(red)).toBe('the red core');
  expect(coreFromTo(red)).toBe('the red core from bandsaw.COM to planer.COM');
  expect(coreBetween({ ...red, link: true }, 'run 3', 12)).toBe(
    'the link between bandsaw.COM and planer.COM (run 3, line 12)',
  );
});

it('names and counts several', () => {
  expect(bothCores('red', 'white')).toBe('the red and the white core');
  expect(coresOf(['red'])).toBe('red core');
  expect(coresOf(['red', 'white'])).toBe('red and white cores');
  expect(coresOf(['red', 'red'])).toBe('red cores');
  expect([1, 4].map(countedCores)).toEqual(['1 core', '4 cores']);
});

it('is short on a drawing', () => {
  const drawn = { run: '3', colour: 'white' };
  expect(drawnInWords(drawn)).toBe('3 white');
  expect(drawnInWords({ ...drawn, link: true })).toBe('3 link');
  expect(drawnInLetters(drawn)).toBe('3 WH');
  expect(drawnInLetters({ run: '3', colour: 'turquoise' })).toBe('3 TQ');
});
