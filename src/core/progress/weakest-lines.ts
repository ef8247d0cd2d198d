/** The newest playing of one line, with its timing spread in per cent of a partial and the 95 % interval. */
export interface PlayedLine {
  readonly exerciseId: string;
  /** Untrusted. */
  readonly label: string;
  readonly takeId: string;
  /** Its place on the sheet of that take. */
  readonly place: number;
  readonly day: string;
  readonly bpm: number | null;
  readonly spread: { readonly value: number; readonly low: number; readonly high: number };
}

export interface WeakLine extends PlayedLine {
  /** Its interval lies above that of every line that isn't among the weakest. */
  readonly apart: boolean;
}

/**
 * The lines whose timing is most uneven for the space that their strokes have, worst first. Where nothing else was played
 * there is nothing to stand apart from.
 *
 * @example weakestLines(lines, 2).map(({ label }) => label) // ['Accent on 3, doubles', 'Accent on 1, triples']
 */
export function weakestLines(lines: readonly PlayedLine[], count: number): readonly WeakLine[] {
  const sorted = lines.toSorted((a, b) => b.spread.value - a.spread.value);
  const others = sorted.slice(count);
  return sorted.slice(0, count).map((line) => ({
    ...line,
    apart: others.length > 0 && others.every(({ spread }) => spread.high < line.spread.low),
  }));
}
