/** Characters of a text from outside that a report shows at most. */
const longestText = 200;

const entities: Record<string, string> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/**
 * Makes any text safe between tags and in quoted attributes: the five characters that HTML reads become entities;
 * control characters, those that turn the direction of writing (Unicode TR 9, UTR 36 on spoofing) and halves of
 * surrogate pairs are left out.
 *
 * @example escapeHtml('<b>&"') // '&lt;b&gt;&amp;&quot;'
 */
export function escapeHtml(text: string): string {
  return text
    .replace(/(?![\t\n])[\p{Cc}\p{Bidi_Control}]/gu, '')
    .replace(/\p{Surrogate}/gu, '')
    .replace(/[&<>"']/g, (character) => entities[character]!);
}

/**
 * A text from outside for the report: safe, at most `limit` characters long (whole ones: an emoji is never cut),
 * in an element that keeps its direction of writing to itself.
 *
 * @example outsideText('Ana') // '<bdi>Ana</bdi>'
 */
export function outsideText(text: string, limit: number = longestText): string {
  const segments = new Intl.Segmenter('en', { granularity: 'grapheme' }).segment(text.slice(0, 16 * limit));
  const characters = Array.from(segments, (part) => part.segment);
  const whole = characters.length <= limit && text.length <= 16 * limit;
  const shown = whole ? characters.join('') : `${characters.slice(0, limit - 1).join('')}…`;
  return `<bdi>${escapeHtml(shown)}</bdi>`;
}
