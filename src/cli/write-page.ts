import { outputFaultSentence } from '../formats/output-fault-sentence.ts';
import { writeAtomically } from '../formats/write-atomically.ts';
import { CommandFault } from './command-fault.ts';
import type { CommandOutput } from './command-output.ts';

/** Writes a page whole or not at all and says where; `-` is the screen. Throws a fault where it can't be written. */
export function writePage(path: string, html: string, output: CommandOutput): void {
  if (path === '-') {
    output.stdout(html);
    return;
  }
  const fault = writeAtomically(path, html);
  if (fault !== undefined) throw new CommandFault('fault', outputFaultSentence(path, fault));
  output.stderr(`Report written to ${path}\n`);
}
