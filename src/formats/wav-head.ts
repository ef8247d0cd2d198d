/** What a wave file's head says of its samples. */
export interface WavHead {
  readonly channels: number;
  /** Samples of each channel. */
  readonly frames: number;
  /** Hz. */
  readonly sampleRate: number;
  readonly depth: 'int16' | 'int24' | 'float32';
}

/** Format tag and bytes of a sample. */
export const wavDepths = {
  int16: { tag: 1, bytes: 2 },
  int24: { tag: 1, bytes: 3 },
  float32: { tag: 3, bytes: 4 },
} as const;

/**
 * Everything of a RIFF/WAVE file before its first sample. Float files carry the extension size and the `fact` chunk
 * that formats other than PCM need (Microsoft, New Multimedia Data Types and Data Techniques, 1994). Throws a
 * RangeError for no channel, more than 65535 bytes in a frame, or a file beyond 4 GiB.
 *
 * @example wavHead({ channels: 1, frames: 3, sampleRate: 48000, depth: 'int16' }).length // 44
 */
export function wavHead({ channels, frames, sampleRate, depth }: WavHead): Uint8Array<ArrayBuffer> {
  const { tag, bytes } = wavDepths[depth];
  const frameBytes = channels * bytes;
  const dataBytes = frames * frameBytes;
  const formatBytes = tag === 1 ? 16 : 18;
  const factBytes = tag === 1 ? 0 : 12;
  const dataAt = 12 + 8 + formatBytes + factBytes + 8;
  const fileBytes = dataAt + dataBytes + (dataBytes % 2);
  if (channels === 0 || frameBytes > 0xffff) throw new RangeError(`${channels} channels can't be written.`);
  if (fileBytes - 8 > 0xffffffff) throw new RangeError('A wave file holds 4 GiB at most.');

  const head = new Uint8Array(dataAt);
  const view = new DataView(head.buffer);
  const chunk = (at: number, id: string, size: number): void => {
    head.set(new TextEncoder().encode(id), at);
    view.setUint32(at + 4, size, true);
  };
  chunk(0, 'RIFF', fileBytes - 8);
  head.set(new TextEncoder().encode('WAVE'), 8);
  chunk(12, 'fmt ', formatBytes);
  view.setUint16(20, tag, true);
  view.setUint16(22, channels, true);
  view.setUint32(24, sampleRate, true);
  view.setUint32(28, sampleRate * frameBytes, true);
  view.setUint16(32, frameBytes, true);
  view.setUint16(34, 8 * bytes, true);
  if (tag !== 1) {
    chunk(38, 'fact', 4);
    view.setUint32(46, frames, true);
  }
  chunk(dataAt - 8, 'data', dataBytes);
  return head;
}
