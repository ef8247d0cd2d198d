import { expect, it } from 'vitest';
import { dropOuts } from '../../../src/core/recording-check/drop-outs.ts';
import type { HeardRecording } from '../../../src/core/recording-check/heard-recording.ts';

const sampleRate = 48_000;

/** A recording of so many places a twentieth of a second apart at which it stands still for 2 ms. */
function standing(count: number): HeardRecording {
  const standStills = Array.from({ length: count }, (_, i) => ({
    at: (i + 3) * 2400,
    samples: 96,
    broken: true,
    gainDb: 0,
  }));
  const mean = new Float32Array(1000);
  const sound = { sampleRate, frameRate: 1000, mean, standStills, repeats: [], jumps: [] };
  const hearing = { sounds: [], click: null };
  return {
    channels: [sound],
    sound,
    hearing,
    gaps: [],
    performance: { strokes: [] },
  } as unknown as HeardRecording;
}

it.each([3, 600_000])('tells how much was lost and where it began, at %i places', (places) => {
  const { facts } = dropOuts(standing(places))!;
  expect(facts).toEqual({ places, at: 0.15, seconds: expect.closeTo(0.002 * places, 6) });
});
