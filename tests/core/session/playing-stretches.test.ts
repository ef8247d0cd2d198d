import { expect, it } from 'vitest';
import { playingStretches } from '../../../src/core/session/playing-stretches.ts';
import { padStrokes } from '../alignment/made-sheet.ts';

const row = (from: number, count: number) => Array.from({ length: count }, (_, i) => from + i / 4);
const heard = (times: readonly number[]) => padStrokes(times, times.map(() => -20)); // biome-ignore format: short

it('parts at long silences, and passes over a few strokes alone', () => {
  const sounds = heard([...row(1, 9), ...row(5, 5), ...row(20, 3), ...row(30, 6)]);
  expect(playingStretches(sounds)).toEqual([
    { from: 1, to: 6 },
    { from: 30, to: 31.25 },
  ]);
});

it('is not bridged by talk', () => {
  const talk = heard([8, 10, 12, 14]).map((sound) => ({ ...sound, sound: 'voice' as const }));
  expect(playingStretches([...heard(row(1, 9)), ...talk, ...heard(row(15, 9))])).toHaveLength(2);
  expect(playingStretches([])).toEqual([]);
});
