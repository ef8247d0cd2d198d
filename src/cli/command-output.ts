/** Where a command writes: its result and its talk. */
export interface CommandOutput {
  readonly stdout: (text: string) => void;
  readonly stderr: (text: string) => void;
}

export const toProcess: CommandOutput = {
  stdout: (text) => process.stdout.write(text),
  stderr: (text) => process.stderr.write(text),
};
