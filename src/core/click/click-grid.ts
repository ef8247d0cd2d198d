/** Even times: click k at origin + k·period, s. */
export interface ClickGrid {
  readonly origin: number;
  readonly period: number;
}

/** Least-squares line through click numbers and times, each with its weight. */
export function fitGrid(
  points: readonly { readonly k: number; readonly time: number; readonly weight: number }[],
): ClickGrid {
  let w = 0;
  let wk = 0;
  let wt = 0;
  for (const { k, time, weight } of points) {
    w += weight;
    wk += weight * k;
    wt += weight * time;
  }
  const meanK = wk / w;
  const meanTime = wt / w;
  let kk = 0;
  let kt = 0;
  for (const { k, time, weight } of points) {
    kk += weight * (k - meanK) ** 2;
    kt += weight * (k - meanK) * (time - meanTime);
  }
  const period = kt / kk;
  return { origin: meanTime - period * meanK, period };
}
