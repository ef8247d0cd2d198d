export type LibraryFaultCode =
  | 'library-is-newer'
  | 'no-sqlite'
  | 'not-a-library'
  | 'library-busy'
  | 'library-read-only'
  | 'library-damaged'
  | 'disk-failed'
  | 'no-such-take'
  | 'no-such-person'
  | 'audio-missing'
  | 'audio-damaged'
  | 'audio-of-another-take'
  | 'result-unreadable'
  | 'result-is-newer'
  | 'name-empty'
  | 'value-out-of-range'
  | 'no-room'
  | 'no-private-files'
  | 'backup-place-taken'
  | 'backup-overlaps'
  | 'no-backup-there'
  | 'backup-damaged'
  | 'backup-incomplete'
  | 'library-in-use'
  | 'library-not-empty'
  | 'archive-unreadable'
  | 'open-elsewhere'
  | 'server-gone'
  | 'library-failed';

export type FaultFacts = Readonly<Record<string, string | number>>;

/** What went wrong in a library, for `libraryFaultSentence`; nothing was changed. */
export class LibraryFault extends Error {
  constructor(
    readonly code: LibraryFaultCode,
    readonly facts: FaultFacts = {},
  ) {
    super(code);
    this.name = 'LibraryFault';
  }
}

/** Whatever went wrong in a call, as the fault that its caller is told. */
export function faultOfCall(error: unknown): LibraryFault {
  if (error instanceof LibraryFault) return error;
  return new LibraryFault('library-failed', {
    reason: error instanceof Error ? error.message : String(error),
  });
}
