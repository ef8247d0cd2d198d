import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openRecording } from '../../src/formats/open-recording.ts';
import { followMp3, mp3BytesASecond, mp3Of, nearestRate } from '../../src/formats/write-mp3.ts';
import { describeProgram } from '../programs.ts';
import { floatSource } from '../support/float-source.ts';
import { whiteNoise } from '../support/signals.ts';
import { temporaryFolder } from './temporary-folder.ts';

/** Delay of a decoder that takes nothing off, samples: LAME's technical FAQ, 576 + 529. */
const delay = 1105;

describe('mp3Of', () => {
  // Frame header of ISO 11172-3, 2.4.1.3: 12 bits of sync, version, layer III, no checksum; bit rate, rate, mono.
  it.each([
    [48000, '1', 0b0111, 0b01],
    [44100, '1', 0b0111, 0b00],
    [96000, '1', 0b0111, 0b01],
    [22050, '2', 0b1000, 0b00],
  ])('writes frames of one channel for %i Hz', async (rate, version, bitRate, rateBits) => {
    const bytes = await mp3Of(floatSource(rate, new Float32Array(rate / 2), new Float32Array(rate / 2)));
    expect((bytes[0]! << 4) | (bytes[1]! >> 4)).toBe(0xfff);
    expect((bytes[1]! >> 3) & 1).toBe(version === '1' ? 1 : 0);
    expect((bytes[1]! >> 1) & 3).toBe(0b01);
    expect(bytes[2]! >> 4).toBe(bitRate);
    expect((bytes[2]! >> 2) & 3).toBe(rateBits);
    expect(bytes[3]! >> 6).toBe(0b11);
  });

  it('makes the same file of a recording that comes in pieces', async () => {
    const samples = whiteNoise(150_000, 0.2, 3);
    const follower = await followMp3(44_100);
    for (const come of [10, 9000, 8192 * 3, 70_001, 149_999])
      follower.goOn(floatSource(44_100, samples.slice(0, come)));
    const whole = floatSource(44_100, samples);
    expect(follower.end(whole)).toEqual(await mp3Of(whole));
  });

  it('takes the bytes it says', async () => {
    const bytes = await mp3Of(floatSource(48000, new Float32Array(48000 * 4)));
    expect(Math.abs(bytes.length / 4 - mp3BytesASecond)).toBeLessThan(0.02 * mp3BytesASecond);
  });
});

describe('nearestRate', () => {
  it('is the rate itself where MP3 has it', () => {
    expect([8000, 44100, 48000].map(nearestRate)).toEqual([8000, 44100, 48000]);
    expect([7350, 37800, 88200, 192000].map(nearestRate)).toEqual([8000, 32000, 48000, 48000]);
  });
});

describeProgram('ffmpeg', 'MP3 files read by ffmpeg', (ffmpeg) => {
  const decoded = async (bytes: Uint8Array, rate: number) => {
    const path = join(temporaryFolder(), 'a.mp3');
    writeFileSync(path, bytes);
    const args = ['-v', 'error', '-i', path, '-f', 'f32le', '-ac', '1', '-ar', String(rate), '-'];
    const out = execFileSync(ffmpeg, args, { maxBuffer: 1 << 28 });
    return new Float32Array(Uint8Array.from(out).buffer);
  };

  it('hold the take, later by the known delay, with its error 20 dB under it', async () => {
    const opened = await openRecording('fixtures/takes/demo.wav');
    if (!opened.ok) throw new Error(opened.fault.code);
    const { source } = opened;
    const heard = await decoded(await mp3Of(source), source.sampleRate);
    const samples = source.read(0, 0, source.length);
    const errorDb = (lag: number) => {
      let [error, power] = [0, 0];
      samples.forEach((sample, i) => {
        error += (heard[i + lag]! - sample) ** 2;
        power += sample ** 2;
      });
      return 10 * Math.log10(error / power);
    };
    expect(errorDb(delay)).toBeLessThan(-20);
    expect(errorDb(delay)).toBeLessThan(Math.min(errorDb(delay - 1), errorDb(delay + 1)));
  });

  it('mix the channels and keep time at a rate that MP3 does not know', async () => {
    const rate = 96000;
    const left = Float32Array.from(
      { length: rate },
      (_, i) => 0.5 * Math.sin((2 * Math.PI * 440 * i) / rate),
    );
    const heard = await decoded(await mp3Of(floatSource(rate, left, new Float32Array(rate))), 48000);
    const middle = heard.slice(12000, 36000);
    const power = middle.reduce((sum, s) => sum + s * s, 0) / middle.length;
    expect(power).toBeCloseTo(0.25 ** 2 / 2, 2);
    const crossings = middle.reduce((n, s, i) => n + (i > 0 && s >= 0 && middle[i - 1]! < 0 ? 1 : 0), 0);
    expect(Math.abs(crossings - 220)).toBeLessThanOrEqual(1);
  });
});
