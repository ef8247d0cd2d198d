import { expect, it } from 'vitest';
import { midiFaultSentence } from '../../src/formats/midi-fault-sentences.ts';

it.each([
  [
    { code: 'midi-no-notes', facts: {} },
    '"take.mid" is a MIDI file without a note. Choose the file that was recorded from the pad.',
  ],
  [
    // A quarter of an hour too long isn't as long as may be.
    { code: 'midi-too-long', facts: { seconds: 24.25 * 3600, most: 24 * 3600 } },
    '"take.mid" lasts more than 24 hours; 24 can be read. Export the part with the take alone.',
  ],
] as const)('says what is wrong and what to do: %j', (fault, sentence) => {
  expect(midiFaultSentence('take.mid', fault)).toBe(sentence);
});
