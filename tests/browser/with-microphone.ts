import { type BrowserContext, chromium } from 'playwright-core';
import { args, executablePath } from './chromium.ts';

/** A browser whose microphone hears a file, in a profile that outlives it. */
export function withMicrophone(profile: string, wav: string): Promise<BrowserContext> {
  return chromium.launchPersistentContext(profile, {
    executablePath,
    args: [
      ...args,
      '--use-fake-ui-for-media-stream',
      '--use-fake-device-for-media-stream',
      '--autoplay-policy=no-user-gesture-required',
      `--use-file-for-fake-audio-capture=${wav}`,
    ],
  });
}

/**
 * The largest stretch of a recording that equals a file played over and over, as a share of the recording: samples are
 * taken from its middle and looked for in the file, which tells where the two lie against each other.
 */
export function shareAsPlayed(recorded: Float32Array, played: Float32Array): number {
  const steps = Int16Array.from(played, (x) => Math.min(32767, Math.max(-32768, Math.round(x * 32768))));
  const said = Int16Array.from(recorded, (x) => Math.round(x * 32768));
  const middle = said.length >> 1;
  const probe = 64;
  let lag = -1;
  for (let at = 0; at < steps.length && lag < 0; at++) {
    let n = 0;
    while (n < probe && steps[(at + n) % steps.length] === said[middle + n]) n++;
    if (n === probe) lag = at - middle;
  }
  if (lag < 0) return 0;
  let equal = 0;
  for (let n = 0; n < said.length; n++)
    if (said[n] === steps[(((n + lag) % steps.length) + steps.length) % steps.length]) equal++;
  return equal / said.length;
}
