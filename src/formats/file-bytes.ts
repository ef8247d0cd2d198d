import { fstatSync, readSync } from 'node:fs';
import type { Bytes } from './bytes.ts';

/** Bytes of an open file. Throws when the file can't be read or became shorter after it was opened. */
export function fileBytes(descriptor: number): Bytes {
  const { size } = fstatSync(descriptor);
  return {
    length: size,
    read(from, to, room) {
      const block =
        room && room.length >= to - from ? room.subarray(0, to - from) : new Uint8Array(to - from);
      let filled = 0;
      while (filled < block.length) {
        const count = readSync(descriptor, block, filled, block.length - filled, from + filled);
        if (count === 0) throw new Error('The recording became shorter while it was read.');
        filled += count;
      }
      return block;
    },
  };
}
