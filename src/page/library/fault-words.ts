import { LibraryFault } from '../../library/library-fault.ts';
import { libraryFaultSentence } from '../../library/library-fault-sentence.ts';

/** Whatever went wrong, as a sentence for the user. */
export function faultInWords(error: unknown): string {
  if (error instanceof LibraryFault) return libraryFaultSentence(error);
  return error instanceof Error ? error.message : String(error);
}
