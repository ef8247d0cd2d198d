import { execFileSync } from 'node:child_process';
import { encodeWav } from '../../fixtures/generator/wav-file.ts';

/** A lossy codec as ffmpeg names it. */
export interface Codec {
  readonly encoder: 'libmp3lame' | 'libopus' | 'aac';
  readonly container: 'mp3' | 'ogg' | 'adts';
  readonly kilobits: number;
}

const furthestShift = 4000;

/** Samples coded and decoded again by ffmpeg, moved so that they lie on the original to the sample. */
export function throughCodec(
  ffmpeg: string,
  samples: Float32Array,
  sampleRate: number,
  { encoder, container, kilobits }: Codec,
): Float32Array {
  const quiet = ['-v', 'error'];
  const run = (args: readonly string[], input: Buffer) =>
    execFileSync(ffmpeg, [...quiet, ...args], { input, maxBuffer: 2 ** 28 });
  const coded = run(
    ['-f', 'wav', '-i', '-', '-c:a', encoder, '-b:a', `${kilobits}k`, '-f', container, '-'],
    encodeWav(samples, sampleRate),
  );
  const asked = ['-f', container === 'adts' ? 'aac' : container, '-i', '-', '-ar', String(sampleRate)];
  const bytes = run([...asked, '-ac', '1', '-f', 'f32le', '-'], coded);
  const decoded = new Float32Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length));
  const shift = bestShift(samples, decoded);
  return samples.map((_, i) => decoded[i + shift] ?? 0);
}

/** By how many samples `moved` comes later than `original`: the largest product over the loudest second. */
export function bestShift(original: Float32Array, moved: Float32Array): number {
  const loudest = original.reduce((best, x, i) => (Math.abs(x) > Math.abs(original[best]!) ? i : best), 0);
  const from = Math.max(0, loudest - 6000);
  const to = Math.min(original.length, loudest + 18_000);
  let best = 0;
  let most = Number.NEGATIVE_INFINITY;
  for (let shift = -furthestShift; shift <= furthestShift; shift++) {
    let product = 0;
    for (let i = from; i < to; i++) product += original[i]! * (moved[i + shift] ?? 0);
    if (product > most) {
      most = product;
      best = shift;
    }
  }
  return best;
}
