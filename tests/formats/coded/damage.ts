import type { Random } from '../../../fixtures/generator/random.ts';

/** What can happen to a file on its way: one to three of cut off, overwritten, bytes lost, put in, flipped, moved. */
export function damaged(file: Uint8Array, random: Random): Uint8Array {
  let bytes: Uint8Array = Uint8Array.from(file);
  const times = 1 + Math.floor(random.uniform() * 3);
  for (let i = 0; i < times; i++) bytes = random.pick(damages)(bytes, random);
  return bytes;
}

/** Half of all damage falls into the first 400 bytes, where most is decided. */
const place = (bytes: Uint8Array, random: Random): number =>
  Math.floor(random.uniform() * (random.chance(0.5) ? Math.min(400, bytes.length) : bytes.length));
const byte = (random: Random): number => Math.floor(random.uniform() * 256);

const damages: readonly ((bytes: Uint8Array, random: Random) => Uint8Array)[] = [
  (bytes, random) => bytes.slice(0, place(bytes, random)),
  (bytes, random) => {
    const at = place(bytes, random);
    return bytes.fill(byte(random), at, at + Math.floor(random.uniform() * 64));
  },
  (bytes, random) => {
    const at = place(bytes, random);
    const kept = [bytes.subarray(0, at), bytes.subarray(at + 1 + Math.floor(random.uniform() * 40))];
    return Uint8Array.from(Buffer.concat(kept));
  },
  (bytes, random) => {
    const at = place(bytes, random);
    const more = Uint8Array.from({ length: 1 + Math.floor(random.uniform() * 40) }, () => byte(random));
    return Uint8Array.from(Buffer.concat([bytes.subarray(0, at), more, bytes.subarray(at)]));
  },
  (bytes, random) => {
    for (let flips = 1 + Math.floor(random.uniform() * 8); flips > 0; flips--)
      bytes[place(bytes, random)]! ^= 1 << Math.floor(random.uniform() * 8);
    return bytes;
  },
  // Lengths and counts of 4 bytes that become huge or nothing.
  (bytes, random) => {
    const at = place(bytes, random);
    return bytes.fill(random.pick([0, 0x7f, 0xff]), at, at + 4);
  },
];
