import type { Voice } from './click-voices.ts';

/** Decays after which a click ends: 61 dB down. */
const decaysHeard = 7;

/** s over which a click swells, so that its first sample is no step, and share of it over which its end fades to nought. Our judgement. */
const swell = 0.0004;
const fade = 0.2;

/** Half a cosine from 0 to 1. */
const rise = (share: number) => 0.5 - 0.5 * Math.cos(Math.PI * Math.min(1, share));

/**
 * The samples of one click, full scale ±1. The first one isn't nought and is where the click begins; the largest is the
 * voice's peak; the last runs out into silence.
 *
 * @example clickSamples(clickVoice('tick', 'beat', false), 48_000).length // 841
 */
export function clickSamples({ partials, peak }: Voice, sampleRate: number): Float32Array {
  const heard = partials.filter(({ hz }) => hz < sampleRate / 2);
  const length = Math.ceil(decaysHeard * Math.max(...partials.map(({ decay }) => decay)) * sampleRate);
  const swellSamples = Math.ceil(swell * sampleRate);
  const samples = Float64Array.from({ length }, (_, i) => {
    const t = i / sampleRate;
    const sound = heard.reduce(
      (sum, { hz, level, decay }) => sum + level * Math.exp(-t / decay) * Math.cos(2 * Math.PI * hz * t),
      0,
    );
    return sound * rise((i + 1) / (swellSamples + 1)) * rise((length - i) / (fade * length));
  });
  const largest = samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
  return Float32Array.from(samples, (sample) => (largest > 0 ? (sample * peak) / largest : 0));
}
