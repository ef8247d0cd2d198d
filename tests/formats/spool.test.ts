import { openSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { spool, TooMuchPiped } from '../../src/formats/spool.ts';
import { temporaryFolder } from './temporary-folder.ts';

const contents = Uint8Array.from({ length: 200_000 }, (_, index) => index % 251);

function descriptor(bytes = contents): number {
  const path = join(temporaryFolder(), 'bytes');
  writeFileSync(path, bytes);
  return openSync(path, 'r');
}

it('reads to the end', () => {
  const bytes = spool(descriptor(), () => true);
  expect(bytes.length).toBe(200_000);
  expect(Buffer.compare(bytes.read(0, 200_000), contents)).toBe(0);
});

it('stops after the beginning when that is not wanted', () => {
  const seen: number[] = [];
  const bytes = spool(descriptor(), (head) => {
    seen.push(head.length);
    return false;
  });
  expect(seen).toHaveLength(1);
  expect(bytes.length).toBe(seen[0]);
  expect(bytes.length).toBeLessThan(200_000);
});

it('holds what ends before the beginning is complete', () => {
  expect(spool(descriptor(contents.subarray(0, 100)), () => false).length).toBe(100);
});

it('stops where more comes than can be held', () => {
  expect(() => spool(descriptor(), () => true, 100_000)).toThrow(TooMuchPiped);
  expect(spool(descriptor(), () => true, 200_000).length).toBe(200_000);
});
