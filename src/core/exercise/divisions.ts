/** One way of dividing the beat that the catalogue holds exercises for. */
export interface Division {
  /** Equal parts of the beat. */
  readonly parts: number;
  /** Word in an exercise's id. */
  readonly id: string;
  /** Name shown to people. */
  readonly name: string;
}

export const divisions: readonly Division[] = [
  { parts: 3, id: 'triplet', name: 'Triplets' },
  { parts: 2, id: 'eighth', name: 'Eighths' },
  { parts: 4, id: 'sixteenth', name: 'Sixteenths' },
  { parts: 5, id: 'quintuplet', name: 'Quintuplets' },
  { parts: 6, id: 'sextuplet', name: 'Sextuplets' },
];
