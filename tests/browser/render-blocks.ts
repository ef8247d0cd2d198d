import { soundPlayer } from '../../src/report/client/sound-player.ts';

const rate = 44100;
const seconds = 1.4;

/** What every sample of the mix is: far from the one before, so that a block out of step would show. */
const sampleAt = (n: number) => Math.sin(n * n * 0.37);

/** The largest difference between what the player sounds and the mix it was given, once it is fully there. */
async function renderBlocks(): Promise<{ worst: number; before: number; compared: number }> {
  const context = new OfflineAudioContext(1, rate * seconds, rate);
  const player = soundPlayer(context as unknown as AudioContext, rate, () => {});
  player.setVolume(1);
  player.start(
    (first, count) => Float32Array.from({ length: count }, (_, i) => sampleAt(first + i)),
    5000,
    false,
  );
  const heard = (await context.startRendering()).getChannelData(0);
  player.stop();
  const start = heard.findIndex((sample) => sample !== 0) - 1;
  let worst = 0;
  let compared = 0;
  // The volume rises to its full height within the first tenths of a second.
  for (let i = Math.round(0.5 * rate); i < heard.length; i++) {
    worst = Math.max(worst, Math.abs(heard[i]! - sampleAt(5000 + i - first())));
    compared++;
  }
  function first(): number {
    return Math.ceil(0.08 * rate);
  }
  return { worst, before: start, compared };
}

Object.assign(globalThis, { renderBlocks });
