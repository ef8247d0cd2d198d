import { describe, expect, it } from 'vitest';
import { findExercise, listExercises } from '../../../src/core/exercise/catalogue.ts';
import { describeExercise, nameExercise } from '../../../src/core/exercise/describe-exercise.ts';
import { parseNotation } from '../../../src/core/exercise/parse-notation.ts';

describe('listExercises', () => {
  const all = listExercises();

  it('holds every accent set of the triplet with every sticking of it', () => {
    // 19 six-note patterns, doubles and the double paradiddle; 2³ sets of accents.
    expect(listExercises({ division: 3 })).toHaveLength((19 + 2) * 8);
    // One accent on each partial, all and none: parts + 2.
    expect(listExercises({ division: 2 })).toHaveLength(3 * 4);
    expect(listExercises({ division: 4 })).toHaveLength(3 * 6);
    expect(listExercises({ division: 5 })).toHaveLength(2 * 7);
    expect(listExercises({ division: 6 })).toHaveLength(4 * 8);
    expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
    expect(new Set(all.map(({ notation }) => notation)).size).toBe(all.length);
    expect(new Set(all.map(({ name }) => name)).size).toBe(all.length);
  });

  it('closes: in whole bars of four beats the hands come round to the first note again', () => {
    for (const { notation, sticking, division } of all) {
      const letters = notation.replace(/[^RL]/g, '');
      expect(letters.length % (division.parts * 4)).toBe(0);
      expect(letters).toBe(sticking.cycle.repeat(letters.length / sticking.cycle.length));
    }
    expect(findExercise('triplet-1-doubles')?.beats).toHaveLength(4);
  });

  it('puts the accents where the id says, in notation that reads back', () => {
    for (const exercise of all) {
      expect(parseNotation(exercise.notation)).toEqual({ ok: true, beats: exercise.beats });
      for (const beat of exercise.beats) {
        const accented = beat.partials.flatMap((note, index) => (note?.accent ? [index + 1] : []));
        expect(accented).toEqual(exercise.accents);
      }
    }
  });

  it('filters as the example of its comment and by words', () => {
    const found = listExercises({ division: 3, accents: '1+2', sticking: 'doubles' });
    expect(found.map(({ id }) => id)).toEqual(['triplet-1+2-doubles']);
    expect(listExercises({ text: 'Sextuplets second DOUBLES' }).map(({ id }) => id)).toEqual([
      'sextuplet-2-doubles',
    ]);
    expect(listExercises({ accents: '5' }).every(({ division }) => division.parts >= 5)).toBe(true);
    expect(listExercises({ accents: 'loud' })).toEqual([]);
    expect(listExercises({ sticking: 'rrrr' })).toEqual([]);
  });
});

describe('findExercise', () => {
  it('finds the example of its comment', () => {
    expect(findExercise('triplet-1-hand-to-hand')?.notation).toBe('>RLR >LRL >RLR >LRL');
  });

  it('finds every listed exercise by its id, and the same led by the left', () => {
    for (const exercise of listExercises()) {
      expect(findExercise(exercise.id)).toEqual(exercise);
      const left = findExercise(`${exercise.id}-left`)!;
      expect(left.id).toBe(`${exercise.id}-left`);
      expect(left.notation).toBe(exercise.notation.replace(/[RL]/g, (hand) => (hand === 'R' ? 'L' : 'R')));
    }
  });

  it('forgives capitals, order and hands written out', () => {
    expect(findExercise(' Triplet-2+1-RRLL ')?.id).toBe('triplet-1+2-doubles');
    expect(findExercise('triplet-1-rlrlrl-left')?.id).toBe('triplet-1-hand-to-hand-left');
  });

  it('knows no others', () => {
    for (const id of [
      '',
      'triplet',
      'triplet-4-doubles',
      'eighth-1-rlrrll',
      'sextuplet-1+4-doubles',
      '__proto__',
    ]) {
      expect(findExercise(id)).toBeNull();
    }
  });
});

describe('nameExercise and describeExercise', () => {
  const described = (id: string) => {
    const { division, accents, sticking, lead, beats } = findExercise(id)!;
    return { division, mask: accents, sticking, lead, beats };
  };

  it('say division, accents, sticking and who has the accents', () => {
    expect(nameExercise(described('triplet-1+2-doubles-left'))).toBe(
      'Triplets, accent 1+2, doubles, left hand first',
    );
    expect(describeExercise(described('triplet-1+3-rrlrlr'))).toBe(
      'Triplets, sticking RRLRLR; accents on the first and third notes of each beat, 6 in the right hand for 2 in the left.',
    );
    expect(describeExercise(described('eighth-2-hand-to-hand'))).toBe(
      'Eighths, hand to hand; accent on the second note of each beat, always in the left hand.',
    );
    expect(describeExercise(described('triplet-none-triples'))).toBe(
      'Triplets, three in a row; all taps, no accents.',
    );
  });
});
