/** Decimals that embedded numbers keep: a tenth of a millisecond where the unit is a second. */
const decimals = 4;

/**
 * A value as JSON that can stand in a script element: `<` never occurs in it, so no text can close the element or
 * open a comment; nor do characters that turn the direction of writing. Numbers are rounded.
 *
 * @example embedJson({ a: '</script>' }) // '{"a":"\\u003c/script>"}'
 */
export function embedJson(value: unknown): string {
  const rounded = (_: string, entry: unknown) =>
    typeof entry === 'number' ? Number(entry.toFixed(decimals)) : entry;
  return JSON.stringify(value, rounded).replace(
    /[<\u2028\u2029\p{Bidi_Control}]/gu,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}
