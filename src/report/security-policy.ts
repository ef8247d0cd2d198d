/** Base64 of the SHA-256 of a text's UTF-8 bytes. */
export type Sha256 = (text: string) => string;

/**
 * The content security policy of a report: nothing is loaded from anywhere; pictures, type and sound come from
 * inside the file, or sound from a file beside it where that is said; only the one style and the scripts whose digests
 * are named take effect (CSP level 3).
 */
export function securityPolicy(
  style: string,
  scripts: readonly string[],
  sha256: Sha256,
  soundBeside = false,
): string {
  return [
    "default-src 'none'",
    'img-src data:',
    'font-src data:',
    soundBeside ? "media-src 'self' file:" : 'media-src data:',
    `style-src 'sha256-${sha256(style)}'`,
    `script-src ${scripts.length === 0 ? "'none'" : scripts.map((script) => `'sha256-${sha256(script)}'`).join(' ')}`,
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
}
