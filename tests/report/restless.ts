import type { TakeResult } from '../../src/core/result/take-result.ts';

/** The same take with figures of as many digits as a real one has. */
export function restless(result: TakeResult): TakeResult {
  const stir = (values: readonly (number | null)[], by: number) =>
    values.map((v, i) => (v ?? 0) + by * Math.sin(i * i));
  const { strokes } = result;
  const time = stir(strokes.time, 0.01);
  return {
    ...result,
    strokes: {
      ...strokes,
      time,
      levelDb: stir(strokes.levelDb, 3),
      deviationMs: stir(strokes.deviationMs, 10),
    },
    tempo: { time, bpm: stir(time, 1).map((t) => 100 + t / 1000), segment: time.map(() => 0) },
  };
}
