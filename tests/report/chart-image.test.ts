import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it, vi } from 'vitest';
import { levels } from '../../src/charts/levels.ts';
import { plainLook } from '../../src/charts/look.ts';
import { imageFontFamily, loadChartImage } from '../../src/report/chart-image.ts';
import { smallTake } from '../charts/small-take.ts';
import { woffAdvance } from './woff-advance.ts';

const require = createRequire(import.meta.url);
const { createCanvas, loadImage } = require('canvas');
const fonts = '@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-latin';
const size = { width: 300, height: 200, density: 2, paper: '#fffdf8' };

describe('loadChartImage', () => {
  it('draws a PNG of the asked size, paper in the corner, marks in their colour', async () => {
    const draw = await loadChartImage();
    const png = draw(levels(smallTake(4), { ...plainLook, fontFamily: imageFontFamily })! as never, size);
    const image = await loadImage(Buffer.from(png));
    expect([image.width, image.height]).toEqual([600, 400]);
    const context = createCanvas(600, 400).getContext('2d');
    context.drawImage(image, 0, 0);
    const data: Uint8ClampedArray = context.getImageData(0, 0, 600, 400).data;
    expect([...data.slice(0, 3)]).toEqual([0xff, 0xfd, 0xf8]);
    const has = (r: number, g: number, b: number) =>
      Array.from({ length: 240_000 }, (_, i) => 4 * i).some(
        (at) => data[at] === r && data[at + 1] === g && data[at + 2] === b,
      );
    expect(has(0x0b, 0x4f, 0x5c)).toBe(true);
    expect(has(0xb8, 0x62, 0x2b)).toBe(true);
  });

  it("writes in the report's type: its letters are as wide as the font file says", async () => {
    await loadChartImage();
    const context = createCanvas(10, 10).getContext('2d');
    for (const [weight, css] of [
      [400, 'normal'],
      [700, 'bold'],
    ] as const) {
      const file = readFileSync(require.resolve(`${fonts}-${weight}-normal.woff`));
      context.font = `${css} 1000px "${imageFontFamily}"`;
      for (const letter of ['l', 'W', 'g', '7', '\u2212']) {
        const { advance, unitsPerEm } = woffAdvance(file, letter);
        expect(context.measureText(letter).width).toBeCloseTo((1000 * advance) / unitsPerEm, 0);
      }
    }
  });

  it('says what is missing and what to do when the library does not load', async () => {
    vi.resetModules();
    vi.doMock('chartjs-node-canvas', () => {
      throw new Error('no such module\nand much more');
    });
    const fresh = await import('../../src/report/chart-image.ts');
    const fault = await fresh.loadChartImage().catch((error: unknown) => error);
    expect(fault).toBeInstanceOf(fresh.PicturesUnavailable);
    expect(fault).toMatchObject({ code: 'pictures-unavailable' });
    expect(String(fault)).toContain('npm install');
    expect(String(fault)).not.toContain('and much more');
    vi.doUnmock('chartjs-node-canvas');
  });
});
