import { faultText } from '../core/exercise/fault-text.ts';
import { parseSheet } from '../core/exercise/parse-sheet.ts';
import type { Sheet } from '../core/exercise/sheet.ts';
import { readMusicXml } from './music-xml/read-music-xml.ts';
import { scoreFaultSentence, scoreNoteSentence } from './music-xml/score-sentences.ts';
import { beginsLikeScore, scoreText } from './music-xml/score-text.ts';

export type SheetFile =
  /** `notes`: sentences on what was left out or added. */
  | { readonly ok: true; readonly sheet: Sheet; readonly notes: readonly string[] }
  | { readonly ok: false; readonly faults: readonly string[] };

/**
 * A teacher's file, whichever it is: a sheet as text, or a MusicXML score, plain or compressed. Faults are sentences,
 * those of a sheet with line and column. Never throws for what a file may hold.
 *
 * @example readSheetFile(new TextEncoder().encode('>RLR >LRL ; times: 4')) // { ok: true, sheet, notes: [] }
 */
export function readSheetFile(bytes: Uint8Array): SheetFile {
  if (beginsLikeScore(bytes)) {
    const score = scoreText(bytes);
    if (!score.ok)
      return { ok: false, faults: [`The score can't be read: ${score.reason} Save it again as MusicXML.`] };
    const read = readMusicXml(score.text);
    if (!read.ok) return { ok: false, faults: [scoreFaultSentence(read.fault)] };
    return { ok: true, sheet: read.sheet, notes: read.notes.map(scoreNoteSentence) };
  }
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return {
      ok: false,
      faults: ["This is no text, so it can't be a sheet. Choose the sheet, saved as UTF-8 text."],
    };
  }
  const parsed = parseSheet(text);
  return parsed.ok
    ? { ok: true, sheet: parsed.sheet, notes: [] }
    : { ok: false, faults: parsed.faults.map((fault) => faultText(text, fault)) };
}
