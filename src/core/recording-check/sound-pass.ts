import type { Source } from '../signal/source.ts';
import { type FlatTop, flatTopAt, flatTopStep, leastTop } from './flat-top.ts';
import { isJump, type Jump, jumpRatio, leastJump } from './jump.ts';
import { anchorsOf, type RepeatedBlock } from './repeated-block.ts';
import { type StandStill, standStillAt, standStillSeconds } from './stand-still.ts';

/** What one reading of a channel gathers for all findings; its size is a fraction of the samples'. */
export interface SoundFeatures {
  readonly sampleRate: number;
  /** Samples of a frame, about a millisecond, and frames per second. */
  readonly hop: number;
  readonly frameRate: number;
  /** Mean of each frame: the recording at about 1 kHz. */
  readonly mean: Float32Array;
  /** Mean square of the step from sample to sample in each frame: its power, the higher the frequency the more. */
  readonly bright: Float32Array;
  /** Largest magnitude. */
  readonly peak: number;
  readonly flatTops: readonly FlatTop[];
  readonly standStills: readonly StandStill[];
  readonly repeats: readonly RepeatedBlock[];
  readonly jumps: readonly Jump[];
}

const frameSeconds = 0.001;
const framesPerBlock = 2048;
/** What is found may be looked at so far before and after it, s. */
const marginSeconds = 0.22;
/** Samples over which the usual step is averaged. */
const usualOver = 32;

/**
 * Reads a channel once from start to end. Linear in length.
 *
 * @example soundPass(source, 0).peak // 1 where the recording is at full scale
 */
export function soundPass(source: Source, channel: number): SoundFeatures {
  const { sampleRate, length } = source;
  const hop = Math.max(1, Math.round(frameSeconds * sampleRate));
  const margin = hop * Math.round((marginSeconds * sampleRate) / hop);
  const frames = Math.floor(length / hop);
  const mean = new Float32Array(frames);
  const bright = new Float32Array(frames);
  const flatTops: FlatTop[] = [];
  const standStills: StandStill[] = [];
  const repeats: RepeatedBlock[] = [];
  const jumps: Jump[] = [];
  const anchors = anchorsOf(sampleRate);
  const stillLength = Math.round(standStillSeconds * sampleRate);
  let peak = 0;
  let usual = 0;
  let still = 0;
  let flat = 0;
  for (let first = 0; first < frames; first += framesPerBlock) {
    const last = Math.min(frames, first + framesPerBlock);
    const start = first * hop - margin;
    const block = source.read(channel, start, last * hop + margin);
    let i = margin;
    let before = block[i - 1]!;
    for (let frame = first; frame < last; frame++) {
      let sum = 0;
      let squares = 0;
      const end = i + hop;
      for (; i < end; i++) {
        const x = block[i]!;
        const step = x - before;
        const size = step < 0 ? -step : step;
        sum += x;
        squares += step * step;
        if (size <= flatTopStep) {
          flat++;
          if (step === 0) still++;
          else {
            if (still >= stillLength) keep(standStills, standStillAt(block, i, still + 1, start, sampleRate));
            still = 0;
          }
        } else {
          if (flat > 0) {
            if (before > leastTop || before < -leastTop) keep(flatTops, flatTopAt(block, i, flat + 1, start));
            flat = 0;
            if (still >= stillLength) keep(standStills, standStillAt(block, i, still + 1, start, sampleRate));
            still = 0;
          }
          if (size > leastJump && size > jumpRatio * usual && isJump(block, i, size))
            jumps.push({ at: start + i, size });
        }
        usual += (size - usual) / usualOver;
        if (x > peak) peak = x;
        else if (-x > peak) peak = -x;
        before = x;
      }
      mean[frame] = sum / hop;
      bright[frame] = squares / hop;
    }
    anchors.look(block, margin, i, start, repeats);
  }
  const frameRate = sampleRate / hop;
  return { sampleRate, hop, frameRate, mean, bright, peak, flatTops, standStills, repeats, jumps };
}

function keep<T>(list: T[], found: T | null): void {
  if (found !== null) list.push(found);
}
