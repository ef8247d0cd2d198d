import { fineStep } from '../signal/coarse-samples.ts';
import { joined } from '../signal/joined.ts';
import type { Source } from '../signal/source.ts';
import { type FlatTop, flatTopAt, flatTopSteps, leastTop } from './flat-top.ts';
import { type Jump, jumpsIn } from './jump.ts';
import { anchorsOf, type RepeatedBlock } from './repeated-block.ts';
import { type StandStill, standStillsIn } from './stand-still.ts';

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
  /** Mean square of all samples. */
  readonly power: number;
  readonly flatTops: readonly FlatTop[];
  readonly standStills: readonly StandStill[];
  readonly repeats: readonly RepeatedBlock[];
  readonly jumps: readonly Jump[];
}

/** Gathers the features of a channel while its recording comes. */
interface SoundFollower {
  /** Goes on with a recording that is the same as before and longer. */
  goOn(recording: Source): void;
  /** The recording is over: to the last digit what one reading of all of it gathers. */
  end(recording: Source): SoundFeatures;
}

const frameSeconds = 0.001;
const framesPerBlock = 2048;
/** What is found may be looked at so far before and after it, s. */
const marginSeconds = 0.22;

/**
 * Reads a channel once from start to end, whose samples are stored in steps of `step`. Linear in length.
 *
 * @example soundPass(source, 0).power // 0.5 for a sine at full scale
 */
export function soundPass(source: Source, channel: number, step = fineStep): SoundFeatures {
  return followSound(source.sampleRate, channel, step).end(source);
}

/**
 * Begins to gather the features of a channel. Blocks are read as soon as there is all that is looked at round them.
 *
 * @example followSound(48000, 0).end(source).power // 0.5 for a sine at full scale
 */
export function followSound(sampleRate: number, channel: number, step = fineStep): SoundFollower {
  const hop = Math.max(1, Math.round(frameSeconds * sampleRate));
  const margin = hop * Math.round((marginSeconds * sampleRate) / hop);
  const means: Float32Array[] = [];
  const brights: Float32Array[] = [];
  const flatTops: FlatTop[] = [];
  const standStills: StandStill[] = [];
  const repeats: RepeatedBlock[] = [];
  const jumps: Jump[] = [];
  const anchors = anchorsOf(sampleRate, step);
  const flatStep = flatTopSteps * step;
  const room = new Float32Array(framesPerBlock * hop + 2 * margin);
  let frames = 0;
  let energy = 0;
  let flat = 0;

  function readBlock(source: Source, last: number): void {
    const start = frames * hop - margin;
    const block = source.read(channel, start, last * hop + margin, room);
    const mean = new Float32Array(last - frames);
    const bright = new Float32Array(last - frames);
    let i = margin;
    let before = block[i - 1]!;
    for (let frame = 0; frame < mean.length; frame++) {
      let sum = 0;
      let squares = 0;
      const end = i + hop;
      for (; i < end; i++) {
        const x = block[i]!;
        const rise = x - before;
        sum += x;
        squares += rise * rise;
        energy += x * x;
        if (x > leastTop || x < -leastTop || flat > 0) {
          if (rise <= flatStep && rise >= -flatStep) flat++;
          else {
            const top =
              flat > 0 && (before > leastTop || before < -leastTop)
                ? flatTopAt(block, i, flat + 1, start, step)
                : null;
            if (top !== null) flatTops.push(top);
            flat = 0;
          }
        }
        before = x;
      }
      mean[frame] = sum / hop;
      bright[frame] = squares / hop;
    }
    jumpsIn(block, margin, i, start, jumps, step);
    standStillsIn(block, margin, i, start, { sampleRate, step }, standStills);
    anchors.look(block, margin, i, start, repeats);
    means.push(mean);
    brights.push(bright);
    frames = last;
  }

  return {
    goOn(recording) {
      for (
        let last = frames + framesPerBlock;
        last * hop + margin <= recording.length;
        last += framesPerBlock
      )
        readBlock(recording, last);
    },
    end(recording) {
      const all = Math.floor(recording.length / hop);
      while (frames < all) readBlock(recording, Math.min(all, frames + framesPerBlock));
      const power = frames === 0 ? 0 : energy / (frames * hop);
      const [mean, bright] = [joined(means), joined(brights)];
      const frameRate = sampleRate / hop;
      return { sampleRate, hop, frameRate, mean, bright, power, flatTops, standStills, repeats, jumps };
    },
  };
}
