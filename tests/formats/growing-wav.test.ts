import { describe, expect, it } from 'vitest';
import { growingWav } from '../../src/formats/growing-wav.ts';
import { memoryBytes } from '../../src/formats/memory-bytes.ts';
import { riffLayout } from '../../src/formats/riff-layout.ts';
import { wavSource } from '../../src/formats/wav-source.ts';
import { writeWav } from '../../src/formats/write-wav.ts';
import { whiteNoise } from '../support/signals.ts';

describe('growingWav', () => {
  const samples = Float32Array.from([...whiteNoise(1999, 0.5, 3), 1, -1, 1.5, -1.5, 0.1]);

  it('ends as the file that all samples make at once, and gives what reading it gives', () => {
    const wav = growingWav(44_100);
    const read: number[] = [];
    for (const [from, to] of [
      [0, 7],
      [7, 7],
      [7, 1500],
      [1500, samples.length],
    ])
      read.push(...wav.add(samples.slice(from, to)));
    const bytes = wav.bytes();
    expect(bytes).toEqual(writeWav({ channels: [samples], sampleRate: 44_100, depth: 'int24' }));
    const opened = riffLayout(memoryBytes(bytes));
    if (!opened.ok) throw new Error(opened.fault.code);
    expect(read).toEqual([...wavSource(memoryBytes(bytes), opened.layout).read(0, 0, samples.length)]);
    expect(growingWav(48_000).add(Float32Array.of(0.1))[0]).toBe(0.10000002384185791);
  });

  it('is filled up to an even length, and takes nothing that is no number', () => {
    const wav = growingWav(48_000);
    wav.add(Float32Array.of(0.5));
    expect(wav.bytes()).toHaveLength(44 + 4);
    expect(() => wav.add(Float32Array.of(0, Number.NaN))).toThrow('Sample 2 is NaN.');
  });
});
