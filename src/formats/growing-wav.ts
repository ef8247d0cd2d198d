import { wavHead } from './wav-head.ts';

/** A wave file of one channel, 24 bits a sample, that is written while its recording comes. */
interface GrowingWav {
  /** Adds samples and gives what reading the file will give back: each rounded to a step of 24 bits. */
  add(samples: Float32Array): Float32Array;
  /** The file as it is by now. */
  bytes(): Uint8Array<ArrayBuffer>;
}

const steps = 2 ** 23;

/**
 * An empty wave file at `sampleRate`, Hz, the same at its end as `writeWav` makes of all samples together.
 * `add` throws a RangeError for a sample that isn't a number.
 *
 * @example growingWav(48000).add(Float32Array.of(0.1))[0] // 0.10000002384185791
 */
export function growingWav(sampleRate: number): GrowingWav {
  const parts: Uint8Array[] = [];
  let frames = 0;
  return {
    add(samples) {
      const part = new Uint8Array(3 * samples.length);
      const rounded = new Float32Array(samples.length);
      for (let i = 0, at = 0; i < samples.length; i++, at += 3) {
        const sample = samples[i]!;
        if (!Number.isFinite(sample)) throw new RangeError(`Sample ${frames + i} is ${sample}.`);
        const value = Math.max(-steps, Math.min(steps - 1, Math.round(sample * steps)));
        part[at] = value;
        part[at + 1] = value >> 8;
        part[at + 2] = value >> 16;
        rounded[i] = value / steps;
      }
      parts.push(part);
      frames += samples.length;
      return rounded;
    },
    bytes() {
      const head = wavHead({ channels: 1, frames, sampleRate, depth: 'int24' });
      const data = 3 * frames;
      const file = new Uint8Array(head.length + data + (data % 2));
      file.set(head);
      let at = head.length;
      for (const part of parts) {
        file.set(part, at);
        at += part.length;
      }
      return file;
    },
  };
}
