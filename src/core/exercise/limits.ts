/**
 * Bounds on what a person may write, so that no text, however strange, costs more than a moment. Our judgement:
 * each lies well past anything played in one take.
 */
export const limits = {
  notationCharacters: 8_000,
  beatsInNotation: 512,
  divisions: 12,
  graceNotes: 3,
} as const;
