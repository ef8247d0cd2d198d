import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { indexedPng } from '../../src/report/indexed-png.ts';

const { loadImage, createCanvas } = createRequire(import.meta.url)('canvas');

async function decoded(png: Uint8Array): Promise<{ width: number; height: number; data: Uint8ClampedArray }> {
  const image = await loadImage(Buffer.from(png));
  const context = createCanvas(image.width, image.height).getContext('2d');
  context.drawImage(image, 0, 0);
  return context.getImageData(0, 0, image.width, image.height);
}

const pixels = (width: number, height: number, colour: (x: number, y: number) => readonly number[]) => ({
  width,
  height,
  rgba: Uint8Array.from(
    Array.from({ length: width * height }, (_, i) => [
      ...colour(i % width, Math.floor(i / width)),
      255,
    ]).flat(),
  ),
});

describe('indexedPng', () => {
  it('is read back pixel for pixel by another decoder when it has few colours', async () => {
    const picture = pixels(37, 11, (x, y) => [x * 6, y * 20, (x * y) % 5]);
    const few = pixels(37, 11, (x, y) => [(x % 8) * 30, (y % 4) * 60, 7]);
    expect((await decoded(indexedPng(few))).data).toEqual(new Uint8ClampedArray(few.rgba));
    const image = await decoded(indexedPng(picture));
    expect([image.width, image.height]).toEqual([37, 11]);
  });

  it('gives rare colours a near one when there are more than 256', async () => {
    const many = pixels(64, 64, (x, y) => [x * 4, y * 4, 100]);
    const { data } = await decoded(indexedPng(many));
    // 4096 colours on a plane, the 256 kept are any: near means within the plane's own size.
    expect(new Set(Array.from({ length: 4096 }, (_, i) => (data[4 * i]! << 8) | data[4 * i + 1]!)).size).toBe(
      256,
    );
    expect(data.every((value, i) => i % 4 !== 2 || value === 100)).toBe(true);
  });
});
