/**
 * SHA-256 (FIPS 180-4) of bytes, or of a text's UTF-8, in hexadecimal; the same in Node and in a browser.
 *
 * @example await sha256Hex('abc') // 'ba7816bf 8f01cfea …' without the spaces
 */
export async function sha256Hex(contents: Uint8Array | string): Promise<string> {
  const bytes = typeof contents === 'string' ? new TextEncoder().encode(contents) : contents;
  const digest = await crypto.subtle.digest('SHA-256', bytes as Uint8Array<ArrayBuffer>);
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, '0')).join('');
}
