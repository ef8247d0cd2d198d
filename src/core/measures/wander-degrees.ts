import { halfWindow } from './local-lines.ts';
import type { WanderModel } from './tempo-fit.ts';

/** More places than this along a stretch are thinned: the degrees of freedom hardly change. */
const mostPlaces = 40;

/** Trace and squared trace of a symmetric matrix with level and slope taken out of rows and columns. */
function detrendedTraces(covariance: readonly Float64Array[]): { trace: number; squared: number } {
  const n = covariance.length;
  const middle = (n - 1) / 2;
  const spread = (n * (n * n - 1)) / 12;
  const detrend = (row: Float64Array) => {
    let sum = 0;
    let tilt = 0;
    for (let j = 0; j < n; j++) {
      sum += row[j]!;
      tilt += (j - middle) * row[j]!;
    }
    for (let j = 0; j < n; j++) row[j]! -= sum / n + ((j - middle) * tilt) / spread;
  };
  const rows = covariance.map((row) => Float64Array.from(row));
  for (const row of rows) detrend(row);
  const columns = rows.map((_, j) => Float64Array.from(rows, (row) => row[j]!));
  for (const column of columns) detrend(column);
  let trace = 0;
  let squared = 0;
  columns.forEach((column, j) => {
    trace += column[j]!;
    for (const value of column) squared += value * value;
  });
  return { trace, squared };
}

/**
 * Chi-square degrees of freedom of the slow part's mean square round its line, 2 E²/Var: the model's covariance
 * through the smoother of four beats, level and slope taken out (matched moments, Satterthwaite 1946). A random walk
 * has the generalised covariance −|lag|/2, which is all that matters once the level is out.
 *
 * @example wanderDegrees({ memory: 1, ratio: 100 }, { beats: 400, perBeat: 3 }) // about 5, at any length
 */
export function wanderDegrees(
  { memory, ratio }: WanderModel,
  { beats, perBeat }: { readonly beats: number; readonly perBeat: number },
): number {
  const half = Math.max(1, Math.round(halfWindow * perBeat));
  const taps = Array.from(
    { length: 2 * half + 1 },
    (_, k) => (k === 0 || k === 2 * half ? 0.5 : 1) / (2 * half),
  );
  const filter = new Float64Array(4 * half + 1);
  taps.forEach((a, i) => {
    taps.forEach((b, j) => {
      filter[i - j + 2 * half]! += a * b;
    });
  });
  const lagged = (lag: number) => {
    const wander =
      memory === 1 ? -ratio * 0.5 * Math.abs(lag) : (ratio * memory ** Math.abs(lag)) / (1 - memory * memory);
    return wander + (Math.abs(lag) < 0.5 ? 1 : 0);
  };
  const smoothed = (lag: number) => filter.reduce((sum, w, k) => sum + w * lagged(lag + k - 2 * half), 0);
  const places = Math.max(4, Math.min(mostPlaces, Math.round(beats)));
  const step = Math.max(1, Math.round((beats * perBeat) / places));
  const byLag = Array.from({ length: places }, (_, k) => smoothed(k * step));
  const covariance = Array.from({ length: places }, (_, i) =>
    Float64Array.from({ length: places }, (__, j) => byLag[Math.abs(i - j)]!),
  );
  const { trace, squared } = detrendedTraces(covariance);
  return Math.max(1, (trace * trace) / squared);
}
