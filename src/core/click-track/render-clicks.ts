import type { ClickPlan } from './click-plan.ts';
import { clickVoice, type Voice } from './click-voices.ts';

/** Decays after which nothing is heard any more: 61 dB down. */
const decaysHeard = 7;

/**
 * The sound of a click track at full scale ±1, one channel. A click begins at the sample nearest to its time and is
 * the same, sample for sample, wherever it stands.
 *
 * @example renderClicks(planClicks(sheet, plainClick), 48_000).length // 48 000 a second
 */
export function renderClicks(plan: ClickPlan, sampleRate: number): Float32Array {
  const track = new Float32Array(Math.ceil(plan.duration * sampleRate));
  const rendered = new Map<string, Float32Array>();
  for (const { time, kind, audible } of plan.clicks) {
    if (!audible) continue;
    const sound = rendered.get(kind) ?? render(clickVoice(plan.sound, kind, plan.bell), sampleRate);
    rendered.set(kind, sound);
    const at = Math.round(time * sampleRate);
    for (let i = 0; i < sound.length && at + i < track.length; i++) track[at + i]! += sound[i]!;
  }
  return track;
}

function render(voice: Voice, sampleRate: number): Float32Array {
  const seconds = decaysHeard * Math.max(...voice.map(({ decay }) => decay));
  const samples = new Float32Array(Math.ceil(seconds * sampleRate));
  for (const { hz, level, decay } of voice) {
    if (hz >= sampleRate / 2) continue;
    for (let i = 0; i < samples.length; i++) {
      const t = i / sampleRate;
      samples[i]! += level * Math.exp(-t / decay) * Math.cos(2 * Math.PI * hz * t);
    }
  }
  return samples;
}
