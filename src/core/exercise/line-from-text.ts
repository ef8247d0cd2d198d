import { longestBar } from './bars.ts';
import { findExercise, listExercises } from './catalogue.ts';
import { exerciseId } from './exercise-id.ts';
import type { TextFault } from './fault.ts';
import { type LineSettings, plainSettings } from './line-settings.ts';
import { nearestText } from './nearest-text.ts';
import { type NotationFaultCode, parseNotation } from './parse-notation.ts';
import { plainLabel } from './plain-label.ts';
import type { SheetLine } from './sheet.ts';
import { writeNotation } from './write-notation.ts';

export type LineFault = TextFault<NotationFaultCode | 'unknown-exercise' | 'bar-too-long'>;

type ParsedLine =
  | { readonly ok: true; readonly line: SheetLine }
  | { readonly ok: false; readonly fault: LineFault };

/** A word in small letters with more in it than grace notes and a buzz is meant as an id. */
const meantAsId = (text: string): boolean => /^[A-Za-z][a-z0-9+-]*$/.test(text) && /[a-kmnopqs-y]/.test(text);

/**
 * Makes a line of a sheet from what a person typed: an id of the catalogue or a notation. What `settings` leaves
 * out is plain: once, tempo open, no rest, bars as long as the longest between bar lines, of 4 beats without any.
 * Settings are trusted; `readSetting` checks those that come from people.
 *
 * @example lineFromText('>RLR >LRL', { bpm: 110, repeats: 8 })
 */
export function lineFromText(text: string, settings: Partial<LineSettings> = {}): ParsedLine {
  const word = text.trim();
  const column = [...text.slice(0, text.length - text.trimStart().length)].length + 1;
  const listed = findExercise(word);
  if (listed === null && meantAsId(word)) {
    const ids = listExercises().map((exercise) => exercise.id);
    const facts = { value: word.slice(0, 60), nearest: nearestText(word, ids) };
    return { ok: false, fault: { code: 'unknown-exercise', line: 1, column, facts } };
  }
  const parsed = listed === null ? parseNotation(text) : { ok: true as const, beats: listed.beats };
  if (!parsed.ok) return parsed;

  const { beats } = parsed;
  const id = listed?.id ?? exerciseId(beats);
  const notation = writeNotation(beats);
  const barBeats = longestBar(beats);
  const beatsInBar = settings.beatsInBar ?? barBeats ?? plainSettings.beatsInBar;
  if (barBeats !== null && barBeats > beatsInBar) {
    const facts = { beats: barBeats, value: beatsInBar };
    return { ok: false, fault: { code: 'bar-too-long', line: 1, column, facts } };
  }
  const label = plainLabel(id, notation);
  return { ok: true, line: { ...plainSettings, label, ...settings, id, notation, beats, beatsInBar } };
}
