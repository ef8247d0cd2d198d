/**
 * A library's calls and answers as bytes, for a page and the server that holds its library: the length of a JSON text
 * (32 bits, little-endian), the text in UTF-8, and behind it the bytes that stand in the value, one after the other.
 * In the text each is `{ "bytes-behind": [from, length] }` in its place.
 */
const bytesKey = 'bytes-behind';
const lengthBytes = 4;

/** A value of JSON, and of `Uint8Array`s anywhere in it, as the parts of a message; nothing in it is copied. */
export function packMessage(value: unknown): readonly Uint8Array<ArrayBuffer>[] {
  const parts: Uint8Array<ArrayBuffer>[] = [];
  let at = 0;
  const json = JSON.stringify(value, (_, part: unknown) => {
    if (!(part instanceof Uint8Array)) return part;
    parts.push(part as Uint8Array<ArrayBuffer>);
    at += part.length;
    return { [bytesKey]: [at - part.length, part.length] };
  });
  const text = new TextEncoder().encode(json ?? 'null');
  const head = new Uint8Array(lengthBytes);
  new DataView(head.buffer).setUint32(0, text.length, true);
  return [head, text, ...parts];
}

/**
 * The value of a message; bytes in it are views of the message. Throws `RangeError` or `SyntaxError` for what is none.
 *
 * @example unpackMessage(joined(packMessage({ name: 'a', bytes: new Uint8Array(2) })))
 */
export function unpackMessage(message: Uint8Array): unknown {
  const length = new DataView(message.buffer, message.byteOffset, message.byteLength).getUint32(0, true);
  const behind = lengthBytes + length;
  if (behind > message.length) throw new RangeError('The message is cut off.');
  const text = new TextDecoder('utf-8', { fatal: true }).decode(message.subarray(lengthBytes, behind));
  return JSON.parse(text, (_, part: unknown) => {
    const place = (part as { [bytesKey]?: unknown } | null)?.[bytesKey];
    if (place === undefined) return part;
    const [from, count] = place as readonly number[];
    const end = behind + Number(from) + Number(count);
    if (
      !(
        Number.isSafeInteger(from) &&
        Number.isSafeInteger(count) &&
        from! >= 0 &&
        count! >= 0 &&
        end <= message.length
      )
    )
      throw new RangeError('The message is cut off.');
    return message.subarray(behind + from!, end);
  });
}
