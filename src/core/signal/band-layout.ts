/** How a recording of one sample rate is split into bands and frames. */
export interface BandLayout {
  /** Halvings done first and forgotten, so that 96 and 192 kHz are worked on near 48 kHz. */
  readonly preHalvings: number;
  /** Rate worked at after them, Hz. */
  readonly workRate: number;
  /** Halvings of the cascade; each gives one upper band, the rest is the lowest band. */
  readonly stages: number;
  /** Work-rate samples in a frame, a multiple of 2^stages; frames last about a millisecond. */
  readonly hop: number;
  readonly frameRate: number;
  /** Lower and upper edge of each band, Hz, the highest band first. */
  readonly bands: readonly { readonly lowHz: number; readonly highHz: number }[];
}

/** Octave bands down to about 1.5 kHz and the rest below; `sampleRate` in Hz, 8 to 192 kHz. */
export function bandLayout(sampleRate: number): BandLayout {
  const preHalvings = Math.max(0, Math.floor(Math.log2(sampleRate / 44_000)));
  const workRate = sampleRate / 2 ** preHalvings;
  const stages = Math.max(1, Math.round(Math.log2(workRate / 3000)));
  const unit = 2 ** stages;
  const hop = unit * Math.max(1, Math.round(workRate / 1000 / unit));
  const bands = [];
  for (let stage = 0; stage < stages; stage++) {
    bands.push({ lowHz: workRate / 2 ** (stage + 2), highHz: workRate / 2 ** (stage + 1) });
  }
  bands.push({ lowHz: 0, highHz: workRate / 2 ** (stages + 1) });
  return { preHalvings, workRate, stages, hop, frameRate: workRate / hop, bands };
}
