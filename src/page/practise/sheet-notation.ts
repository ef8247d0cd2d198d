import { layOut } from '../../core/exercise/lay-out.ts';
import type { SheetLine } from '../../core/exercise/sheet.ts';
import { notation } from '../../report/parts/notation.ts';

/** A line in notation as HTML, once through; hands and accents in words for who can't see it. */
export function lineNotation(line: SheetLine): string {
  const slots = layOut({ title: '', lines: [{ ...line, repeats: 1 }] });
  const column = <Name extends keyof (typeof slots)[number]>(name: Name) => slots.map((slot) => slot[name]);
  return (
    notation(
      {
        slots: {
          line: column('line'),
          repeat: column('repeat'),
          bar: column('bar'),
          beat: column('beat'),
          partial: column('partial'),
          divisions: column('divisions'),
          hand: column('hand'),
          accent: column('accent'),
          grace: column('grace'),
          buzz: column('buzz'),
        },
      },
      0,
    ) ?? ''
  );
}
