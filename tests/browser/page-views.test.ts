import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { readPageFiles } from '../../src/server/page-files.ts';
import { browserThere } from './chromium.ts';
import { withPage } from './opened-page.ts';

/** Every view by its address. */
const views = [
  '',
  '#/result',
  '#/help',
  '#/help/for-students',
  '#/help/for-teachers',
  '#/help/measures/wander',
  '#/help/scores',
  '#/help/words',
  '#/takes',
  '#/progress',
  '#/lesson',
  '#/assignments',
  '#/people',
  '#/practice-time',
  '#/compare',
  '#/microphone',
  '#/nowhere',
];

/** What axe-core finds against WCAG 2.2 A and AA and its best practices. */
async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const found = await page.evaluate(() =>
    (globalThis as unknown as { axe: typeof axe }).axe.run(document, { iframes: false }),
  );
  return found.violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
}

describe.skipIf(!browserThere("the page's views"))("the page's views", () => {
  for (const colorScheme of ['light', 'dark'] as const) {
    for (const width of [320, 1440]) {
      it(`are accessible and fit the screen, ${width} px, ${colorScheme}`, async () => {
        await withPage(
          { viewport: { width, height: 740 }, colorScheme },
          async ({ page, address, faults }) => {
            for (const view of views) {
              await page.goto(address + view);
              await page.locator('h1').first().waitFor({ state: 'attached' });
              expect(await violations(page), view).toEqual([]);
              const room = await page.evaluate(() => {
                const { scrollWidth, clientWidth } = document.documentElement;
                return scrollWidth - clientWidth;
              });
              expect(room, view).toBeLessThanOrEqual(0);
            }
            expect(faults).toEqual([]);
          },
        );
      });
    }
  }

  it('begin with less than 200 kB, compressed', async () => {
    await withPage({ serviceWorkers: 'block' }, async ({ page }) => {
      await page.waitForLoadState('networkidle');
      const asked = await page.evaluate(() => [
        '/',
        ...performance.getEntriesByType('resource').map(({ name }) => new URL(name).pathname),
      ]);
      const files = readPageFiles(join(import.meta.dirname, '../../dist/page'));
      const sizes = asked.map(
        (path) => [path, gzipSync(files.get(path)!.contents, { level: 9 }).length] as const,
      );
      const sum = sizes.reduce((all, [, bytes]) => all + bytes, 0);
      console.info(`First screen: ${Math.round(sum / 1000)} kB compressed, ${sizes.length} files`);
      expect(sizes.length).toBeGreaterThan(3);
      expect(sum, JSON.stringify(sizes)).toBeLessThan(200_000);
    });
  });

  it('have buttons that a finger meets: 48 px high and wide', async () => {
    await withPage({ viewport: { width: 360, height: 740 } }, async ({ page, address }) => {
      for (const view of views) {
        await page.goto(address + view);
        await page.locator('h1').first().waitFor({ state: 'attached' });
        for (const button of await page
          .locator(
            'button:visible, .button:visible, select:visible, .page-head nav a:visible, .library-ways a:visible',
          )
          .all()) {
          const box = (await button.boundingBox())!;
          const name = `${view} ${await button.textContent()}`;
          expect(Math.min(box.width, box.height), name).toBeGreaterThanOrEqual(47.9);
        }
      }
    });
  });

  it('go on paper dark on white, without what is only pressed, whatever the colours of the screen', async () => {
    await withPage({ colorScheme: 'dark' }, async ({ page, address }) => {
      await page.emulateMedia({ media: 'print' });
      for (const view of views) {
        await page.goto(address + view);
        await page.locator('h1').first().waitFor({ state: 'attached' });
        const [paper, ink] = await page.evaluate(() => {
          const { backgroundColor, color } = getComputedStyle(document.body);
          return [backgroundColor, color];
        });
        expect([paper, ink], view).toEqual(['rgb(255, 255, 255)', 'rgb(34, 38, 43)']);
        expect(await page.locator('.start-bar, .first-visit').filter({ visible: true }).count()).toBe(0);
      }
    });
  });

  it('keep the words of a button whole where there is room beside it for a line of text', async () => {
    await withPage({ viewport: { width: 790, height: 740 } }, async ({ page }) => {
      const height = (await page.getByRole('button', { name: 'Got it' }).boundingBox())!.height;
      expect(height).toBeLessThan(60);
    });
  });

  it('break no line between a figure and its unit', async () => {
    await withPage({}, async ({ page, address }) => {
      let whole = 0;
      for (const view of views) {
        await page.goto(address + view);
        await page.locator('h1').first().waitFor({ state: 'attached' });
        const text = await page.evaluate(() => {
          const read = document.querySelector('main')!.cloneNode(true) as HTMLElement;
          for (const typed of read.querySelectorAll('pre, code')) typed.remove();
          return read.textContent.replaceAll('\n', '|');
        });
        whole += text.match(/\d\u00a0(%|ms|dB|BPM|minutes)/g)?.length ?? 0;
        expect(text.match(/.{0,20}\d (%|ms|dB|BPM|minutes)/g) ?? [], view).toEqual([]);
      }
      expect(whole).toBeGreaterThan(10);
    });
  });

  it('work without a net after the first visit, from a server that is gone', async () => {
    await withPage({}, async ({ page, context, address, faults, stopServing }) => {
      await page.evaluate(async () => {
        await navigator.serviceWorker.ready;
      });
      await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
      stopServing();
      const again = await context.newPage();
      await again.goto(address);
      await again.getByRole('button', { name: 'Play and record' }).waitFor();
      await again.goto(`${address}#/help`);
      await again.getByRole('heading', { name: 'How it works' }).waitFor();
      // Every file of the page is kept, also what no view has asked for yet.
      const there = await again.evaluate(async () => {
        const names = await caches.keys();
        const kept = await (await caches.open(names[0]!)).keys();
        return { names, kept: kept.map(({ url }) => new URL(url).pathname) };
      });
      expect(there.names).toHaveLength(1);
      expect(there.kept.some((path) => path.includes('engine-worker'))).toBe(true);
      expect(there.kept.some((path) => path.includes('report-parts'))).toBe(true);
      expect(faults).toEqual([]);
    });
  });
});
