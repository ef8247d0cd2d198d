import { readdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { describe, expect, it } from 'vitest';
import { soundWriter, TooMuchSound } from '../../../src/formats/coded/decoded-source.ts';
import { scratchFile } from '../../../src/formats/scratch-file.ts';

const ramp = (from: number, frames: number, sign: number) =>
  Float32Array.from({ length: frames }, (_, i) => sign * (from + i));

async function written(room: Parameters<typeof soundWriter>[0], pieces: readonly number[]) {
  const writer = soundWriter(room);
  let from = 0;
  for (const frames of pieces) {
    writer.write({ channels: [ramp(from, frames, 1), ramp(from, frames, -1)], sampleRate: 48_000 });
    await writer.makeRoom();
    from += frames;
  }
  return writer;
}

describe('soundWriter', () => {
  it('runs the example of its comment', () => {
    const writer = soundWriter({});
    writer.write({ channels: [Float32Array.of(0, 0.5)], sampleRate: 48_000 });
    expect([...writer.end()!.read(0, 0, 3)]).toEqual([0, 0.5, 0]);
  });

  it.each([
    ['memory', {}],
    ['a file', { makeScratch: scratchFile, inMemory: 20_000 }],
  ])('gives back from %s what was written, at any place and over the edges', async (_, room) => {
    const writer = await written(room, [1, 32_767, 5000, 70_000, 3]);
    const source = writer.end()!;
    const length = 1 + 32_767 + 5000 + 70_000 + 3;
    expect(source).toMatchObject({ length, channels: 2, sampleRate: 48_000 });
    for (const from of [-2, 0, 32_766, 65_530, length - 5]) {
      const expected = Array.from({ length: 8 }, (_, i) =>
        from + i >= 0 && from + i < length ? from + i : 0,
      );
      expect([...source.read(0, from, from + 8)]).toEqual(expected);
      expect([...source.read(1, from, from + 8)].map(Math.abs)).toEqual(expected);
    }
    expect(source.read(0, 0, length).every((sample, i) => sample === i)).toBe(true);
    expect(() => source.read(2, 0, 1)).toThrow(RangeError);
    writer.close();
  });

  it('goes to the file at once with what is expected to be too much for the memory', async () => {
    let files = 0;
    const makeScratch = () => {
      files++;
      return scratchFile();
    };
    const writer = await written({ makeScratch, inMemory: 20_000, expected: 20_001 }, [1, 32_768]);
    expect(files).toBe(1);
    const source = writer.end()!;
    expect([...source.read(0, 32_766, 32_770)]).toEqual([32_766, 32_767, 32_768, 0]);
    writer.close();
    (await written({ makeScratch, inMemory: 20_000, expected: 20_000 }, [1])).close();
    (await written({ inMemory: 20_000, expected: 20_001 }, [1])).close();
    expect(files).toBe(1);
  });

  it('leaves no name in the temporary folder', async () => {
    const names = () => readdirSync(tmpdir()).filter((name) => /^evenhand-[-\w]{36}\.tmp$/.test(name));
    const before = names();
    const writer = await written({ makeScratch: scratchFile, inMemory: 10 }, [100]);
    expect(names()).toEqual(before);
    writer.close();
  });

  it('refuses what is too much for the memory without a file, or for either', async () => {
    await expect(written({ inMemory: 100 }, [60])).rejects.toThrow(TooMuchSound);
    await expect(written({ makeScratch: scratchFile, inMemory: 10, most: 100 }, [60])).rejects.toThrow(
      TooMuchSound,
    );
  });

  it('makes no recording of nothing', () => {
    expect(soundWriter({}).end()).toBeNull();
  });
});
