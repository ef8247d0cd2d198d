import { LibraryFault } from './library-fault.ts';

/**
 * A value that stands in the tables as JSON. SQLite notices no damage inside a value; one that is no JSON any more is
 * `LibraryFault` `library-damaged`.
 *
 * @example keptJson<number[]>('[1,2]') // [1, 2]
 */
export function keptJson<T>(text: string): T {
  try {
    return JSON.parse(text) as T;
  } catch (error) {
    throw new LibraryFault('library-damaged', { reason: (error as Error).message });
  }
}
