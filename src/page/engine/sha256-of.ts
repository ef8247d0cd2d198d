/**
 * SHA-256 (FIPS 180-4) of bytes in hexadecimal, worked out by the browser beside what else is done.
 *
 * @example await sha256Of(new Uint8Array(0)) // 'e3b0c442…'
 */
export async function sha256Of(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
