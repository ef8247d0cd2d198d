/** Base64 of a gzip file back to the file's bytes. */
export async function unpacked(base64: string): Promise<ArrayBuffer> {
  const bytes = Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));
  return new Response(stream).arrayBuffer();
}
