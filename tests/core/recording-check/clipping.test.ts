import { expect, it } from 'vitest';
import { clipping } from '../../../src/core/recording-check/clipping.ts';
import type { HeardRecording } from '../../../src/core/recording-check/heard-recording.ts';

const sampleRate = 48_000;

/** So many strokes, half a second apart, all accents; each is cut by 1 dB, the last by 2. */
function cut(strokes: number): HeardRecording {
  const times = Array.from({ length: strokes }, (_, i) => 1 + i / 2);
  const flatTops = times.map((time, i) => ({
    at: Math.round((time + 0.002) * sampleRate),
    samples: 5,
    level: 1,
    overDb: i === strokes - 1 ? 2 : 1,
  }));
  return {
    channels: [{ sampleRate, flatTops }],
    hearing: { sounds: times.map((time) => ({ time, sound: 'pad' })), click: null },
    performance: { strokes: times.map((time) => ({ time, slot: { accent: true } })) },
  } as unknown as HeardRecording;
}

it.each([8, 600_000])('tells how many strokes were cut and by how much at most, of %i', (of) => {
  const { facts, spoils } = clipping(cut(of))!;
  expect(facts).toEqual({ cut: of, of, overDb: 2 });
  expect(spoils).toContain('accent-spread');
  expect(spoils).not.toContain('tap-spread');
});
