import { expect, it } from 'vitest';
import type { LibraryFaultCode } from '../../src/library/library-fault.ts';
import { libraryFaultSentence } from '../../src/library/library-fault-sentence.ts';

const codes: readonly LibraryFaultCode[] = [
  'library-is-newer',
  'no-sqlite',
  'not-a-library',
  'library-busy',
  'no-such-take',
  'no-such-person',
  'audio-missing',
  'audio-of-another-take',
  'result-unreadable',
  'result-is-newer',
  'name-empty',
  'value-out-of-range',
  'no-room',
  'no-private-files',
  'library-failed',
  'open-elsewhere',
];

it('every fault has plain sentences with its facts in them', () => {
  const facts = {
    path: '/x',
    reason: 'why',
    version: 3,
    known: 1,
    what: 'Day',
    value: 'x',
    expected: 'A day.',
  };
  for (const code of codes) {
    const sentence = libraryFaultSentence({ code, facts });
    expect(sentence, code).toMatch(/^[A-Z"].{20,}\.$/);
    expect(sentence, code).not.toMatch(/undefined|NaN|SQLITE/);
  }
});
