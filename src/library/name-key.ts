/**
 * A name as it is compared and sorted: compatibility forms, case and spaces made one.
 *
 * @example nameKey('  Mirelle\u00a0 K. ') // 'mirelle k.'
 */
export function nameKey(name: string): string {
  return name.normalize('NFKC').replace(/\s+/g, ' ').trim().toLowerCase();
}

/** A name as it is kept: one line, without control characters, at most 200 characters. */
export function plainName(name: string): string {
  const flat = name.replace(/[\s\p{Cc}]+/gu, ' ').trim();
  return [...flat].slice(0, 200).join('').trim();
}
