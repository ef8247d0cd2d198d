import { faultText } from '../../core/exercise/fault-text.ts';
import { settingRanges } from '../../core/exercise/line-settings.ts';
import { parseSheet } from '../../core/exercise/parse-sheet.ts';
import { writeSheet } from '../../core/exercise/write-sheet.ts';
import { atTempo } from '../../library/assignment-sheet.ts';
import type { Assignment } from '../../library/assignments.ts';

interface Wished {
  /** The sheet as it is written. */
  readonly text: string;
  readonly personId: string | null;
  /** As a day, or empty. */
  readonly dueDay: string;
  /** Beats per minute as typed, or empty for what the sheet says. */
  readonly tempo: string;
  readonly note: string;
}

type Made =
  | { readonly ok: true; readonly title: string; readonly assignment: Assignment }
  | { readonly ok: false; readonly sentence: string };

/**
 * The assignment that a sheet and the wishes beside it make. The tempo is written into the sheet, so that it travels
 * with it; headings that say for whom and until when leave it, since the assignment itself says so.
 *
 * @example assignmentOf({ text: '>RLR', personId: null, dueDay: '', tempo: '96', note: '' }) // its sheet: 'tempo: 96\n\n>RLR\n'
 */
export function assignmentOf({ text, personId, dueDay, tempo, note }: Wished): Made {
  const parsed = parseSheet(text);
  if (!parsed.ok)
    return { ok: false, sentence: parsed.faults.map((fault) => faultText(text, fault)).join('\n') };
  const bpm = tempo.trim() === '' ? null : Number(tempo.trim().replace(',', '.'));
  const { least, most } = settingRanges.tempo;
  if (bpm !== null && !(bpm >= least && bpm <= most))
    return { ok: false, sentence: `Write a tempo from ${least} to ${most}, or none.` };
  const { title, lines } = parsed.sheet;
  return {
    ok: true,
    title,
    assignment: {
      id: crypto.randomUUID(),
      personId,
      bpm: null,
      dueDay: dueDay === '' ? null : dueDay,
      note: note.trim(),
      setAt: Date.now(),
      doneAt: null,
      sheetText: writeSheet({ title, lines: atTempo(lines, bpm) }),
    },
  };
}
