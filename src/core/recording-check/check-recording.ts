import type { Performance } from '../measures/performance.ts';
import type { Hearing } from '../onsets/stroke.ts';
import { coarseSamples, fineStep } from '../signal/coarse-samples.ts';
import { finiteSource } from '../signal/finite-source.ts';
import { pickup } from '../signal/pickup.ts';
import type { Source } from '../signal/source.ts';
import { withStepNoise } from '../signal/step-noise.ts';
import { bandwidth } from './bandwidth.ts';
import { changingClick } from './changing-click.ts';
import { clickBleed } from './click-bleed.ts';
import { clipping } from './clipping.ts';
import { coarseSteps } from './coarse-steps.ts';
import { dcOffset } from './dc-offset.ts';
import { dropOuts } from './drop-outs.ts';
import { gainControl } from './gain-control.ts';
import { gating } from './gating.ts';
import type { Finding, FindingOf, HeardRecording } from './heard-recording.ts';
import { hum } from './hum.ts';
import { limiting } from './limiting.ts';
import { lossyCodec } from './lossy-codec.ts';
import { noiseFloor } from './noise-floor.ts';
import { othersHeard } from './others-heard.ts';
import { placeNoiseDb, stepNoiseDb } from './place-noise.ts';
import { quietCourse } from './quiet-course.ts';
import { recordingLength } from './recording-length.ts';
import { type SoundFeatures, soundPass } from './sound-pass.ts';
import { spectralHoles } from './spectral-holes.ts';
import { spectralUnevenness } from './spectral-unevenness.ts';
import { stickClicks } from './stick-clicks.ts';
import { tapToNoise } from './tap-to-noise.ts';

/** Every check, the gravest first. */
export const recordingChecks: readonly FindingOf[] = [
  gating,
  dropOuts,
  gainControl,
  limiting,
  spectralHoles,
  clipping,
  coarseSteps,
  tapToNoise,
  noiseFloor,
  othersHeard,
  hum,
  lossyCodec,
  bandwidth,
  changingClick,
  clickBleed,
  stickClicks,
  dcOffset,
  recordingLength,
];

/** What a recording is checked with. */
interface CheckedRecording {
  readonly source: Source;
  readonly hearing: Hearing;
  readonly performance: Performance;
  /** Stretches known to be missing, samples. */
  readonly gaps?: HeardRecording['gaps'];
  /** What one reading of each channel gathered, where that was done while the recording came. */
  readonly channels?: HeardRecording['channels'];
  readonly playedClick?: HeardRecording['playedClick'];
  readonly others?: HeardRecording['others'];
}

/** What is cut, still, repeated or jumps is seen in samples as they are stored; how it sounds, with steps smoothed. */
function channelSound(stored: Source, source: Source, channel: number, step = fineStep): SoundFeatures {
  const asStored = soundPass(stored, channel, step);
  if (stored === source) return asStored;
  const { mean, bright, power } = soundPass(source, channel, step);
  return { ...asStored, mean, bright, power };
}

/** Reads each channel once and gathers what the checks need. */
function hearRecording(checked: CheckedRecording): HeardRecording {
  const { hearing, performance, playedClick, gaps = [], others = [] } = checked;
  const stored = finiteSource(checked.source);
  const steps = coarseSamples(stored);
  const source = withStepNoise(stored, steps);
  const channels =
    checked.channels ??
    Array.from({ length: source.channels }, (_, channel) =>
      channelSound(stored, source, channel, steps?.step),
    );
  const sound = channels.reduce((loudest, one) => (one.power > loudest.power ? one : loudest));
  const quiet = quietCourse(sound, hearing.sounds, hearing.click?.times);
  const strokes = performance.strokes.map(({ time }) => time);
  const heard = pickup(source);
  const noiseDb = placeNoiseDb(heard, quiet.pauses, strokes);
  const coarse = steps && {
    step: steps.step,
    noiseDb: stepNoiseDb(heard, steps.step, quiet.pauses, strokes),
  };
  const unevenness = spectralUnevenness(heard, hearing.sounds);
  return {
    source,
    channels,
    sound,
    hearing,
    performance,
    others,
    quiet,
    unevenness,
    noiseDb,
    coarse,
    playedClick,
    gaps,
  };
}

/**
 * What is wrong with a recording, and which measures it makes wrong. Empty for a clean one. Linear in length.
 *
 * @example checkRecording({ source, hearing, performance }) // [{ code: 'hum', facts: { hz: 50, levelDb: -44 }, spoils: [] }]
 */
export function checkRecording(checked: CheckedRecording): Finding[] {
  const heard = hearRecording(checked);
  return recordingChecks.flatMap((check) => check(heard) ?? []);
}
