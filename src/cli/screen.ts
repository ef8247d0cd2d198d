/** What text is laid out for. */
export interface Screen {
  /** Colours as well as signs. */
  readonly color: boolean;
  /** Characters in a line. */
  readonly width: number;
}

/** Where a terminal doesn't say how wide it is, as narrow as tables can be, and as wide as prose is still read. */
const widths = { usual: 80, least: 56, most: 100 };

interface Terminal {
  readonly isTTY?: boolean;
  readonly columns?: number;
}

/**
 * The screen that standard output is; a file or a pipe gets plain text of the usual width, and so does who sets
 * NO_COLOR, but for the width.
 *
 * @example screenOf({ isTTY: true, columns: 120 }, {}) // { color: true, width: 100 }
 */
export function screenOf(
  { isTTY = false, columns = widths.usual }: Terminal = process.stdout,
  { NO_COLOR }: Readonly<Record<string, string | undefined>> = process.env,
): Screen {
  const width = Math.max(widths.least, Math.min(widths.most, isTTY ? columns : widths.usual));
  return { color: isTTY && !NO_COLOR, width };
}
