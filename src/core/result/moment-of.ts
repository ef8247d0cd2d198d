/**
 * A moment as it is written by hand, in seconds; null for none, NaN for what is no moment.
 *
 * @example momentOf('1:08.2') // 68.2
 */
export function momentOf(text: string): number | null {
  if (text.trim() === '') return null;
  const found = /^(?:(\d{1,3}):)?(\d{1,3}(?:[.,]\d+)?)$/.exec(text.trim());
  if (found === null) return Number.NaN;
  return Number(found[1] ?? 0) * 60 + Number(found[2]!.replace(',', '.'));
}
