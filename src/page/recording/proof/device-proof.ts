/** One thing that a device does to what it records. */
export type DeviceHabit = 'gating' | 'noise-suppression' | 'gain-control';

/**
 * Whether the device records what is there. `not-heard`: the clicks don't reach the microphone, so it couldn't be
 * checked; `too-soft`: they reach it, but too faintly to judge; `too-loud`: they were cut at full scale.
 */
export type ProofVerdict = 'obeyed' | DeviceHabit | 'not-heard' | 'too-soft' | 'too-loud';

/** A difference of levels with its 95 % interval, dB. */
export interface LevelDifference {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

export interface DeviceProof {
  readonly verdict: ProofVerdict;
  /** All that was found, the worst first; empty where it obeyed or couldn't be checked. */
  readonly habits: readonly DeviceHabit[];
  /** Loud less soft clicks; 20 dB were sent. Null where it couldn't be measured. */
  readonly difference: LevelDifference | null;
  /** Soft clicks after a silence less soft clicks among loud ones; 0 dB were sent. */
  readonly afterSilence: LevelDifference | null;
  /** Faint clicks after a silence, less where they should lie; −Infinity where they are gone. Null: under the noise. */
  readonly faint: LevelDifference | null;
  /** End of a steady rustle less its beginning; 0 dB were sent. Null: under the noise. */
  readonly steady: number | null;
  /** Last loud clicks less first ones; 0 dB were sent. */
  readonly drift: number | null;
  /** Peak of the loudest click in the recording, dBFS: of louder sounds nothing is proved. */
  readonly loudestDb: number | null;
}
