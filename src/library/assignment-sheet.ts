import { parseSheet } from '../core/exercise/parse-sheet.ts';
import { writeSheet } from '../core/exercise/write-sheet.ts';
import type { ListedAssignment } from './assignments.ts';

/**
 * An assignment as the text of a sheet that tells for whom it is and until when, each line at the assignment's tempo where
 * it has one: what travels to the player.
 *
 * @example assignmentSheet(assignment, 'Mirelle') // 'title: Week 7\nfor: Mirelle\ndue: 2026-12-01\ntempo: 96\n\n>RLR >LRL\n'
 */
export function assignmentSheet(
  { sheetText, dueDay, note, bpm }: Pick<ListedAssignment, 'sheetText' | 'dueDay' | 'note' | 'bpm'>,
  player: string,
): string {
  const parsed = parseSheet(sheetText);
  if (!parsed.ok) return sheetText;
  const { title, lines } = parsed.sheet;
  const assigned = { player, due: dueDay, note };
  const said = player !== '' || dueDay !== null || note !== '';
  return writeSheet({ title, lines: atTempo(lines, bpm), ...(said ? { assigned } : {}) });
}

/** Lines at another tempo; as they are with null. */
export const atTempo = <Line extends { readonly bpm: number | null }>(
  lines: readonly Line[],
  bpm: number | null,
): readonly Line[] => (bpm === null ? lines : lines.map((line) => ({ ...line, bpm })));
