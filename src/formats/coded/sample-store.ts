/** Blocks of samples that are written once, in order, and read again in any. */
export interface SampleStore {
  /** Takes a block at the end; the array to fill with the next one. */
  write(block: Float32Array): Float32Array;
  /** Fills `into` with samples of a block from one of its samples on. */
  read(block: number, from: number, into: Float32Array): void;
  close(): void;
}

/** A file that goes when it is closed, at the latest with the program. Throws what the system throws. */
export interface ScratchFile {
  /** Writes at the end. */
  write(bytes: Uint8Array): void;
  /** Fills `into` with the bytes from `from` on. */
  read(from: number, into: Uint8Array): void;
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
    write(block) {
      blocks.push(block);
      return new Float32Array(block.length);
    },
    read: (block, from, into) => into.set(blocks[block]!.subarray(from, from + into.length)),
    close: () => blocks.splice(0),
  };
}

/** Blocks of one length in a file, as this machine writes floats. */
export function fileStore(file: ScratchFile, blockLength: number): SampleStore {
  const bytesOf = ({ buffer, byteOffset, byteLength }: Float32Array) =>
    new Uint8Array(buffer, byteOffset, byteLength);
  return {
    write(block) {
      file.write(bytesOf(block));
      return block;
    },
    read: (block, from, into) => file.read((block * blockLength + from) * sampleBytes, bytesOf(into)),
    close: file.close,
  };
}
