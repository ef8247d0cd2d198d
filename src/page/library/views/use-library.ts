import { useCallback, useEffect, useState } from 'preact/hooks';
import type { LibraryClient } from '../../../library/library-calls.ts';
import { faultInWords } from '../fault-words.ts';
import { pageLibrary } from '../page-library.ts';

interface Asked<T> {
  /** What came back last, or null before that. */
  readonly value: T | null;
  /** What went wrong last, as a sentence, or null. */
  readonly fault: string | null;
  /** Asks again; what came back last stays until then. */
  readonly again: () => void;
}

/** Asks the library for something whenever `on` changes. */
export function useLibrary<T>(
  ask: (library: LibraryClient) => Promise<T>,
  on: readonly unknown[] = [],
): Asked<T> {
  const [value, setValue] = useState<T | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const [times, setTimes] = useState(0);
  useEffect(() => {
    let current = true;
    ask(pageLibrary()).then(
      (answer) => {
        if (!current) return;
        setValue(() => answer);
        setFault(null);
      },
      (error) => current && setFault(faultInWords(error)),
    );
    return () => {
      current = false;
    };
  }, [...on, times]);
  const again = useCallback(() => setTimes((count) => count + 1), []);
  return { value, fault, again };
}
