/** Characters that one call may be given without running out of room. */
const piece = 0x8000;

/**
 * Base64 (RFC 4648) of bytes.
 *
 * @example base64(Uint8Array.of(102, 111, 111)) // 'Zm9v'
 */
export function base64(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let at = 0; at < bytes.length; at += piece) {
    parts.push(String.fromCharCode(...bytes.subarray(at, at + piece)));
  }
  return btoa(parts.join(''));
}
