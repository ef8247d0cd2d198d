/** What stands behind a figure as its unit. */
const units = 'dBFS|dBA|dB|BPM|kHz|Hz|ms|s|min|minutes?|beats?|kB|MB|GB';
const beforeUnit = new RegExp(`(?<=\\d) (?=%|(?:${units})(?![\\p{L}\\p{N}]))`, 'gu');

/** A range of figures: `96–98`. */
const inRange = /(?<=\d)–(?=\d)/g;

const noBreakSpace = '\u00a0';
const wordJoiner = '\u2060';

/**
 * A text for the screen or for paper in which no line breaks between a figure and its unit, nor inside a range.
 *
 * @example wholeFigures('14 dB') // '14' and 'dB' with a no-break space between them
 */
export const wholeFigures = (text: string): string =>
  text.replace(beforeUnit, noBreakSpace).replace(inRange, `–${wordJoiner}`);
