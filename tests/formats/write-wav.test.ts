import { describe, expect, it } from 'vitest';
import { memoryBytes } from '../../src/formats/memory-bytes.ts';
import { riffLayout } from '../../src/formats/riff-layout.ts';
import { wavSource } from '../../src/formats/wav-source.ts';
import { type WavContents, writeWav } from '../../src/formats/write-wav.ts';
import { ascii, chunk, format, u16, u32, wave } from './wave-bytes.ts';

const mono = (samples: number[], depth: WavContents['depth']) =>
  writeWav({ channels: [Float32Array.from(samples)], sampleRate: 48000, depth });

describe('writeWav', () => {
  it('runs the example of its comment', () => {
    expect(mono([0, 0.5, -1], 'int16')).toHaveLength(50);
  });

  // Layouts by the definitions: RIFF and WAVE (IBM and Microsoft 1991); for floats an extension size and `fact`
  // (Microsoft 1994).
  it('writes 16 bits', () => {
    const expected = wave([chunk('fmt ', format()), chunk('data', [0, 0, 0, 0x40, 0, 0x80])]);
    expect(mono([0, 0.5, -1], 'int16')).toEqual(expected);
  });

  it('writes 24 bits and pads an odd length', () => {
    const expected = wave([chunk('fmt ', format({ bits: 24 })), chunk('data', [0xff, 0xff, 0x7f])]);
    expect(mono([1], 'int24')).toEqual(expected);
    expect([...mono([-1, -0.5, 2 ** -23, -(2 ** -23)], 'int24').subarray(44)]).toEqual([
      0, 0, 0x80, 0, 0, 0xc0, 1, 0, 0, 255, 255, 255,
    ]);
  });

  it('writes floats', () => {
    const chunks = [
      chunk('fmt ', [...format({ tag: 3, bits: 32 }), ...u16(0)]),
      chunk('fact', u32(1)),
      chunk('data', [0, 0, 0x80, 0xbf]),
    ];
    expect(mono([-1], 'float32')).toEqual(wave(chunks));
  });

  it('interleaves channels', () => {
    const file = writeWav({
      channels: [Float32Array.of(0.5, 0.25), Float32Array.of(-0.5, 0)],
      sampleRate: 44100,
      depth: 'int16',
    });
    expect([...file.subarray(36)]).toEqual([...ascii('data'), ...u32(8), 0, 0x40, 0, 0xc0, 0, 0x20, 0, 0]);
  });

  it('rounds to the nearest step and holds what is too loud', () => {
    const steps = (samples: number[]) => [...new Int16Array(mono(samples, 'int16').buffer, 44)];
    expect(steps([0.4, 0.6, -0.4, -0.6].map((step) => step / 32768))).toEqual([0, 1, 0, -1]);
    expect(steps([1, 7, -7])).toEqual([32767, 32767, -32768]);
  });

  it.each(['int16', 'int24', 'float32'] as const)('gives whole steps of %s back exactly', (depth) => {
    const samples = Array.from({ length: 501 }, (_, index) => ((index * 131) % 65536) / 32768 - 1);
    const bytes = memoryBytes(mono(samples, depth));
    const outcome = riffLayout(bytes);
    if (!outcome.ok) throw new Error(outcome.fault.code);
    expect([...wavSource(bytes, outcome.layout).read(0, 0, 501)]).toEqual(samples);
  });

  it('refuses what no wave file can hold', () => {
    const write =
      (...channels: Float32Array[]) =>
      () =>
        writeWav({ channels, sampleRate: 48000, depth: 'int16' });
    expect(write()).toThrow(RangeError);
    expect(write(new Float32Array(1), new Float32Array(2))).toThrow('differ in length');
    expect(write(Float32Array.of(0, Number.NaN))).toThrow('Sample 1 of channel 0 is NaN');
  });
});
