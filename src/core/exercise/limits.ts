/**
 * Bounds on what a person may write, so that no text, however strange, costs more than a moment. Our judgement:
 * each lies well past anything played in one take.
 */
export const limits = {
  notationCharacters: 8_000,
  beatsInNotation: 512,
  divisions: 12,
  graceNotes: 3,
  sheetCharacters: 200_000,
  sheetLines: 200,
  /** Strokes of a whole sheet, repeats counted: more than two hours at ten strokes a second. */
  sheetStrokes: 100_000,
  /** Title of a sheet, name of a line. */
  nameCharacters: 200,
  /** Faults told at once; past these, people read no further. */
  faults: 20,
} as const;
