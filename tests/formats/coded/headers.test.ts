import { expect, it } from 'vitest';
import { adtsConfig, adtsHeaderBytes } from '../../../src/formats/coded/adts-header.ts';
import { flacFrameHeader } from '../../../src/formats/coded/flac-frame-header.ts';
import { opusHead } from '../../../src/formats/coded/opus-head.ts';
import { quietly } from '../../../src/formats/coded/quietly.ts';
import { ascii } from '../wave-bytes.ts';

it('flacFrameHeader reads the frame of RFC 9639, D.1.3, and no header whose check sum is wrong', () => {
  const frame = Uint8Array.of(0xff, 0xf8, 0x69, 0x18, 0x00, 0x00, 0xbf);
  expect(flacFrameHeader(frame, 0)).toEqual({
    number: 0,
    countsSamples: false,
    blockSize: 1,
    headerBytes: 7,
  });
  for (let bit = 0; bit < 8 * frame.length; bit++) {
    const wrong = frame.slice();
    wrong[bit >> 3]! ^= 1 << (bit & 7);
    expect(flacFrameHeader(wrong, 0), `bit ${bit}`).toBeNull();
  }
});

// RFC 7845, 5.1: version 1, channels, pre-skip, original rate, gain in 1/256 dB, mapping family.
const head = [...ascii('OpusHead'), 1, 2, 0x38, 0x01, 0x80, 0xbb, 0, 0];

it('opusHead reads two channels, pre-skip and gain', () => {
  const found = opusHead(Uint8Array.from([...head, 0, 0, 0]));
  expect(found).toEqual({ channels: 2, preSkip: 312, gain: 1, streams: 1, coupled: 1, mapping: [0, 1] });
  // −6.0206 dB is a half.
  expect(opusHead(Uint8Array.from([...head, 0xfb, 0xf9, 0])).gain).toBeCloseTo(0.5, 3);
});

it('opusHead reads a table of channels, and throws for what is cut short', () => {
  const found = opusHead(Uint8Array.from([...head, 0, 0, 1, 2, 0, 1, 0]));
  expect(found).toMatchObject({ streams: 2, coupled: 0, mapping: [1, 0] });
  expect(() => opusHead(Uint8Array.from([...head, 0, 0, 1, 2, 0, 1]))).toThrow();
  expect(() => opusHead(Uint8Array.from(head))).toThrow();
});

it('adtsConfig gives what MP4 files state of AAC', () => {
  const frame = Uint8Array.of(0xff, 0xf1, 0x50, 0x80, 0, 0x1f, 0xfc);
  expect([...adtsConfig(frame)]).toEqual([0x12, 0x10]);
  expect(adtsHeaderBytes(frame)).toBe(7);
});

it('quietly keeps what a library complains of to itself, and ends what never ends', () => {
  const { error } = console;
  expect(quietly(() => console.error('lost sync'))).toBeUndefined();
  expect(() =>
    quietly(() => {
      for (;;) console.error('lost sync');
    }),
  ).toThrow('no way out');
  expect(console.error).toBe(error);
});
