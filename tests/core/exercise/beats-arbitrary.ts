import fc from 'fast-check';
import type { Beat, Note } from '../../../src/core/exercise/sheet.ts';

const hand = fc.constantFrom('R' as const, 'L' as const);

const note: fc.Arbitrary<Note> = fc.record({
  hand,
  accent: fc.boolean(),
  buzz: fc.boolean(),
  grace: fc.array(hand, { maxLength: 3 }),
});

const beat: fc.Arbitrary<Beat> = fc.record({
  partials: fc.array(fc.option(note, { nil: null }), { minLength: 1, maxLength: 12 }),
  barBefore: fc.boolean(),
});

/** Any beats that the notation can write: at least one stroke among them. */
export const anyBeats: fc.Arbitrary<readonly Beat[]> = fc
  .array(beat, { minLength: 1, maxLength: 12 })
  .filter((beats) => beats.some((one) => one.partials.some((partial) => partial !== null)));
