import { layOut } from '../../core/exercise/lay-out.ts';
import type { SheetLine } from '../../core/exercise/sheet.ts';
import { writtenColumns } from '../../core/exercise/written-columns.ts';
import { notation } from '../../report/parts/notation.ts';

/** A line in notation as HTML, once through; hands and accents in words for who can't see it. */
export function lineNotation(line: SheetLine): string {
  const slots = writtenColumns(layOut({ title: '', lines: [{ ...line, repeats: 1 }] }));
  return notation({ slots }, 0) ?? '';
}
