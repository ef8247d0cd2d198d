import type { SoundFeatures } from './sound-pass.ts';

/** What reaches so near the end of the recording reaches it, s. */
const near = 0.1;

/**
 * From where to where a recording holds sound of its place, s: without exact silence that a program put before it or
 * behind it, and without a last block that comes again and again to the end. Nothing of the place is told there.
 *
 * @example liveStretch(sound) // { from: 0, to: 8.2 } of 8.2 s and 1.6 s of added silence
 */
export function liveStretch({
  bright,
  mean,
  frameRate,
  sampleRate,
  repeats,
}: Pick<SoundFeatures, 'bright' | 'mean' | 'frameRate' | 'sampleRate' | 'repeats'>): {
  readonly from: number;
  readonly to: number;
} {
  const sounds = (frame: number) => bright[frame]! > 0 || mean[frame] !== mean[frame - 1];
  let first = 0;
  let last = bright.length;
  while (last > 0 && !sounds(last - 1)) last--;
  while (first < last && bright[first] === 0) first++;
  let to = last / frameRate;
  const end = repeats.at(-1);
  if (end !== undefined && (end.at + end.samples) / sampleRate > to - near) to = end.at / sampleRate;
  return { from: first / frameRate, to: Math.max(first / frameRate, to) };
}
