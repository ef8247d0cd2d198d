import type { BandBlock } from '../signal/band-frames.ts';
import type { BandLayout } from '../signal/band-layout.ts';
import { type RiseCandidate, type RisesFound, riseFrames } from './rise-candidate.ts';
import { addRiseEvidence, longestAfter, meanBetween, riseEvidence, silencePower } from './rise-evidence.ts';

const sharpLength: readonly number[] = [2];
/** A rise's aftermath ends so many frames after it, and it lies up to its body's length after its peak of evidence. */
const aheadFrames = riseFrames.after.to + riseFrames.body;
/** Frames kept from before: more than the longest past. Measured: 12 to 48 find the same. */
const historyFrames = 24;
/**
 * The highest band by itself is wires, rattle or a codec letting it in and out: its evidence counts up to this much,
 * and this many times the other bands' together. Measured: 2 to 6 times finds the same in 25 rendered takes.
 */
const topAlone = 6;
const topShare = 3;
/** Two rises nearer than this many frames are one attack. */
const peakReach = 6;
/** Rises under this evidence are not looked at again; noise alone seldom passes it. */
const leastEvidence = 6;
/** Neighbouring samples of a band aren't independent: share of them that counts. */
const independence = 0.6;

/** Frames in whose midst the floor is judged, and after which running sums begin anew. */
const blockFrames = 4096;
const keptFrames = historyFrames + aheadFrames;

/** A search for rises under way. */
interface RiseSearch {
  /** Goes on with the next frames; how they are cut into blocks changes nothing, but the first must have ten or be all. */
  add(block: Pick<BandBlock, 'power' | 'fresh'>): void;
  /** The recording is over: silence follows. */
  end(): RisesFound;
  /** Rises found so far, in order of their peaks. */
  readonly rises: readonly RiseCandidate[];
  /** Before this frame all peaks of evidence are known. */
  readonly known: number;
}

/**
 * Begins a search for rises in the bands of a recording. The statistic is the likelihood ratio for a change of variance
 * with both variances unknown (two-sample variance ratio under Gaussian noise; any statistics text), the best of three
 * lengths after the rise, summed over octave bands. Linear; a rise is known about 0.06 s after it; memory grows only with
 * the number of rises.
 */
