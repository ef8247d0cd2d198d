import type { Bytes } from './bytes.ts';

/**
 * Bytes that stand in memory; nothing is copied.
 *
 * @example
 * memoryBytes(Uint8Array.of(1, 2, 3)).read(1, 3); // 2, 3
 */
export function memoryBytes(memory: Uint8Array): Bytes {
  return { length: memory.length, read: (from, to) => memory.subarray(from, to) };
}
