/** Coded recordings that are made to harm: they promise more than they hold, or lead nowhere. */
export interface HostileRecording {
  readonly name: string;
  readonly bytes: () => Uint8Array;
}

const text = (characters: string): Buffer => Buffer.from(characters, 'latin1');
const zeros = (count: number): Buffer => Buffer.alloc(count);
const size32 = (value: number): Buffer => {
  const bytes = Buffer.alloc(4);
  bytes.writeUInt32BE(value);
  return bytes;
};
const size64 = (value: bigint): Buffer => {
  const bytes = Buffer.alloc(8);
  bytes.writeBigInt64BE(value);
  return bytes;
};
const cafChunk = (id: string, body: Buffer, size = BigInt(body.length)): Buffer =>
  Buffer.concat([text(id), size64(size), body]);
/** 48,000 Hz as a 64-bit float. */
const rate = Buffer.from('40e7700000000000', 'hex');
const caf = (
  coding: string,
  [bytes, frames, channels, bits]: readonly number[],
  ...chunks: Buffer[]
): Buffer =>
  Buffer.concat([
    text('caff'),
    Buffer.of(0, 1, 0, 0),
    cafChunk(
      'desc',
      Buffer.concat([rate, text(coding), ...[0, bytes!, frames!, channels!, bits!].map(size32)]),
    ),
    ...chunks,
  ]);
const packetTable = (count: bigint, frames: bigint, sizes: Buffer): Buffer =>
  cafChunk('pakt', Buffer.concat([size64(count), size64(frames), size32(0), size32(0), sizes]));
const box = (name: string, body: Buffer, size = body.length + 8): Buffer =>
  Buffer.concat([size32(size), text(name), body]);
const aiff = (...chunks: Buffer[]): Buffer =>
  Buffer.concat([text('FORM'), size32(0), text('AIFF'), ...chunks]);
const common = (channels: number, frames: number): Buffer =>
  Buffer.concat([
    text('COMM'),
    size32(18),
    Buffer.of(channels >> 8, channels & 255),
    size32(frames),
    Buffer.from('0010400ebb80000000000000', 'hex'),
  ]);

export const hostileRecordings: readonly HostileRecording[] = [
  {
    name: 'CAF: packets past counting, none there',
    bytes: () =>
      caf('alac', [0, 4096, 1, 0], packetTable(2n ** 62n, 2n ** 62n, zeros(1)), cafChunk('data', zeros(4))),
  },
  {
    name: 'CAF: ten million empty packets',
    bytes: () =>
      caf(
        'opus',
        [0, 960, 1, 0],
        packetTable(10_000_000n, 0n, zeros(10_000_000)),
        cafChunk('data', zeros(4)),
      ),
  },
  {
    name: 'CAF: plain samples of four billion channels',
    bytes: () => caf('lpcm', [0xffff_fffe, 1, 0x7fff_ffff, 16], cafChunk('data', zeros(4096))),
  },
  {
    name: 'CAF: a chunk of 9 exabytes, as it says',
    bytes: () => caf('lpcm', [2, 1, 1, 16], cafChunk('free', zeros(64), 2n ** 63n - 1n)),
  },
  {
    name: 'CAF: a million empty chunks',
    bytes: () =>
      Buffer.concat([caf('lpcm', [2, 1, 1, 16]), Buffer.alloc(12_000_000, cafChunk('free', zeros(0)))]),
  },
  {
    name: 'AIFF: 65,535 channels',
    bytes: () => aiff(common(0xffff, 2), Buffer.concat([text('SSND'), size32(4096), zeros(4096)])),
  },
  {
    name: 'AIFF: an offset beyond the end',
    bytes: () =>
      aiff(common(1, 2), Buffer.concat([text('SSND'), size32(16), size32(0xffff_ffff), zeros(12)])),
  },
  {
    name: 'MP4: a box in a box, 100,000 deep',
    bytes: () =>
      Buffer.concat([
        box('ftyp', text('isom\0\0\0\0isom')),
        ...Array.from({ length: 100_000 }, (_, i) =>
          Buffer.concat([size32(8 * (100_000 - i)), text('moov')]),
        ),
      ]),
  },
  {
    name: 'MP4: boxes of no length',
    bytes: () => Buffer.concat([box('ftyp', text('isom\0\0\0\0isom')), box('moov', zeros(1_000_000))]),
  },
  {
    name: 'FLAC: 2^36 samples, as it says, none there',
    bytes: () =>
      Buffer.concat([
        text('fLaC'),
        Buffer.of(0x80, 0, 0, 34),
        Buffer.from('1000100000000000000' + '0bb800ff', 'hex').subarray(0, 13),
        Buffer.of(0x0f),
        Buffer.alloc(20, 0xff),
        zeros(200),
      ]),
  },
  {
    name: 'FLAC: marks of frames, a million',
    bytes: () =>
      Buffer.concat([
        text('fLaC'),
        Buffer.of(0x80, 0, 0, 34),
        Buffer.from('1000100000000000000000bb80f000000000', 'hex'),
        zeros(17),
        Buffer.alloc(2_000_000, Buffer.of(0xff, 0xf8)),
      ]),
  },
  {
    name: 'MP3: marks of frames, a million',
    bytes: () => Buffer.alloc(4_000_000, Buffer.of(0xff, 0xfb, 0x90, 0x64)),
  },
  {
    name: 'MP3: nothing but a tag of 256 MiB, as it says',
    bytes: () => Buffer.concat([text('ID3\x04\0\0'), Buffer.of(0x7f, 0x7f, 0x7f, 0x7f), zeros(64)]),
  },
  {
    name: 'AAC: marks of frames, 200,000',
    bytes: () => Buffer.alloc(1_400_000, Buffer.of(0xff, 0xf1, 0x4c, 0x80, 0x00, 0xff, 0xfc)),
  },
  {
    name: 'Ogg: a page of no packets, 100,000 times',
    bytes: () => Buffer.alloc(2_700_000, Buffer.concat([text('OggS'), zeros(23)])),
  },
  {
    name: 'WebM: an element that never ends in each other',
    bytes: () =>
      Buffer.concat([
        Buffer.from(
          '1a45dfa39f4286810142f7810142f2810442f381084282847765626d42878104428581021853806701ffffffffffffff',
          'hex',
        ),
        Buffer.alloc(1_200_000, Buffer.from('1654ae6701ffffffffffffff', 'hex')),
      ]),
  },
];
