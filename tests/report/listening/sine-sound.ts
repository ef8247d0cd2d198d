import type { Sound } from '../../../src/report/listening/mix-pieces.ts';

/** A low sine without end, so that every cut would be heard as a jump. */
export function sineSound(seconds: number, sampleRate = 8000): Sound {
  return {
    sampleRate,
    samples: Float32Array.from({ length: seconds * sampleRate }, (_, i) =>
      Math.sin((2 * Math.PI * 50 * i) / sampleRate),
    ),
  };
}

/** Silence with a single sample of the given height at each onset. */
export function pulseSound(
  seconds: number,
  pulses: readonly { readonly time: number; readonly height: number }[],
  sampleRate = 8000,
): Sound {
  const samples = new Float32Array(Math.round(seconds * sampleRate));
  for (const { time, height } of pulses) samples[Math.round(time * sampleRate)] = height;
  return { samples, sampleRate };
}
