import { expect, it } from 'vitest';
import { colourOf, lettersOf } from '../../src/text/core-colours.ts';

it.each([
  ['white', 'white', undefined],
  ['Gray', 'grey', undefined],
  ['light blue', 'blue', undefined],
  ['black 2', 'black', undefined],
  ['black2', 'black', undefined],
  ['green-yellow', 'green-yellow', undefined],
  ['Yellow/Green', 'green-yellow', undefined],
  ['green with yellow stripe', 'green-yellow', undefined],
  ['white with red stripe', 'white', 'red'],
  // letters of IEC 60757
  ['BN', 'brown', undefined],
  ['GNYE', 'green-yellow', undefined],
  ['gn/ye', 'green-yellow', undefined],
  ['WHBU', 'white', 'blue'],
  ['bare copper', 'bare', undefined],
])('%s is %s', (name, colour, stripe) => {
  expect(colourOf(name)).toEqual(stripe === undefined ? { colour } : { colour, stripe });
});

it.each(['1', 'L', 'PE', 'hot', 'greenhouse', 'white noise', 'red green blue', 'copper', 'constructor', ''])(
  '"%s" says no colour',
  (name) => {
    expect(colourOf(name)).toBeUndefined();
  },
);

it('a colour with a number keeps its name on a drawing', () => {
  expect(lettersOf('green/yellow')).toBe('GNYE');
  expect(lettersOf('white with red stripe')).toBe('WHRD');
  expect(lettersOf('black 2')).toBeUndefined();
});
