/** Blocks of samples that are written once, in order, and read again in any. */
export interface SampleStore {
  /** The store may keep the array. */
  write(block: Float32Array): void;
  /** `count` samples of a block from one of its samples on, in an array of their own. */
  read(block: number, from: number, count: number): Float32Array;
  close(): void;
}

/** A file that goes when it is closed, at the latest with the program. Throws what the system throws. */
export interface ScratchFile {
  /** Writes at the end. */
  write(bytes: Uint8Array): void;
  read(from: number, to: number): Uint8Array;
  close(): void;
}

const sampleBytes = Float32Array.BYTES_PER_ELEMENT;

interface MemoryStore extends SampleStore {
  readonly blocks: Float32Array[];
}

export function memoryStore(): MemoryStore {
  const blocks: Float32Array[] = [];
  return {
    blocks,
    write: (block) => blocks.push(block),
    read: (block, from, count) => blocks[block]!.slice(from, from + count),
    close: () => blocks.splice(0),
  };
}

/** Blocks of one length in a file, as this machine writes floats. */
export function fileStore(file: ScratchFile, blockLength: number): SampleStore {
  return {
    write: (block) => file.write(new Uint8Array(block.buffer, block.byteOffset, block.byteLength)),
    read(block, from, count) {
      const at = (block * blockLength + from) * sampleBytes;
      const samples = new Float32Array(count);
      new Uint8Array(samples.buffer).set(file.read(at, at + count * sampleBytes));
      return samples;
    },
    close: file.close,
  };
}
