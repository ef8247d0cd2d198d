import { expect, it } from 'vitest';
import { memoryBytes } from '../../src/formats/memory-bytes.ts';

it('reads what stands between two places', () => {
  const bytes = memoryBytes(Uint8Array.of(1, 2, 3));
  expect(bytes.length).toBe(3);
  expect([...bytes.read(1, 3)]).toEqual([2, 3]);
  expect([...bytes.read(3, 3)]).toEqual([]);
});
