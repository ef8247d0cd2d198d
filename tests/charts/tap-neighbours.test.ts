import { expect, it } from 'vitest';
import { tapNeighbours } from '../../src/charts/tap-neighbours.ts';
import { walkingTake } from './walking-take.ts';

it('tells the level of the taps by their place: −21 dB after an accent, −24 dB elsewhere by construction', () => {
  const rows = tapNeighbours.table(walkingTake()).rows.map(([place, , middle]) => [place, middle]);
  expect(rows).toEqual([
    ['right before an accent', '\u221224.0 dB'],
    ['right after an accent', '\u221221.0 dB'],
    // Where the accent moves on a partial there is a tap between.
    ['away from accents', '\u221224.0 dB'],
  ]);
});
