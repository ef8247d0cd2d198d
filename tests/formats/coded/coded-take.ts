import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { type OpenRecording, openRecording } from '../../../src/formats/open-recording.ts';
import { bestShift } from '../../bench/codec.ts';
import { sampleTakePath } from '../../cli/built-program.ts';

/** A take as ffmpeg writes it into a file. */
export interface CodedForm {
  readonly file: string;
  readonly options: readonly string[];
}

/** Codes a wave file by ffmpeg; gives the path of what it wrote. */
export function encoded(ffmpeg: string, folder: string, form: CodedForm, wav: string): string {
  const path = join(folder, form.file);
  execFileSync(ffmpeg, ['-v', 'error', '-y', '-i', wav, ...form.options, path]);
  return path;
}

/** One channel of a file as ffmpeg decodes it at its own rate. */
export function decodedByFfmpeg(ffmpeg: string, path: string, channel = 0): Float32Array {
  const args = ['-v', 'error', '-i', path, '-map', '0:a:0', '-af', `pan=mono|c0=c${channel}`];
  const out = execFileSync(ffmpeg, [...args, '-f', 'f32le', '-'], { maxBuffer: 2 ** 30 });
  return new Float32Array(Uint8Array.from(out).buffer);
}

export async function openedFile(path: string): Promise<OpenRecording> {
  const opened = await openRecording(path);
  if (!opened.ok) throw new Error(`${path}: ${opened.fault.code}`);
  return opened;
}

/** By how many frames ours comes later, is longer, and by how much it differs where both are: largest and rms. */
export function compared(ours: Float32Array, theirs: Float32Array) {
  const later = bestShift(theirs, ours);
  let largest = 0;
  let squares = 0;
  const frames = Math.min(theirs.length, ours.length - later);
  for (let i = Math.max(0, -later); i < frames; i++) {
    const error = Math.abs(ours[i + later]! - theirs[i]!);
    largest = Math.max(largest, error);
    squares += error * error;
  }
  return { later, longer: ours.length - theirs.length, largest, rms: Math.sqrt(squares / frames) };
}

/** A short take of the usual rate. */
export const shortTake = sampleTakePath('recorded-snare');
