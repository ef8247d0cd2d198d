import { expect, it } from 'vitest';
import { notePulses } from '../../../src/core/signal/note-pulses.ts';

it('sounds at every note and nowhere else, the same in any blocks', () => {
  const source = notePulses(
    [
      { time: 0.1, peak: 0.5 },
      { time: 0.15, peak: 0.25 },
      { time: 0.95, peak: 1 },
    ],
    1,
  );
  expect(source).toMatchObject({ sampleRate: 8000, channels: 1, length: 8000 });
  const whole = source.read(0, 0, 8000);
  expect(whole.subarray(0, 800).every((v) => v === 0)).toBe(true);
  expect(whole[800]).toBeCloseTo(0.5, 6);
  expect(whole[7600]).toBeCloseTo(1, 6);
  expect(Math.max(...whole.subarray(2400, 7600).map(Math.abs))).toBe(0);
  const pieces = [0, 13, 801, 1210, 7601, 8000].flatMap((from, i, all) =>
    i + 1 < all.length ? [...source.read(0, from, all[i + 1]!)] : [],
  );
  expect(pieces).toEqual([...whole]);
  expect([...source.read(0, -5, 3), ...source.read(0, 8000, 8010)].every((v) => v === 0)).toBe(true);
});
