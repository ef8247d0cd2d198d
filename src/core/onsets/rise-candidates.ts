import { bandFrames } from '../signal/band-frames.ts';
import { bandLayout } from '../signal/band-layout.ts';
import type { Source } from '../signal/source.ts';
import type { WorkTold } from '../signal/work-told.ts';
import { addRiseEvidence, meanBetween, prefixSums, riseEvidence, silencePower } from './rise-evidence.ts';

/** A place where the power of the recording rises. */
export interface RiseCandidate {
  /** Frame of the rise (see `bandLayout`). */
  readonly frame: number;
  /** Log-likelihood ratio of a rise against none, nats, bands summed, each band's share bounded. */
  readonly evidence: number;
  /** Mean power of each band, the highest first, in the six frames before, and in the two and twelve from the rise on. */
  readonly before: readonly number[];
  readonly attack: readonly number[];
  readonly body: readonly number[];
  /** Mean power of each band 25 to 40 frames after the rise: how fast the sound dies away. */
  readonly after: readonly number[];
}

const beforeFrames = 6;
const sharpLength: readonly number[] = [2];
const bodyFrames = 12;
const aheadFrames = 44;
const historyFrames = 24;
/**
 * The highest band by itself is wires, rattle or a codec letting it in and out: its evidence counts up to this much,
 * and this many times the other bands' together.
 */
const topAlone = 6;
const topShare = 3;
/** Two rises nearer than this many frames are one attack. */
const peakReach = 6;
/** Rises under this evidence are not looked at again; noise alone seldom passes it. */
const leastEvidence = 6;
/** Neighbouring samples of a band aren't independent: share of them that counts. */
const independence = 0.6;

/** The rises of a recording and the power it never falls below for long. */
export interface RisesFound {
  readonly rises: readonly RiseCandidate[];
  /** Median over blocks of the quietest tenth of frames, all bands together; linear power, full-scale sine = ½. */
  readonly floorPower: number;
}

/**
 * Finds every rise of power in a recording of one channel. The statistic is the likelihood ratio for a change of variance with
 * both variances unknown (two-sample variance ratio under Gaussian noise; any statistics text), the best of three
 * lengths after the rise, summed over octave bands. Linear in length; memory grows only with the number of rises. `tell`
 * hears of it every few seconds of the recording.
 */
export function riseCandidates(source: Source, tell?: WorkTold): RisesFound {
  const layout = bandLayout(source.sampleRate);
  const bands = layout.stages + 1;
  const perFrame = layout.bands.map(
    (_, band) => (layout.hop / 2 ** Math.min(band + 1, layout.stages)) * independence,
  );
  const rises: RiseCandidate[] = [];
  const floors: number[] = [];
  let history: Float32Array[] | null = null;
  let historyStart = -historyFrames;
  for (const block of withTail(bandFrames(source, 0), bands)) {
    // Before its first frame a recording is taken to sound as in it, so that its start is no attack.
    const past: readonly Float32Array[] =
      history ?? block.map((values) => new Float32Array(historyFrames).fill(startPower(values)));
    const power: readonly Float32Array[] = past.map((values, band) => joined(values, block[band]!));
    const frames = power[0]!.length;
    const start = historyStart;
    scan(power, frames, perFrame, (peak) => rises.push({ ...peak, frame: peak.frame + start }));
    const quiet = quietTenth(block.slice(0, bands));
    if (quiet > 0) floors.push(quiet);
    const keep = historyFrames + aheadFrames;
    history = power.map((values) => values.slice(frames - keep));
    historyStart = start + frames - keep;
    tell?.(
      'listening',
      Math.min(1, ((historyStart + keep) / layout.frameRate) * (source.sampleRate / source.length)),
    );
  }
  floors.sort((a, b) => a - b);
  return { rises, floorPower: floors[floors.length >> 1] ?? silencePower };
}

/** Band powers of each block, and silence after the last so that its rises have an aftermath to look at. */
function* withTail(blocks: ReturnType<typeof bandFrames>, bands: number): Generator<readonly Float32Array[]> {
  for (const block of blocks) yield [...block.power, ...block.fresh];
  yield Array.from({ length: 2 * bands }, () => new Float32Array(aheadFrames));
}

function quietTenth(power: readonly Float32Array[]): number {
  const total = new Float32Array(Math.ceil(power[0]!.length / 4));
  for (const band of power) for (let i = 0; i < total.length; i++) total[i]! += band[4 * i]!;
  total.sort();
  return total[Math.floor(total.length / 10)] ?? 0;
}

/** Mean of the first frames; the filters need the very first one to settle. */
function startPower(values: Float32Array): number {
  const first = values.subarray(1, 1 + beforeFrames);
  return first.length === 0 ? 0 : first.reduce((sum, value) => sum + value, 0) / first.length;
}

function joined(a: Float32Array, b: Float32Array): Float32Array {
  const all = new Float32Array(a.length + b.length);
  all.set(a);
  all.set(b, a.length);
  return all;
}

/** Looks for peaks of evidence between `historyFrames` and `frames − aheadFrames`. */
function scan(
  power: readonly Float32Array[],
  frames: number,
  perFrame: readonly number[],
  found: (candidate: RiseCandidate) => void,
): void {
  const bands = power.length / 2;
  const sums = power.slice(0, bands).map(prefixSums);
  const fresh = power.slice(bands).map(prefixSums);
  const evidence = new Float32Array(frames);
  const from = historyFrames - peakReach;
  const to = frames - aheadFrames + peakReach;
  for (let band = 1; band < bands; band++) addRiseEvidence(fresh[band]!, perFrame[band]!, from, to, evidence);
  const top = new Float64Array(frames);
  addRiseEvidence(fresh[0]!, perFrame[0]!, from, to, top);
  for (let frame = from; frame < to; frame++) {
    evidence[frame]! += Math.min(top[frame]!, topAlone + topShare * evidence[frame]!);
  }
  for (let frame = historyFrames; frame < frames - aheadFrames; frame++) {
    const height = evidence[frame]!;
    if (height < leastEvidence || !isPeak(evidence, frame)) continue;
    const at = sharpest(fresh, perFrame, frame);
    const mean = (band: number, a: number, b: number) => meanBetween(sums[band]!, at + a, at + b);
    // Plain numbers take a third of the room of so short an array of floats.
    const each = (value: (band: number) => number) => sums.map((_, band) => value(band));
    found({
      frame: at,
      evidence: height,
      before: each((band) => mean(band, -beforeFrames, 0)),
      attack: each((band) => mean(band, 0, 2)),
      body: each((band) => mean(band, 0, bodyFrames)),
      after: each((band) => mean(band, 25, 40)),
    });
  }
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
  const sharp = new Float64Array(bodyFrames + 2);
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
