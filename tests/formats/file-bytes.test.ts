import { openSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { fileBytes } from '../../src/formats/file-bytes.ts';
import { temporaryFolder } from './temporary-folder.ts';

it('reads what stands between two places, and says when the file became shorter', () => {
  const path = join(temporaryFolder(), 'bytes');
  writeFileSync(path, Uint8Array.of(1, 2, 3, 4));
  const bytes = fileBytes(openSync(path, 'r'));
  expect(bytes.length).toBe(4);
  expect([...bytes.read(1, 3)]).toEqual([2, 3]);
  truncateSync(path, 2);
  expect([...bytes.read(0, 2)]).toEqual([1, 2]);
  expect(() => bytes.read(1, 3)).toThrow('became shorter');
});
