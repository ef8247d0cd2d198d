/** Second-order Butterworth high-pass; keeps the rumble below the drum's own sound out of the lowest band. */
interface HighPass {
  readonly b0: number;
  readonly a1: number;
  readonly a2: number;
  readonly memory: Float64Array;
}

/** Bilinear transform of the analogue prototype (any filter textbook); `cutoff` and `rate` in Hz. */
export function highPass(cutoff: number, rate: number): HighPass {
  const k = Math.tan((Math.PI * cutoff) / rate);
  const norm = 1 / (1 + Math.SQRT2 * k + k * k);
  return {
    b0: norm,
    a1: 2 * (k * k - 1) * norm,
    a2: (1 - Math.SQRT2 * k + k * k) * norm,
    memory: new Float64Array(2),
  };
}

/** Filters the first `count` samples in place. */
export function applyHighPass(filter: HighPass, samples: Float32Array, count: number): void {
  const { b0, a1, a2, memory } = filter;
  let s1 = memory[0]!;
  let s2 = memory[1]!;
  for (let i = 0; i < count; i++) {
    const x = samples[i]!;
    const y = b0 * x + s1;
    s1 = -2 * b0 * x - a1 * y + s2;
    s2 = b0 * x - a2 * y;
    samples[i] = y;
  }
  memory[0] = s1;
  memory[1] = s2;
}
