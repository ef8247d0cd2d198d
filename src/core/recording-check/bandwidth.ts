import { pickup } from '../signal/pickup.ts';
import { anyBetween } from '../stats/any-between.ts';
import type { Finding, HeardRecording } from './heard-recording.ts';
import { type MeanSpectrum, meanSpectrum } from './mean-spectrum.ts';

/**
 * A filter's edge in the sound of a place: so steep a fall, dB, over half an octave, and nothing more above it; in
 * strokes so much over an octave.
 */
const edge = { fallDb: 9, octaves: 0.5, lowestHz: 1000, attackFallDb: 20 };
/** Strokes so near a click sound of it, s. */
const nearClick = 0.06;
/** Sound that reaches less high than this is worth a word, Hz: attacks tell their time by more. */
const leastHz = 7500;

/**
 * Where the sound of the place ends as if cut off, Hz, or half the sample rate. Strokes must end there too: the echo of
 * a click alone also ends somewhere.
 */
function upperEdgeHz({ source, quiet, hearing, performance }: HeardRecording): number {
  const nyquist = source.sampleRate / 2;
  const before = performance.strokes.map(({ time }) => time - 0.024);
  const times = quiet.pauses.length >= 24 ? quiet.pauses : [...quiet.pauses, ...before];
  const heard = pickup(source);
  const clicks = hearing.click?.times ?? [];
  const spectrum = meanSpectrum(heard, times);
  const attacks = meanSpectrum(
    heard,
    performance.strokes
      .map(({ time }) => time)
      .filter((time) => !anyBetween(clicks, time - nearClick, time + nearClick)),
  );
  if (spectrum === null) return nyquist;
  const step = 2 ** (1 / 12);
  const half = 2 ** edge.octaves;
  for (let hz = edge.lowestHz; hz * half < 0.95 * nyquist; hz *= step) {
    const here = bandDb(spectrum, hz);
    if (here - bandDb(spectrum, hz * half) < edge.fallDb) continue;
    let above = Number.NEGATIVE_INFINITY;
    for (let higher = hz * half; higher < 0.95 * nyquist; higher *= step)
      above = Math.max(above, bandDb(spectrum, higher));
    const inAttacks = attacks === null || bandDb(attacks, hz) - bandDb(attacks, 2 * hz) >= edge.attackFallDb;
    if (inAttacks && here - above >= edge.fallDb) return hz * 2 ** (edge.octaves / 2);
  }
  return nyquist;
}

/** Mean over a sixth of an octave, dB. */
function bandDb({ powerDb, stepHz }: MeanSpectrum, hz: number): number {
  const from = Math.max(1, Math.floor((hz * 2 ** (-1 / 12)) / stepHz));
  const to = Math.min(powerDb.length, Math.max(from + 1, Math.ceil((hz * 2 ** (1 / 12)) / stepHz)));
  let sum = 0;
  for (let bin = from; bin < to; bin++) sum += powerDb[bin]!;
  return sum / (to - from);
}

/** Sound that ends at too low a frequency: a telephone line, a low sample rate, a wireless headset's microphone. */
export function bandwidth(heard: HeardRecording): Finding | null {
  const upToHz = upperEdgeHz(heard);
  if (upToHz >= leastHz) return null;
  return { code: 'narrow-band', facts: { upToHz, sampleRate: heard.source.sampleRate }, spoils: [] };
}
