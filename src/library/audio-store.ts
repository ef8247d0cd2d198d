/** Recordings by the SHA-256 of their bytes, in hexadecimal. */
export interface AudioStore {
  /** Stores a recording whole or not at all; does nothing when it is there. */
  put(hash: string, bytes: Uint8Array): Promise<void>;
  /** The recording, or null when it isn't there. */
  get(hash: string): Promise<Uint8Array | null>;
  has(hash: string): Promise<boolean>;
  /** Deletes a recording for good; does nothing when it isn't there. */
  delete(hash: string): Promise<void>;
  /** Hashes of all recordings; clears away what was left of unfinished ones. */
  list(): Promise<readonly string[]>;
}

/** Whether a text can be the name of a recording in a store. */
export const isAudioHash = (text: string): boolean => /^[0-9a-f]{64}$/.test(text);
