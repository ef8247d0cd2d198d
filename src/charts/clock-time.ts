/**
 * Seconds as minutes and seconds of the recording. `decimals` of the seconds are kept.
 *
 * @example clockTime(75.26, 1) // '1:15.3'
 */
export function clockTime(seconds: number, decimals = 0): string {
  const unit = 10 ** decimals;
  const rounded = Math.round(seconds * unit) / unit;
  const minutes = Math.floor(rounded / 60);
  const rest = (rounded - minutes * 60).toFixed(decimals);
  return `${minutes}:${rest.padStart(decimals === 0 ? 2 : decimals + 3, '0')}`;
}
