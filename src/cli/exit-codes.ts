/** What the program's exit code says. A low score is still `done`. */
export const exitCodes = {
  done: 0,
  /** Something went wrong that isn't one of the others. */
  fault: 1,
  /** The command line can't be understood. */
  usage: 2,
  unreadableInput: 3,
  notGradable: 4,
} as const;
