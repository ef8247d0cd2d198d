const minus = '\u2212';
const thin = (text: string) => text.replace('-', minus);

/** A number with so many decimals and a true minus sign; no minus before a rounded zero. */
export function rounded(value: number, decimals = 1): string {
  const text = value.toFixed(decimals);
  return thin(Number(text) === 0 ? text.replace('-', '') : text);
}

/** A number of a measure in its unit's usual digits, without the unit. A probability is shown as per cent. */
export function figure(value: number, unit: string): string {
  return unit === 'probability' ? rounded(value * 100) : rounded(value);
}

/** The unit as shown behind a figure. */
export function shownUnit(unit: string): string {
  return unit === 'probability' ? '%' : unit;
}

/**
 * A time in the take as minutes and seconds.
 *
 * @example takeTime(68.24) // '1:08.2'
 */
export function takeTime(seconds: number): string {
  const tenths = Math.round(seconds * 10);
  const minutes = Math.floor(tenths / 600);
  return `${minutes}:${((tenths % 600) / 10).toFixed(1).padStart(4, '0')}`;
}

/** A text as a sentence begins: `Line 1` for `line 1`. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/**
 * So many of something.
 *
 * @example counted(1, 'take') // '1 take'
 */
export const counted = (count: number, one: string, more = `${one}s`): string =>
  `${count} ${count === 1 ? one : more}`;
