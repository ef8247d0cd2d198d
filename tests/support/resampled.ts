/**
 * The same sound at another rate, band-limited to `cutoff` Hz by a windowed sinc of 32 points either side; the same for
 * every rate asked for, so that what it spreads ahead of an attack is the same too.
 */
export function resampled(samples: Float32Array, from: number, to: number, cutoff: number): Float32Array {
  const reach = 32;
  const share = (2 * cutoff) / from;
  const out = new Float32Array(Math.floor((samples.length * to) / from));
  for (let n = 0; n < out.length; n++) {
    const place = (n * from) / to;
    const base = Math.floor(place);
    let sum = 0;
    for (let k = base - reach + 1; k <= base + reach; k++) {
      const x = place - k;
      const sinc = x === 0 ? share : Math.sin(Math.PI * share * x) / (Math.PI * x);
      sum += (samples[k] ?? 0) * sinc * Math.cos((Math.PI * x) / (2 * reach + 2)) ** 2;
    }
    out[n] = sum;
  }
  return out;
}
