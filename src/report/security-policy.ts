/** Base64 of the SHA-256 of a text's UTF-8 bytes. */
export type Sha256 = (text: string) => string;

/**
 * The content security policy of a report: nothing is loaded from anywhere; pictures, type and sound come from
 * inside the file; only the one style and the one script whose digests are named take effect (CSP level 3).
 */
export function securityPolicy(style: string, script: string | null, sha256: Sha256): string {
  return [
    "default-src 'none'",
    'img-src data:',
    'font-src data:',
    'media-src data:',
    `style-src 'sha256-${sha256(style)}'`,
    `script-src ${script === null ? "'none'" : `'sha256-${sha256(script)}'`}`,
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
}
