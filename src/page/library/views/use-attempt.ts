import { useState } from 'preact/hooks';
import { faultInWords } from '../fault-words.ts';

/** What a change of the library came to: its fault in a sentence, or null, and how to try one. */
interface Attempt {
  readonly fault: string | null;
  readonly setFault: (sentence: string | null) => void;
  /** Resolves to whether it went well; only then `done` is called. */
  readonly attempt: (work: Promise<unknown>, done: () => void) => Promise<boolean>;
}

/**
 * Tries changes of the library; what it refuses stands in words beside what asked for it.
 *
 * @example void attempt(pageLibrary().deleteRemark(id), changed)
 */
export function useAttempt(): Attempt {
  const [fault, setFault] = useState<string | null>(null);
  const attempt = async (work: Promise<unknown>, done: () => void) => {
    try {
      await work;
      setFault(null);
      done();
      return true;
    } catch (error) {
      setFault(faultInWords(error));
      return false;
    }
  };
  return { fault, setFault, attempt };
}
