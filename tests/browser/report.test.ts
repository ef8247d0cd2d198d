import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { chartList } from '../../src/charts/chart-list.ts';
import { clockTime } from '../../src/charts/clock-time.ts';
import { plainLook } from '../../src/charts/look.ts';
import { writeReport } from '../../src/report/write-report.ts';
import { smallTake } from '../charts/small-take.ts';
import { clientBundle } from '../report/client-bundle.ts';
import { exampleResult } from '../support/example-result.ts';
import { args, browserThere, executablePath } from './chromium.ts';
import { openedFile } from './opened-file.ts';

const there = browserThere('the report in a browser');

/** Pictures that the example take has something for. */
const pictures = chartList.filter(({ draw }) =>
  draw(exampleResult({ scores: smallTake(1).scores }), plainLook),
);

describe.skipIf(!there)('the report in a browser', () => {
  let browser: Browser;
  let folder: string;
  let file: string;

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'evenhand-report-'));
    file = join(folder, 'report.html');
    const { scores } = smallTake(1);
    writeFileSync(file, await writeReport(exampleResult({ scores }), { clientScript: await clientBundle() }));
    browser = await chromium.launch({ executablePath, args });
  }, 60_000);

  afterAll(async () => {
    await browser?.close();
    if (folder) rmSync(folder, { recursive: true });
  });

  const opened = (options: BrowserContextOptions, use: (page: Page, faults: string[]) => Promise<void>) =>
    openedFile(browser, file, options, use);

  const drawn = (page: Page) =>
    page.waitForFunction((count) => document.querySelectorAll('.drawn').length === count, pictures.length);

  it.each([1440, 360])(
    'draws every picture at %i px, without complaint, violation or sideways scrolling',
    async (width) => {
      await opened({ viewport: { width, height: 800 } }, async (page, faults) => {
        await drawn(page);
        const inked = await page.$$eval('figure canvas', (all) =>
          all.map((element) => {
            const canvas = element as HTMLCanvasElement;
            const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
            return data.filter((value, i) => i % 4 === 3 && value > 0).length;
          }),
        );
        expect(inked).toHaveLength(pictures.length);
        for (const pixels of inked) expect(pixels).toBeGreaterThan(1000);
        const { scrollWidth, clientWidth } = await page.evaluate(() => {
          const { scrollWidth, clientWidth } = document.documentElement;
          return { scrollWidth, clientWidth };
        });
        expect(scrollWidth).toBeLessThanOrEqual(clientWidth);
        expect(faults).toEqual([]);
      });
    },
  );

  it('uses the type inside the file', async () => {
    await opened({}, async (page) => {
      await drawn(page);
      const faces = await page.evaluate(() =>
        [...document.fonts].map((face) => `${face.weight} ${face.status}`),
      );
      expect(faces.sort()).toEqual(['400 loaded', '700 loaded']);
    });
  });

  it('tells of a stroke when one points at it', async () => {
    await opened({}, async (page, faults) => {
      await drawn(page);
      const canvas = page.locator('figure[data-chart="levels"] canvas');
      await canvas.scrollIntoViewIfNeeded();
      const before = await canvas.screenshot();
      const box = (await canvas.boundingBox())!;
      let changed = false;
      for (let x = 0.2; x < 0.95 && !changed; x += 0.01) {
        await page.mouse.move(box.x + box.width * x, box.y + box.height * 0.12);
        changed = !before.equals(await canvas.screenshot());
      }
      expect(changed).toBe(true);
      expect(faults).toEqual([]);
    });
  });

  it('marks a stroke in every picture and tells of it, by pointer and by keys', async () => {
    await opened({}, async (page, faults) => {
      await drawn(page);
      const bar = page.locator('#stroke-bar');
      expect(await bar.isVisible()).toBe(false);
      const other = page.locator('figure[data-chart="timing-by-slot"] canvas');
      const pixels = () => other.evaluate((canvas) => (canvas as HTMLCanvasElement).toDataURL());
      const before = await pixels();
      const canvas = page.locator('figure[data-chart="levels"] canvas');
      await canvas.focus();
      await page.keyboard.press('End');
      const last = exampleResult().strokes.time.at(-1)!;
      expect(await bar.locator('p').textContent()).toContain(`at ${clockTime(last, 1)}`);
      const marked = await pixels();
      expect(marked).not.toBe(before);
      await bar.getByRole('button', { name: 'Stroke before' }).click();
      expect(await bar.locator('p').textContent()).toContain(
        `at ${clockTime(exampleResult().strokes.time.at(-2)!, 1)}`,
      );
      await canvas.focus();
      await page.keyboard.press('Escape');
      expect(await bar.isVisible()).toBe(false);
      expect(await pixels()).toBe(before);
      expect(faults).toEqual([]);
    });
  });

  it.each([1440, 360])('shows the images at %i px when scripts are off', async (width) => {
    await opened({ javaScriptEnabled: false, viewport: { width, height: 800 } }, async (page, faults) => {
      expect(await page.locator('figure img:visible').count()).toBe(pictures.length);
      expect(await page.locator('figure canvas:visible').count()).toBe(0);
      const boxes = await Promise.all(
        (await page.locator('figure img').all()).map((image) => image.boundingBox()),
      );
      for (const box of boxes) expect(box!.width).toBeGreaterThan(250);
      for (const box of boxes) expect(box!.x + box!.width).toBeLessThanOrEqual(width);
      expect(faults).toEqual([]);
    });
  });

  it('prints images instead of the drawings, the few there is room for', async () => {
    await opened({}, async (page) => {
      await drawn(page);
      await page.emulateMedia({ media: 'print' });
      expect(await page.locator('figure img:visible').count()).toBe(
        pictures.filter(({ printed }) => printed).length,
      );
      expect(await page.locator('figure canvas:visible').count()).toBe(0);
    });
  });

  it('follows the colours of the screen', async () => {
    await opened({ colorScheme: 'dark' }, async (page) => {
      await drawn(page);
      const background = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
      expect(await background()).toBe('rgb(27, 31, 35)');
      await page.emulateMedia({ colorScheme: 'light' });
      expect(await background()).toBe('rgb(255, 253, 248)');
    });
  });
});
