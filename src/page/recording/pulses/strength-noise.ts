import { median } from '../../../core/stats/median.ts';

/** Median of a Rayleigh distribution of parameter 1: √(2 ln 2). */
const rayleighMedian = Math.sqrt(2 * Math.LN2);

/** What noise alone makes of pulse strength: the parameter of its Rayleigh distribution, from a pulse-free stretch. */
export function strengthNoise(strength: Float32Array, from: number, to: number): number {
  const values: number[] = [];
  const end = Math.min(strength.length, Math.round(to));
  for (let n = Math.max(0, Math.round(from)); n < end; n += 8) values.push(strength[n]!);
  return values.length === 0 ? 0 : median(values) / rayleighMedian;
}

/** The size of a pulse from its strength: noise adds its own power, E|a + n|² = a² + 2σ². */
export const withoutNoise = (strength: number, noise: number): number =>
  Math.sqrt(Math.max(0, strength * strength - 2 * noise * noise));
