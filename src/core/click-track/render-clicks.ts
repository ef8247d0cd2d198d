import type { ClickKind, ClickPlan, PlannedClick } from './click-plan.ts';
import { clickSamples } from './click-samples.ts';
import { clickVoice } from './click-voices.ts';

/** Samples of the track that is rendered next. */
const blockLength = 65_536;

/**
 * The sound of a click track at full scale ±1, one channel. A click begins at the sample nearest to its time (half way
 * between two: the later), so that it is off by half a sample at most wherever it stands, and is the same sound each
 * time. Clicks so close that they ring into each other add up; what would go over full scale is held there. Levels
 * are those of `click-voices.ts`.
 *
 * @example renderClicks(planClicks(sheet, plainClick), 48_000).length // 48 000 a second
 */
export function renderClicks(plan: ClickPlan, sampleRate: number): Float32Array {
  const track = new Float32Array(trackLength(plan, sampleRate));
  let at = 0;
  for (const block of clickBlocks(plan, sampleRate)) {
    track.set(block, at);
    at += block.length;
  }
  return track;
}

/** Samples of a plan's track. */
export const trackLength = ({ duration }: ClickPlan, sampleRate: number): number =>
  Math.ceil(duration * sampleRate);

/** The same sound block by block, for tracks of an hour. */
export function* clickBlocks(plan: ClickPlan, sampleRate: number): Generator<Float32Array> {
  const { sound, bell } = plan;
  const total = trackLength(plan, sampleRate);
  const voices = new Map<ClickKind, Float32Array>();
  const voice = ({ kind }: PlannedClick) => {
    const known = voices.get(kind) ?? clickSamples(clickVoice(sound, kind, bell), sampleRate);
    voices.set(kind, known);
    return known;
  };
  const heard = plan.clicks.filter(({ audible }) => audible);
  const startOf = ({ time }: PlannedClick) => Math.round(time * sampleRate);
  let first = 0;
  for (let from = 0; from < total; from += blockLength) {
    const block = new Float32Array(Math.min(blockLength, total - from));
    const to = from + block.length;
    // Those that rang out before this block are never looked at again.
    while (first < heard.length && startOf(heard[first]!) + voice(heard[first]!).length <= from) first += 1;
    for (let k = first; k < heard.length; k++) {
      const at = startOf(heard[k]!);
      if (at >= to) break;
      const samples = voice(heard[k]!);
      for (let i = Math.max(at, from); i < Math.min(at + samples.length, to); i++) {
        block[i - from]! += samples[i - at]!;
      }
    }
    yield block.map((sample) => Math.max(-1, Math.min(1, sample)));
  }
}
