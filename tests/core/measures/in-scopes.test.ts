import { expect, it } from 'vitest';
import { inScopes, type Place } from '../../../src/core/measures/in-scopes.ts';

const places: Place[] = [
  { line: 0, repeat: 0, hand: 'R', partial: 1 },
  { line: 0, repeat: 1, hand: null, partial: 2 },
  { line: 1, repeat: 0, hand: 'L', partial: 1 },
  { line: 1, repeat: 1, hand: 'R', partial: 2 },
];
const asItIs = (place: Place) => place;

it('gathers what belongs to each scope, in order', () => {
  const found = inScopes([{ line: 1 }, { line: 0 }, { line: 2 }], places, asItIs);
  expect(found).toEqual([[places[2], places[3]], [places[0], places[1]], []]);
});

it('wants everything that a scope names', () => {
  expect(inScopes([{ line: 0, repeat: 1 }], places, asItIs)).toEqual([[places[1]]]);
});

it('takes what is of no known hand for neither', () => {
  expect(inScopes([{ hand: 'R' }, { hand: 'L' }], places, asItIs)).toEqual([
    [places[0], places[3]],
    [places[2]],
  ]);
});

it('takes everything for a scope that names nothing, and no scopes for none', () => {
  expect(inScopes([{}], places, asItIs)).toEqual([places]);
  expect(inScopes([], places, asItIs)).toEqual([]);
});
