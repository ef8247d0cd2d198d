import type { Kysely } from 'kysely';
import type { AudioStore } from './audio-store.ts';
import type { LibrarySchema } from './library-schema.ts';

export type LibraryDb = Kysely<LibrarySchema>;

/** A library, whichever home it has: its tables, and where the recordings lie. */
export interface Library {
  readonly db: LibraryDb;
  readonly audio: AudioStore;
}
