import { expect, it } from 'vitest';
import { memoryBytes } from '../../src/formats/memory-bytes.ts';
import { riffChunks } from '../../src/formats/riff-chunks.ts';
import { chunk } from './wave-bytes.ts';

const walk = (...parts: number[][]) => [...riffChunks(memoryBytes(Uint8Array.from(parts.flat())), 0)];

it('walks chunk by chunk, over pad bytes', () => {
  expect(walk(chunk('abcd', [1, 2, 3]), chunk('efgh', [1, 2]))).toEqual([
    { id: 'abcd', from: 8, to: 11, missing: 0, open: false },
    { id: 'efgh', from: 20, to: 22, missing: 0, open: false },
  ]);
});

it('runs the example of its comment', () => {
  const file = memoryBytes(new TextEncoder().encode('abcd\x02\0\0\0hi'));
  expect([...riffChunks(file, 0)]).toEqual([{ id: 'abcd', from: 8, to: 10, missing: 0, open: false }]);
});

it('stops at what can be no chunk', () => {
  expect(walk(chunk('abcd', []), [0, 1, 2, 3, 4, 5, 6, 7, 8, 9])).toHaveLength(1);
  expect(walk([1, 2, 3])).toEqual([]);
});

it('keeps a chunk that promises too much within the file and ends there', () => {
  expect(walk(chunk('abcd', [1, 2], 100))).toEqual([
    { id: 'abcd', from: 8, to: 10, missing: 98, open: false },
  ]);
});

it('gives up on thousands of empty chunks', () => {
  expect(walk(...Array.from({ length: 10_000 }, () => chunk('JUNK', []))).length).toBe(4096);
});
