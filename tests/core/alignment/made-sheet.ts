import { parseNotation } from '../../../src/core/exercise/parse-notation.ts';
import type { Sheet, SheetLine } from '../../../src/core/exercise/sheet.ts';
import type { Stroke } from '../../../src/core/onsets/stroke.ts';

/** A line of a sheet from its notation, once at 110 BPM unless `options` say otherwise. */
export const line = (notation: string, options: Partial<SheetLine> = {}): SheetLine => {
  const parsed = parseNotation(notation);
  if (!parsed.ok) throw new Error(`notation: ${notation}`);
  return {
    id: notation,
    label: notation,
    notation,
    beats: parsed.beats,
    repeats: 1,
    bpm: 110,
    beatsInBar: 4,
    restBeats: 0,
    leadChange: false,
    ratioBand: null,
    ...options,
  };
};

export const sheetOf = (...lines: readonly SheetLine[]): Sheet => ({ title: '', lines });

/** Strokes on a pad at these onsets (s) and levels (dBFS). */
export const padStrokes = (times: readonly number[], levels: readonly number[]): Stroke[] =>
  times.map((time, i) => ({
    time,
    timeSe: 0.0001,
    levelDb: levels[i]!,
    levelSe: 0.2,
    sound: 'pad',
    evidence: 50,
    timbre: null,
  }));
