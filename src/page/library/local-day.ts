/**
 * The calendar day of a moment where the player is.
 *
 * @example localDay(Date.now()) // '2026-03-09'
 */
export function localDay(moment: number): string {
  const date = new Date(moment);
  const two = (number: number) => String(number).padStart(2, '0');
  return `${String(date.getFullYear()).padStart(4, '0')}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}
