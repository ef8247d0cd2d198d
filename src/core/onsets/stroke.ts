import type { SilentBeyond } from '../click/silent-beyond.ts';
import type { Timbre } from './timbre.ts';

/** What a found sound is taken for; only `pad` sounds are strokes of the take. */
export type SoundClass = 'pad' | 'click' | 'stick-click' | 'voice' | 'other';

/** One sound with an attack found in a recording. */
export interface Stroke {
  /** Onset in seconds from the start of the recording. */
  readonly time: number;
  /** Standard error of `time`, s. */
  readonly timeSe: number;
  /**
   * Power of its first 4 ms between 150 Hz and about 3 kHz, its predecessor's tail taken off (see `stroke-level.ts`); dBFS,
   * full-scale sine = 0. A click's is its peak.
   */
  readonly levelDb: number;
  /** Standard error of `levelDb`, dB. */
  readonly levelSe: number;
  readonly sound: SoundClass;
  /** Log-likelihood evidence for an attack here, nats; the larger, the surer. */
  readonly evidence: number;
  /** How the attack sounds apart from its level: tells sounds and hands apart. Null for a click. */
  readonly timbre: Timbre | null;
}

/** Everything heard in a recording. `sounds` is in order of time and holds every class. */
export interface Hearing {
  readonly sounds: readonly Stroke[];
  /**
   * Level of the recording between strokes from 70 Hz up, all bands together, as that of a sine of the same power: dBFS,
   * full-scale sine = 0. Of notes that a pad sent, that of the softest velocity.
   */
  readonly noiseFloorDb: number;
  /** Clicks of a metronome found in the recording, or null. */
  readonly click: HeardClick | null;
}

/** A metronome heard in the recording, or played to it by the tool. */
export interface HeardClick {
  /** Times of the clicks, s. */
  readonly times: readonly number[];
  /** Seconds between clicks, fitted over all of them; of a click that changes its tempo the median. */
  readonly period: number;
  /** Peak of its loudest sound, dBFS; −∞ for a played click that wasn't heard. */
  readonly levelDb: number;
  /** Whether it is known to be silent before its first click and after its last; else it may sound under strokes there. */
  readonly silent?: SilentBeyond;
  /** Only where the tool played it: standard error of the delay that its times were corrected by, s. */
  readonly played?: { readonly delaySe: number };
  /**
   * Only where what the tool put out was found by its times: put out at t it is heard at delay + rate·t; whether all kinds of
   * it were heard and taken off.
   */
  readonly put?: { readonly delay: number; readonly rate: number; readonly whole: boolean };
  /** Its tempo changes; without, it keeps one. */
  readonly changes?: true;
}
