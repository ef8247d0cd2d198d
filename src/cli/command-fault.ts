import { exitCodes } from './exit-codes.ts';

/** Ends a command. The message is what the user is told: what is wrong, with which value, and what to do next. */
export class CommandFault extends Error {
  readonly exitCode: number;
  constructor(ending: Exclude<keyof typeof exitCodes, 'done'>, sentence: string) {
    super(sentence);
    this.exitCode = exitCodes[ending];
    this.name = 'CommandFault';
  }
}
