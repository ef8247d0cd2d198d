import { createMp3Encoder } from 'wasm-media-encoders';
import type { Source } from '../core/signal/source.ts';
import { joinedBytes } from './joined-bytes.ts';

/** Kilobits a second: attacks keep their edge and a minute takes 0.7 MB; less where the rate is low. Our judgement. */
const bitRates = { usual: 96, low: 64 } as const;

/** Bytes of one second of an MP3 of a usual recording. */
export const mp3BytesASecond = (bitRates.usual * 1000) / 8;

/** Rates that MPEG-1, MPEG-2 (ISO 11172-3, 13818-3) and the customary MPEG 2.5 know, Hz. */
const rates = [8000, 11025, 12000, 16000, 22050, 24000, 32000, 44100, 48000] as const;

/** Frames that are handed to the encoder at once; it makes no difference to what comes out. */
const block = 1 << 13;

/** Writes a recording as an MP3 file while it comes. */
export interface Mp3Follower {
  /** Goes on with a recording that is the same as before and longer. */
  goOn(recording: Source): void;
  /** The recording is over: the file, to the last byte as if all of it had been there at once. */
  end(recording: Source): Uint8Array;
}

/**
 * A recording as an MP3 file of constant bit rate, its channels mixed to one; read block by block. A rate that MP3
 * doesn't know becomes the nearest one that it knows. Decoded, the sound begins later than in the recording, by 1105
 * samples (576 of the encoder, 529 of the decoder) where the player takes nothing off.
 *
 * @example await mp3Of(source) // 4 s at 48 kHz → 48 kB
 */
export async function mp3Of(source: Source): Promise<Uint8Array> {
  return (await followMp3(source.sampleRate)).end(source);
}

/**
 * Begins to write a recording of that rate as an MP3 file.
 *
 * @example (await followMp3(48000)).end(source) // as mp3Of(source)
 */
export async function followMp3(rate: number): Promise<Mp3Follower> {
  const encoder = await createMp3Encoder();
  const sampleRate = Math.round(rate);
  encoder.configure({
    sampleRate,
    channels: 1,
    bitrate: sampleRate < 32000 ? bitRates.low : bitRates.usual,
    outputSampleRate: nearestRate(sampleRate),
  });
  const parts: Uint8Array[] = [];
  let done = 0;
  // The encoder gives a view of its own memory, which the next call overwrites.
  const encode = (recording: Source, to: number) => {
    parts.push(Uint8Array.from(encoder.encode([mixed(recording, done, to)])));
    done = to;
  };
  return {
    goOn(recording) {
      while (done + block <= recording.length) encode(recording, done + block);
    },
    end(recording) {
      while (done < recording.length) encode(recording, Math.min(recording.length, done + block));
      parts.push(Uint8Array.from(encoder.finalize()));
      return joinedBytes(parts);
    },
  };
}

/** Hz of the MP3 of a recording of that rate. */
export function nearestRate(sampleRate: number): (typeof rates)[number] {
  return rates.reduce((best, rate) =>
    Math.abs(rate - sampleRate) < Math.abs(best - sampleRate) ? rate : best,
  );
}

function mixed(source: Source, from: number, to: number): Float32Array {
  const mix = new Float32Array(to - from);
  for (let channel = 0; channel < source.channels; channel++) {
    source.read(channel, from, to).forEach((sample, i) => {
      mix[i]! += sample / source.channels;
    });
  }
  return mix;
}
