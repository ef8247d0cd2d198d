import { readSync } from 'node:fs';
import type { Bytes } from './bytes.ts';
import { memoryBytes } from './memory-bytes.ts';
import { kindBytes } from './recording-kind.ts';

const blockBytes = 64 * 1024;
const pauseMs = 5;
/** Bytes that are held: three hours of a wave file of one channel, 16 bits at 48 kHz. Our judgement. */
export const mostSpooled = 2 ** 30;

/** More came through a pipe than can be held. */
export class TooMuchPiped extends Error {
  override readonly name = 'TooMuchPiped';
}

/**
 * Reads a pipe to its end and keeps it in memory. `wanted` sees what the pipe begins with (`kindBytes`, or all there
 * is); when it says no, reading stops there. Throws `TooMuchPiped` for more than `most` bytes.
 */
export function spool(descriptor: number, wanted: (head: Uint8Array) => boolean, most = mostSpooled): Bytes {
  const blocks: Uint8Array[] = [];
  let length = 0;
  let judged = false;
  for (;;) {
    const block = readBlock(descriptor);
    blocks.push(block);
    length += block.length;
    if (length > most) throw new TooMuchPiped();
    if (block.length === 0) return memoryBytes(Buffer.concat(blocks, length));
    if (judged || length < kindBytes) continue;
    judged = true;
    if (!wanted(Buffer.concat(blocks, length))) return memoryBytes(Buffer.concat(blocks, length));
  }
}

/** Empty at the end of the pipe. */
function readBlock(descriptor: number): Uint8Array {
  const block = new Uint8Array(blockBytes);
  for (;;) {
    try {
      return block.slice(0, readSync(descriptor, block));
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      if (code === 'EOF') return block.slice(0, 0); // a closed pipe on Windows
      if (code !== 'EAGAIN') throw error;
      // The writer isn't ready and the pipe doesn't wait by itself.
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, pauseMs);
    }
  }
}
