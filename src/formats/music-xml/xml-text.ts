/** Text for the inside of an element or an attribute: marks escaped, characters that XML 1.0 can't hold left out. */
export function xmlText(text: string): string {
  return [...text]
    .filter((sign) => /[\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/u.test(sign))
    .join('')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
