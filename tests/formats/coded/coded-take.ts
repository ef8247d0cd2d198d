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
  execFileSync(ffmpeg, [
    '-v',
    'error',
    '-y',
    '-i',
    wav,
    ...form.options,
    ...(form.options.includes('-ar') ? [] : ['-ar', '48000']),
    path,
  ]);
  return path;
}

/** One channel of a file as ffmpeg decodes it at its own rate. */
export function decodedByFfmpeg(ffmpeg: string, path: string, channel = 0, decoder?: string): Float32Array {
  const args = [
    '-v',
    'error',
    ...(decoder === undefined ? [] : ['-c:a', decoder]),
    '-i',
    path,
    '-map',
    '0:a:0',
    '-af',
    `pan=mono|c0=c${channel}`,
  ];
  const out = execFileSync(ffmpeg, [...args, '-f', 'f32le', '-'], { maxBuffer: 2 ** 30 });
  return new Float32Array(Uint8Array.from(out).buffer);
}

export async function openedFile(path: string): Promise<OpenRecording> {
  const opened = await openRecording(path);
  if (!opened.ok) throw new Error(`${path}: ${opened.fault.code}`);
  return opened;
}

/** Largest difference of samples at the same place, of as many as both have. */
export function largestDifference(ours: Float32Array, theirs: Float32Array): number {
  let largest = 0;
  for (let i = 0; i < Math.min(ours.length, theirs.length); i++)
    largest = Math.max(largest, Math.abs(ours[i]! - theirs[i]!));
  return largest;
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

/** A short take. */
export const takeName = 'accent-one';
export const shortTake = sampleTakePath(takeName);
