import { soundTrack } from '../../../src/formats/coded/sound-track.ts';
import { memoryBytes } from '../../../src/formats/memory-bytes.ts';

const text = (characters: string): Buffer => Buffer.from(characters, 'latin1');
const number32 = (value: number): Buffer => {
  const bytes = Buffer.alloc(4);
  bytes.writeInt32BE(value);
  return bytes;
};
const number64 = (value: number): Buffer => {
  const bytes = Buffer.alloc(8);
  bytes.writeBigInt64BE(BigInt(value));
  return bytes;
};
const chunk = (id: string, ...contents: readonly Buffer[]): Buffer => {
  const body = Buffer.concat(contents);
  return Buffer.concat([text(id), number64(body.length), body]);
};
const descriptor = (tag: number, ...contents: readonly Buffer[]): Buffer => {
  const body = Buffer.concat(contents);
  return Buffer.concat([Buffer.of(tag, 0x80, 0x80, 0x80, body.length), body]);
};
/** A number of the packet table: seven bits a byte, all but the last with the highest set. */
const tableNumber = (value: number): number[] =>
  value < 128 ? [value] : [...tableNumber(value >> 7).map((byte) => byte | 0x80), value & 0x7f];

/**
 * The AAC packets of an M4A file in a Core Audio Format file, put together after Apple's specification, for no program
 * here writes such a file: `desc`, the decoder's description in `kuki`, sizes in `pakt`, packets in `data`.
 */
export async function cafOfAac(m4a: Uint8Array): Promise<Uint8Array> {
  const track = await soundTrack(memoryBytes(m4a));
  if (track === null || track.description === null) throw new Error('This M4A file has no AAC.');
  const packets: Buffer[] = [];
  for await (const { data } of track.packets()) packets.push(Buffer.from(data));
  const rate = Buffer.alloc(8);
  rate.writeDoubleBE(track.sampleRate);
  const config = descriptor(
    0x04,
    Buffer.of(0x40, 0x15, 0, 0, 0),
    number32(0),
    number32(0),
    descriptor(0x05, Buffer.from(track.description)),
  );
  const heard = Math.round(track.statedSeconds! * track.sampleRate);
  const priming = 1024;
  return Buffer.concat([
    text('caff'),
    Buffer.of(0, 1, 0, 0),
    chunk('desc', rate, text('aac '), ...[0, 0, 1024, track.channels, 0].map(number32)),
    chunk('kuki', descriptor(0x03, Buffer.of(0, 0, 0), config, descriptor(0x06, Buffer.of(2)))),
    chunk(
      'pakt',
      number64(packets.length),
      number64(heard),
      number32(priming),
      number32(packets.length * 1024 - heard - priming),
      Buffer.from(packets.flatMap(({ length }) => tableNumber(length))),
    ),
    chunk('data', number32(0), ...packets),
  ]);
}
