/** Where a command writes: its result and its talk. */
export interface CommandOutput {
  readonly stdout: (text: string) => void;
  readonly stderr: (text: string) => void;
  /** For results that are no text. */
  readonly bytes?: (bytes: Uint8Array) => void;
}

export const toProcess: CommandOutput = {
  stdout: (text) => process.stdout.write(text),
  stderr: (text) => process.stderr.write(text),
  bytes: (bytes) => process.stdout.write(bytes),
};
