import { describe, expect, it } from 'vitest';
import type { Bytes } from '../../src/formats/bytes.ts';
import { memoryBytes } from '../../src/formats/memory-bytes.ts';
import { type RiffLayout, riffLayout } from '../../src/formats/riff-layout.ts';
import { writeWav } from '../../src/formats/write-wav.ts';
import { ascii, chunk, format, u32, u64, wave } from './wave-bytes.ts';

const layoutOf = (file: Uint8Array): RiffLayout => {
  const outcome = riffLayout(memoryBytes(file));
  if (!outcome.ok) throw new Error(outcome.fault.code);
  return outcome.layout;
};
const faultOf = (file: Uint8Array) => {
  const outcome = riffLayout(memoryBytes(file));
  if (outcome.ok) throw new Error('no fault');
  return outcome.fault;
};
const fmt = chunk('fmt ', format());
const fourBytes = [1, 0, 2, 0];

describe('riffLayout', () => {
  it('runs the example of its comment', () => {
    const file = writeWav({ channels: [Float32Array.of(0, 0.5)], sampleRate: 48000, depth: 'int16' });
    expect(layoutOf(file)).toMatchObject({ dataFrom: 44, frames: 2, channels: 1, sampleRate: 48000 });
  });

  it('reads the opening of the worked example of the format at soundfile.sapp.org (quoted from memory)', () => {
    const hex =
      '524946462408000057415645666d74201000000001000200225600008858010004001000' +
      '646174610008000000000000 24171ef33c133c1416f918f934e723a63cf224f211ce1a0d';
    const file = new Uint8Array(44 + 2048);
    file.set(Uint8Array.from(hex.replaceAll(' ', '').match(/../g)!, (byte) => Number.parseInt(byte, 16)));
    expect(layoutOf(file)).toMatchObject({
      channels: 2,
      sampleRate: 22050,
      sampleBytes: 2,
      frames: 512,
      dataFrom: 44,
      notes: [],
    });
  });

  it.each(['LIST', 'bext', 'JUNK', 'id3 ', 'wxyz'])(
    'skips a %s chunk of odd length with its pad byte',
    (id) => {
      const layout = layoutOf(wave([chunk(id, [7, 7, 7]), fmt, chunk(id, [1]), chunk('data', fourBytes)]));
      expect(layout).toMatchObject({ frames: 2, dataFrom: 12 + 12 + 24 + 10 + 8 });
    },
  );

  it.each(['LIST', 'wxyz'])('goes on where the pad byte of a %s chunk was forgotten', (id) => {
    const unpadded = chunk(id, [7, 7, 7]).slice(0, -1);
    expect(layoutOf(wave([unpadded, fmt, unpadded, chunk('data', fourBytes)]))).toMatchObject({ frames: 2 });
  });

  it('finds the format behind the data, with and without a pad byte between them', () => {
    const data = chunk('data', [1, 0, 2]);
    const eightBits = chunk('fmt ', format({ bits: 8 }));
    expect(layoutOf(wave([data, eightBits]))).toMatchObject({ frames: 3, dataFrom: 20 });
    expect(layoutOf(wave([data.slice(0, -1), eightBits]))).toMatchObject({ frames: 3, dataFrom: 20 });
  });

  it('ignores junk and further chunks behind the data, and the length in the header', () => {
    const file = wave([fmt, chunk('data', fourBytes), ascii('\x01garbage'), chunk('data', [9, 9])]);
    file.fill(0, 4, 8);
    expect(layoutOf(file)).toMatchObject({ frames: 2, notes: [] });
  });

  it.each([0, 0xffffffff, 0x7ffff000])('reads to the end where a pipe left the length at %i', (size) => {
    const layout = layoutOf(wave([fmt, chunk('data', fourBytes, size)]));
    expect(layout).toMatchObject({ frames: 2, notes: [{ code: 'length-not-written' }] });
  });

  it('takes a length of 0 at its word when another chunk follows', () => {
    expect(faultOf(wave([fmt, chunk('data', []), chunk('LIST', [1, 2])])).code).toBe('no-samples');
  });

  it('says how much of the end is missing', () => {
    const layout = layoutOf(wave([fmt, chunk('data', fourBytes, 4 + 96000)]));
    expect(layout).toMatchObject({
      frames: 2,
      notes: [{ code: 'end-missing', facts: { missingSeconds: 1 } }],
    });
  });

  it('leaves out a last frame that is not whole', () => {
    expect(layoutOf(wave([fmt, chunk('data', [1, 0, 2])]))).toMatchObject({ frames: 1 });
  });

  describe('64-bit sizes (ITU-R BS.2088, EBU Tech 3306)', () => {
    const ds64 = (data: number, table: number[] = [], entries = 0) =>
      chunk('ds64', [...u64(0), ...u64(data), ...u64(0), ...u32(entries), ...table]);

    it.each(['RF64', 'BW64'])('takes the length of the data from the ds64 chunk of %s', (container) => {
      const layout = layoutOf(
        wave([ds64(4), fmt, chunk('data', [...fourBytes, 5, 5, 5, 5], 0xffffffff)], container),
      );
      expect(layout).toMatchObject({ frames: 2, notes: [] });
    });

    it('takes the lengths of other chunks from its table', () => {
      const table = [...ascii('axml'), ...u64(6)];
      const file = wave(
        [
          ds64(4, table, 1),
          chunk('axml', [1, 2, 3, 4, 5, 6], 0xffffffff),
          fmt,
          chunk('data', fourBytes, 0xffffffff),
        ],
        'BW64',
      );
      expect(layoutOf(file)).toMatchObject({ frames: 2 });
    });

    it('finds the format behind 5 GiB of samples', () => {
      const gap = 5 * 2 ** 30;
      const head = wave([ds64(gap), chunk('data', [], 0xffffffff)], 'BW64');
      const sparse: Bytes = {
        length: head.length + gap + fmt.length,
        read: (from, to) =>
          Uint8Array.from({ length: to - from }, (_, index) => {
            const at = from + index;
            return (at < head.length ? head[at] : fmt[at - head.length - gap]) ?? 0;
          }),
      };
      const layout = { frames: gap / 2, dataFrom: head.length, notes: [] };
      expect(riffLayout(sparse)).toMatchObject({ ok: true, layout });
    });

    it('knows how much is missing beyond 4 GiB', () => {
      const layout = layoutOf(wave([ds64(2 ** 33 + 4), fmt, chunk('data', fourBytes, 0xffffffff)], 'RF64'));
      expect(layout.frames).toBe(2);
      expect(layout.notes).toEqual([{ code: 'end-missing', facts: { missingSeconds: 2 ** 33 / 96000 } }]);
    });

    it.each([0, 2 ** 64 - 2048])(
      'reads to the end where the 64-bit length is %i, never written',
      (length) => {
        const layout = layoutOf(wave([ds64(length), fmt, chunk('data', fourBytes, 0xffffffff)], 'RF64'));
        expect(layout).toMatchObject({ frames: 2, notes: [{ code: 'length-not-written' }] });
      },
    );

    it('does without a ds64 chunk, and with a table that claims to be longer than it is', () => {
      expect(layoutOf(wave([fmt, chunk('data', fourBytes, 0xffffffff)], 'RF64'))).toMatchObject({
        frames: 2,
      });
      const file = wave([ds64(4, [], 0xffffffff), fmt, chunk('data', fourBytes, 0xffffffff)], 'RF64');
      expect(layoutOf(file)).toMatchObject({ frames: 2 });
    });
  });

  it.each([
    ['not-a-recording', Uint8Array.from(ascii('fLaC'))],
    ['not-a-recording', new Uint8Array(0)],
    ['riff-without-wave', Uint8Array.from([...ascii('RIFF'), ...u32(4), ...ascii('AVI ')])],
    ['riff-without-wave', Uint8Array.from(ascii('RIFF'))],
    ['big-endian-wave', wave([], 'RIFX')],
    ['no-format', wave([])],
    ['no-format', wave([chunk('data', fourBytes)])],
    ['format-cut-short', wave([chunk('fmt ', format().slice(0, 14)), chunk('data', fourBytes)])],
    ['no-channels', wave([chunk('fmt ', format({ channels: 0 })), chunk('data', fourBytes)])],
    ['no-data', wave([fmt])],
    ['no-data', wave([fmt, chunk('LIST', ascii('wavl'))])],
    ['no-samples', wave([fmt, chunk('data', [])])],
    ['no-samples', wave([fmt, chunk('data', [1])])],
  ])('names the fault %s', (code, file) => {
    expect(faultOf(file).code).toBe(code);
  });
});
