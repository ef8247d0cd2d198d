/**
 * Parts of a sentence in a row, the last joined by `and`.
 *
 * @example listWords(['a', 'b', 'c']) // 'a, b and c'
 */
export function listWords(parts: readonly string[]): string {
  if (parts.length < 2) return parts.join('');
  return `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
}