export function riseSearch(layout: BandLayout): RiseSearch {
  const bands = layout.stages + 1;
  const perFrame = layout.bands.map(
    (_, band) => (layout.hop / 2 ** Math.min(band + 1, layout.stages)) * independence,
  );
  const room = keptFrames + blockFrames + aheadFrames;
  // The raw bands, then those with the ringing predicted away.
  const power = Array.from({ length: 2 * bands }, () => new Float32Array(room));
  const sums = power.map(() => new Float64Array(room + 1));
  const fresh = sums.slice(bands);
  const evidence = new Float32Array(room);
  const top = new Float64Array(room);
  const rises: RiseCandidate[] = [];
  const floors: number[] = [];
  /** Frame of the first place, places filled, places filled when this block began. */
  let start = -historyFrames;
  let filled = 0;
  let blockFrom = historyFrames;
  /** Places whose evidence is known, and which have been looked at. */
  let weighed = historyFrames - peakReach;
  let looked = historyFrames;

  function append(values: (band: number) => Float32Array, from: number, count: number): void {
    for (let band = 0; band < 2 * bands; band++) {
      const into = power[band]!;
      const sum = sums[band]!;
      into.set(values(band).subarray(from, from + count), filled);
      for (let i = filled; i < filled + count; i++) sum[i + 1] = sum[i]! + into[i]!;
    }
    filled += count;
    look();
  }

  function look(): void {
    const to = Math.max(weighed, filled - longestAfter);
    evidence.fill(0, weighed, to);
    top.fill(0, weighed, to);
    for (let band = 1; band < bands; band++)
      addRiseEvidence(fresh[band]!, perFrame[band]!, weighed, to, evidence);
    addRiseEvidence(fresh[0]!, perFrame[0]!, weighed, to, top);
    for (let i = weighed; i < to; i++) evidence[i]! += Math.min(top[i]!, topAlone + topShare * evidence[i]!);
    weighed = to;
    for (; looked < filled - aheadFrames; looked++) {
      const height = evidence[looked]!;
      if (height >= leastEvidence && isPeak(evidence, looked)) rises.push(riseAt(looked, height));
    }
  }

  function riseAt(peak: number, height: number): RiseCandidate {
    const at = sharpest(fresh, perFrame, peak);
    // Plain numbers take a third of the room of so short an array of floats.
    const mean = (from: number, to: number) =>
      sums.slice(0, bands).map((sum) => meanBetween(sum, at + from, at + to));
    return {
      frame: start + at,
      evidence: height,
      before: mean(-riseFrames.before, 0),
      attack: mean(0, riseFrames.attack),
      body: mean(0, riseFrames.body),
      after: mean(riseFrames.after.from, riseFrames.after.to),
    };
  }

  /** Takes the floor of a block that is full, and goes on with its end at the front. */
  function turnOver(): void {
    takeFloor();
    const shift = filled - keptFrames;
    for (let band = 0; band < 2 * bands; band++) {
      power[band]!.copyWithin(0, shift, filled);
      const sum = sums[band]!;
      for (let i = 0; i < keptFrames; i++) sum[i + 1] = sum[i]! + power[band]![i]!;
    }
    evidence.copyWithin(0, shift, filled);
    start += shift;
    weighed -= shift;
    looked -= shift;
    filled = keptFrames;
    blockFrom = keptFrames;
  }

  function takeFloor(): void {
    const quiet = quietTenth(power.slice(0, bands).map((values) => values.subarray(blockFrom, filled)));
    if (quiet > 0) floors.push(quiet);
  }

  return {
    rises,
    get known() {
      return start + looked;
    },
    add({ power: raw, fresh: left }) {
      const values = (band: number) => (band < bands ? raw[band]! : left[band - bands]!);
      const frames = raw[0]!.length;
      // Before its first frame a recording is taken to sound as in it, so that its start is no attack.
      if (filled === 0)
        append((band) => new Float32Array(historyFrames).fill(startPower(values(band))), 0, historyFrames);
      for (let from = 0; from < frames; ) {
        const count = Math.min(frames - from, blockFrom + blockFrames - filled);
        append(values, from, count);
        from += count;
        if (filled === blockFrom + blockFrames) turnOver();
      }
    },
    end() {
      if (filled > blockFrom) takeFloor();
      // So that the last rises have an aftermath to look at.
      const silence = new Float32Array(aheadFrames);
      if (filled > 0) append(() => silence, 0, aheadFrames);
      floors.sort((a, b) => a - b);
      return { rises, floorPower: floors[floors.length >> 1] ?? silencePower };
    },
  };
}

function quietTenth(power: readonly Float32Array[]): number {
  const total = new Float32Array(Math.ceil(power[0]!.length / 4));
  for (const band of power) for (let i = 0; i < total.length; i++) total[i]! += band[4 * i]!;
  total.sort();
  return total[Math.floor(total.length / 10)] ?? 0;
}

/** Mean of the first frames; the filters need the very first one to settle. */
function startPower(values: Float32Array): number {
  const first = values.subarray(1, 1 + riseFrames.before);
  return first.length === 0 ? 0 : first.reduce((sum, value) => sum + value, 0) / first.length;
}

function isPeak(evidence: Float32Array, frame: number): boolean {
  const height = evidence[frame]!;
  for (let near = 1; near <= peakReach; near++) {
    if (evidence[frame - near]! >= height || evidence[frame + near]! > height) return false;
  }
  return true;
}

/**
 * The evidence is blunt, since it looks at twelve frames; the two-frame evidence near its top says where the attack
 * is. The first place nearly as good as the best wins, so that a grace note isn't passed over for its main stroke.
 */
function sharpest(fresh: readonly Float64Array[], perFrame: readonly number[], peak: number): number {
  const from = peak - 2;
  const sharp = new Float64Array(riseFrames.body + 2);
  for (let i = 0; i < sharp.length; i++) {
    for (let band = 0; band < fresh.length; band++) {
      sharp[i]! += riseEvidence(fresh[band]!, perFrame[band]!, from + i, sharpLength);
    }
  }
  const enough = 0.7 * Math.max(...sharp);
  let first = sharp.findIndex((value) => value >= enough);
  if (first < 0) return peak;
  while (first + 1 < sharp.length && sharp[first + 1]! > sharp[first]!) first++;
  return from + first;
}
