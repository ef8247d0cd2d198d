import { execFile } from 'node:child_process';
import { programPath } from '../programs.ts';
import type { HeardEvent } from './score-take.ts';

/** Onset functions of aubio, in the names its program takes. */
export const aubioMethods = [
  ...(['default', 'energy', 'hfc', 'complex', 'phase'] as const),
  ...(['specdiff', 'kl', 'mkl', 'specflux'] as const),
] as const;
export type AubioMethod = (typeof aubioMethods)[number];

/** Steps of the threshold that are tried; null is the one a method brings along. */
export const aubioThresholds = [null, 0.05, 0.15, 0.6] as const;

export interface AubioSetting {
  readonly method: AubioMethod;
  readonly threshold: number | null;
}

export const aubioHop = 128;

/** Where aubio's onset program is, or undefined (Debian: aubio-tools). */
export const aubioPath = (): string | undefined => programPath('aubioonset');

/** What `aubioonset` finds in a WAV file, at a hop of 128 frames; rejects where the program fails. */
export function aubioOnsets(
  program: string,
  wavPath: string,
  { method, threshold }: AubioSetting,
): Promise<HeardEvent[]> {
  const asked = ['-i', wavPath, '-H', String(aubioHop), '-O', method];
  if (threshold !== null) asked.push('-t', String(threshold));
  return new Promise((resolve, reject) => {
    execFile(program, asked, (error, stdout) => {
      if (error) reject(error);
      else resolve(readTimes(stdout));
    });
  });
}

/** One time in seconds a line. */
export function readTimes(text: string): HeardEvent[] {
  const times = text.split('\n').filter((line) => line.trim() !== '');
  return times.map((line) => ({ time: Number(line) }));
}
