import { describe, expect, it } from 'vitest';
import {
  findSticking,
  longestRun,
  namedStickings,
  sixNoteStickings,
  stickingsFor,
} from '../../../src/core/exercise/stickings.ts';

/** Longest run of equal signs round a circle, by walking it twice: another way than the one under test. */
function runRoundTheCircle(signs: readonly number[]): number {
  let longest = 0;
  let run = 0;
  for (let step = 0; step < 2 * signs.length; step++) {
    run = step > 0 && signs[step % signs.length] === signs[(step - 1) % signs.length] ? run + 1 : 1;
    longest = Math.max(longest, run);
  }
  return longest;
}

const allowed = Array.from({ length: 64 }, (_, bits) =>
  [0, 1, 2, 3, 4, 5].map((place) => (bits >> place) & 1),
).filter((signs) => runRoundTheCircle(signs) <= 3);

/** Orbits under a group of moves = mean number of patterns that a move leaves alone (Burnside's lemma). */
function orbits(moves: readonly ((signs: readonly number[]) => readonly number[])[]): number {
  const fixed = moves.map((move) => allowed.filter((signs) => move(signs).join() === signs.join()).length);
  return fixed.reduce((sum, one) => sum + one, 0) / moves.length;
}

const same = (signs: readonly number[]) => signs;
const swap = (signs: readonly number[]) => signs.map((sign) => 1 - sign);
const laterBeat = (signs: readonly number[]) => [...signs.slice(3), ...signs.slice(0, 3)];

describe('sixNoteStickings', () => {
  it('holds every pattern once, up to swapping the hands', () => {
    // 64 patterns less those with a run of 4 or 5 (6 starts × 2 hands each) and 6 (2): 64 - 12 - 12 - 2.
    expect(allowed).toHaveLength(38);
    expect(orbits([same, swap])).toBe(19);
    expect(sixNoteStickings()).toHaveLength(19);
    const spelled = sixNoteStickings().map(({ cycle }) => cycle.repeat(6 / cycle.length));
    const both = [
      ...spelled,
      ...spelled.map((cycle) => cycle.replace(/./g, (hand) => (hand === 'R' ? 'L' : 'R'))),
    ];
    const expected = allowed.map((signs) => signs.map((sign) => 'RL'[sign]).join(''));
    expect(both.sort()).toEqual(expected.sort());
  });

  it('would hold 13 if a loop begun on its other beat were the same', () => {
    expect(orbits([same, swap, laterBeat, (signs) => swap(laterBeat(signs))])).toBe(13);
  });
});

describe('longestRun', () => {
  it('runs on from the end to the start', () => {
    expect(longestRun('RRLLLR')).toBe(3);
    expect(longestRun('RRLRR')).toBe(4);
    expect(longestRun('RR')).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('findSticking', () => {
  it('finds the example of its comment', () => {
    expect(findSticking('RRLL', 3)?.id).toBe('doubles');
  });

  it('finds by id and by hands, however often they are written', () => {
    expect(findSticking(' Hand-to-Hand ', 4)?.id).toBe('hand-to-hand');
    expect(findSticking('rlrlrl', 3)?.id).toBe('hand-to-hand');
    expect(findSticking('rlr', 3)?.id).toBe('rlrrlr');
    expect(findSticking('RRRLLL', 3)?.id).toBe('triples');
    expect(findSticking('RRRR', 3)).toBeNull();
    expect(findSticking('rrlrrl', 4)).toBeNull();
  });

  it('gives every sticking of a division an id of its own', () => {
    for (const parts of [2, 3, 4, 5, 6]) {
      const ids = stickingsFor(parts).map(({ id }) => id);
      expect(new Set(ids).size).toBe(ids.length);
    }
    expect(namedStickings.doubleParadiddle.cycle).toHaveLength(12);
  });
});
