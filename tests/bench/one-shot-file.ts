import { execFileSync } from 'node:child_process';
import type { OneShot } from '../../fixtures/generator/recorded-strokes.ts';

const rate = 48000;
/** The sound begins where it first reaches this share of its peak. */
const startShare = 0.02;
const fadeSeconds = 0.03;

/**
 * One recorded stroke from a sound file, read by ffmpeg: first channel, 48 kHz, from where it first reaches 2 % of
 * its peak, at most `longest` s, faded out. Where the sound really begins is thus anyone's guess by some tenths of a
 * millisecond.
 */
export function readOneShot(ffmpeg: string, path: string, longest = 0.6): OneShot {
  const asked = ['-v', 'error', '-i', path, '-af', 'pan=mono|c0=c0', '-ar', String(rate), '-f', 'f32le', '-'];
  const bytes = execFileSync(ffmpeg, asked, { maxBuffer: 2 ** 28 });
  const all = new Float32Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length));
  const peak = all.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  if (peak === 0) throw new Error(`${path} is silent`);
  const start = all.findIndex((value) => Math.abs(value) >= startShare * peak);
  const samples = all.slice(start, start + Math.round(longest * rate));
  const fade = Math.min(samples.length, Math.round(fadeSeconds * rate));
  for (let i = 0; i < fade; i++) samples[samples.length - 1 - i]! *= i / fade;
  return { samples, sampleRate: rate };
}
