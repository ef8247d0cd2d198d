interface NamedLine {
  readonly label: string;
  /** Beats a minute; null where none is asked. */
  readonly bpm: number | null;
}

/**
 * A line of a sheet by its label, with its tempo where another line has the same label at another tempo.
 *
 * @example lineName([{ label: 'A', bpm: 80 }, { label: 'A', bpm: 92 }], 1) // 'A at 92 BPM'
 */
export function lineName(lines: readonly NamedLine[], line: number): string {
  const { label, bpm } = lines[line]!;
  const isAlike = lines.some((other) => other.label === label && other.bpm !== bpm);
  return isAlike && bpm !== null ? `${label} at ${Math.round(bpm * 10) / 10} BPM` : label;
}
