import { describe, expect, it } from 'vitest';
import { waveFormat } from '../../src/formats/wave-format.ts';
import { extensible, type FormatFields, format } from './wave-bytes.ts';

const read = (bytes: number[]) => waveFormat(Uint8Array.from(bytes));

describe('waveFormat', () => {
  it('runs the example of its comment', () => {
    expect(read([1, 0, 1, 0, 0x44, 0xac, 0, 0, 0x88, 0x58, 1, 0, 2, 0, 16, 0])).toEqual({
      ok: true,
      format: {
        coding: 'integer',
        channels: 1,
        sampleRate: 44100,
        sampleBytes: 2,
        validBits: 16,
        frameBytes: 2,
      },
    });
  });

  it.each([8, 16, 24, 32])('knows integers of %i bits', (bits) => {
    const expected = { coding: 'integer', sampleBytes: bits / 8, validBits: bits, frameBytes: bits / 4 };
    expect(read(format({ bits, channels: 2 }))).toMatchObject({ ok: true, format: expected });
    expect(read(extensible(1, bits, { bits, channels: 2 }))).toMatchObject({ ok: true, format: expected });
  });

  it.each([32, 64])('knows floats of %i bits', (bits) => {
    const expected = { coding: 'float', sampleBytes: bits / 8, frameBytes: bits / 8 };
    expect(read(format({ tag: 3, bits }))).toMatchObject({ ok: true, format: expected });
    expect(read(extensible(3, bits, { bits }))).toMatchObject({ ok: true, format: expected });
  });

  it('tells valid bits from the bytes that hold them', () => {
    expect(read(extensible(1, 20, { bits: 24 }))).toMatchObject({
      format: { sampleBytes: 3, validBits: 20 },
    });
    expect(read(extensible(1, 24, { bits: 32 }))).toMatchObject({
      format: { sampleBytes: 4, validBits: 24 },
    });
    expect(read(extensible(1, 0, { bits: 24 }))).toMatchObject({ format: { validBits: 24 } });
    expect(read(format({ bits: 20 }))).toMatchObject({ format: { sampleBytes: 3, validBits: 20 } });
    expect(read(format({ bits: 24, channels: 2, frameBytes: 8 }))).toMatchObject({
      format: { sampleBytes: 4 },
    });
    expect(read(format({ bits: 16, frameBytes: 0 }))).toMatchObject({
      format: { sampleBytes: 2, frameBytes: 2 },
    });
  });

  // Format tags as registered in RFC 2361, appendix A.
  it.each([
    [0x0002, 'Microsoft ADPCM'],
    [0x0006, 'A-law'],
    [0x0007, 'µ-law'],
    [0x0011, 'IMA ADPCM'],
    [0x0031, 'GSM 6.10'],
    [0x0055, 'MP3'],
    [0x1234, '0x1234'],
  ])('names the unreadable coding %i', (tag, coding) => {
    const fault = { code: 'coding-unreadable', facts: { coding } };
    expect(read(format({ tag, bits: 4 }))).toEqual({ ok: false, fault });
    expect(read(extensible(tag, 8, { bits: 8 }))).toEqual({ ok: false, fault });
  });

  it('names a sub-format that stands for no format tag', () => {
    const bytes = extensible(1, 16);
    bytes[39] = 0;
    expect(read(bytes)).toMatchObject({
      fault: { code: 'coding-unreadable', facts: { coding: '0100000000001000800000aa00389b00' } },
    });
  });

  it.each<[string, FormatFields]>([
    ['no-channels', { channels: 0 }],
    ['rate-out-of-range', { sampleRate: 7999 }],
    ['rate-out-of-range', { sampleRate: 192001 }],
    ['rate-out-of-range', { sampleRate: 0 }],
    ['depth-unreadable', { bits: 0 }],
    ['depth-unreadable', { bits: 40 }],
    ['depth-unreadable', { bits: 64 }],
    ['depth-unreadable', { tag: 3, bits: 16 }],
    ['frame-size-contradiction', { bits: 16, channels: 2, frameBytes: 2 }],
    ['frame-size-contradiction', { bits: 16, channels: 2, frameBytes: 5 }],
    ['frame-size-contradiction', { bits: 32, channels: 65535, frameBytes: 0 }],
    ['too-many-channels', { channels: 33 }],
  ])('says %s of %j', (code, fields) => {
    expect(read(format(fields))).toMatchObject({ ok: false, fault: { code } });
  });

  it.each([8000, 192000])('reads %i Hz', (sampleRate) => {
    expect(read(format({ sampleRate }))).toMatchObject({ ok: true, format: { sampleRate } });
  });

  it('says where the description breaks off', () => {
    expect(read(format().slice(0, 15))).toEqual({
      ok: false,
      fault: { code: 'format-cut-short', facts: { bytes: 15 } },
    });
    expect(read(extensible(1, 16).slice(0, 39))).toMatchObject({ fault: { code: 'format-cut-short' } });
  });
});
