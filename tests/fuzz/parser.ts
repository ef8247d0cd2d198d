/** Something that reads files from outside: good ones to damage, and what it makes of any bytes, thrown errors apart. */
export interface Parser {
  readonly name: string;
  readonly corpus: () => Promise<readonly Uint8Array[]>;
  /** Pieces that mean something to it. */
  readonly words: readonly string[];
  /** Whether it could use the file; throws only what it must not throw. */
  readonly read: (bytes: Uint8Array) => boolean | Promise<boolean>;
}
