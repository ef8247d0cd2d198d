import { expect, it } from 'vitest';
import type { LibraryFaultCode } from '../../src/library/library-fault.ts';
import { libraryFaultSentence } from '../../src/library/library-fault-sentence.ts';

const every: Record<LibraryFaultCode, true> = {
  'library-is-newer': true,
  'no-sqlite': true,
  'not-a-library': true,
  'library-busy': true,
  'library-read-only': true,
  'library-damaged': true,
  'disk-failed': true,
  'no-such-take': true,
  'no-such-person': true,
  'audio-missing': true,
  'audio-damaged': true,
  'audio-of-another-take': true,
  'result-unreadable': true,
  'result-is-newer': true,
  'name-empty': true,
  'value-out-of-range': true,
  'no-room': true,
  'no-private-files': true,
  'backup-place-taken': true,
  'backup-overlaps': true,
  'no-backup-there': true,
  'backup-damaged': true,
  'backup-incomplete': true,
  'library-in-use': true,
  'library-not-empty': true,
  'archive-unreadable': true,
  'open-elsewhere': true,
  'server-gone': true,
  'library-failed': true,
};

it('every fault has plain sentences with its facts in them', () => {
  const facts = {
    path: '/x',
    reason: 'why',
    version: 3,
    known: 1,
    what: 'Day',
    value: 'x',
    expected: 'A day.',
    count: 2,
    name: 'a.wav',
    takes: 3,
  };
  for (const code of Object.keys(every) as LibraryFaultCode[]) {
    const sentence = libraryFaultSentence({ code, facts });
    expect(sentence, code).toMatch(/^[A-Z"].{20,}\.$/);
    expect(sentence, code).not.toMatch(/undefined|NaN|SQLITE/);
  }
});
