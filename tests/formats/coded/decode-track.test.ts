import { expect, it } from 'vitest';
import { decodeTrack } from '../../../src/formats/coded/decode-track.ts';
import type { PacketDecoder } from '../../../src/formats/coded/packet-decoder.ts';
import type { Packet } from '../../../src/formats/coded/sound-track.ts';

const packet = (timestamp: number, duration: number, good = true): Packet => ({
  data: Uint8Array.of(good ? 1 : 0),
  timestamp,
  duration,
});
async function* each(packets: readonly Packet[]): AsyncGenerator<Packet> {
  yield* packets;
}
/** Tenths of a second at 1 kHz; what begins with 0 can't be decoded. */
const decoder: PacketDecoder = {
  decode: ([good]) => (good === 0 ? null : { channels: [new Float32Array(100).fill(0.5)], sampleRate: 1000 }),
  close: () => undefined,
};
async function framesOf(packets: readonly Packet[]): Promise<number> {
  let frames = 0;
  const write = ({ channels }: { channels: readonly Float32Array[] }) => (frames += channels[0]!.length);
  await decodeTrack(each(packets), decoder, { write, makeRoom: async () => undefined });
  return frames;
}

it('puts silence for a packet that is lost, and for missing ones', async () => {
  expect(await framesOf([packet(0, 0.1), packet(0.1, 0.1, false), packet(0.2, 0.1)])).toBe(300);
  expect(await framesOf([packet(0, 0.1), packet(0.4, 0.1)])).toBe(500);
});

it('fills nothing with silence where times are damaged', async () => {
  expect(await framesOf([packet(0, 0.1), packet(0.1, 1e6, false), packet(0.2, 0.1)])).toBe(200);
  expect(await framesOf([packet(0, 0.1), packet(1e5, 0.1), packet(1e5 + 0.1, 0.1)])).toBe(300);
  const jumps = Array.from({ length: 50 }, (_, i) => packet(400 * i, 0.1));
  expect(await framesOf(jumps)).toBeLessThan(600_000 + 50 * 100);
});
