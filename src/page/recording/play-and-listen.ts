import { startCapture } from './capture/start-capture.ts';
import type { Microphone } from './open-microphone.ts';
import { playSound } from './play-sound.ts';

type Listened =
  | { readonly state: 'heard'; readonly samples: Float32Array<ArrayBuffer> }
  /** The sound was taken away, some of it was lost, or the user stopped it. */
  | { readonly state: 'broken-off' };

/** Time for the first block to come, s. */
const lead = 0.5;
/** Given up when nothing more comes for so long, s. */
const patience = 3;

/**
 * Plays a sound and gives what the microphone heard from the sound's first sample to its last, on the same clock: what
 * comes back late stands late.
 */
export async function playAndListen(
  { context, input }: Microphone,
  sound: Float32Array<ArrayBuffer>,
  {
    volume,
    stop,
    progress,
  }: {
    readonly volume: number;
    readonly stop?: AbortSignal | undefined;
    /** Told from 0 to 1. */
    readonly progress?: ((share: number) => void) | undefined;
  },
): Promise<Listened> {
  const { sampleRate } = context;
  const capture = await startCapture(context, input);
  const playing = playSound(context, sound, { after: lead, volume });
  const end = Math.round(playing.at * sampleRate) + sound.length;
  const reached = () => (capture.first() ?? 0) + capture.frames().length;
  let heard = reached();
  let waited = 0;
  const step = 0.1;
  while (reached() < end && !stop?.aborted && waited < patience) {
    await new Promise((resolve) => setTimeout(resolve, 1000 * step));
    waited = reached() > heard ? 0 : waited + step;
    heard = reached();
    progress?.(Math.min(1, Math.max(0, 1 - (end - heard) / sound.length)));
  }
  const { first, gaps } = capture.frames();
  playing.stop();
  capture.stop();
  if (first === null || reached() < end || gaps.length > 0) return { state: 'broken-off' };
  const from = Math.round(playing.at * sampleRate) - first;
  if (from < 0) return { state: 'broken-off' };
  return { state: 'heard', samples: capture.samples().slice(from, from + sound.length) };
}
