import axe from 'axe-core';
import { describe, expect, it } from 'vitest';
import { keepTake } from '../../src/library/keep-take.ts';
import { listTakes } from '../../src/library/list-takes.ts';
import { readTake } from '../../src/library/read-take.ts';
import { madeTake } from '../library/made-take.ts';
import { withLibrary } from '../library/temporary-library.ts';
import { browserThere } from './chromium.ts';
import { withServedLibrary } from './served-library.ts';

describe.skipIf(!browserThere("a folder's library in the page"))('a library in a folder, in the page', () => {
  it('is said, listed, opened, remarked on and deleted from, in the folder itself', () =>
    withLibrary(async (library) => {
      const example = await import('../../reports/samples/demo.json', { with: { type: 'json' } });
      const result = { ...example.default, recording: { ...example.default.recording, sha256: null } };
      for (const number of [1, 2]) await keepTake(library, madeTake(number, {}, result as never));
      await withServedLibrary(library, 'takes', async (page) => {
        await page.getByText(`in the folder ${library.folder}`).waitFor();
        expect(await page.locator('.take-row').count()).toBe(2);
        expect(await page.locator('.take-row .tempo').first().textContent()).toMatch(/^\d+\u00a0BPM/);
        await page.evaluate(axe.source);
        const found = await page.evaluate(() =>
          (globalThis as unknown as { axe: typeof axe }).axe.run(document, { iframes: false }),
        );
        expect(found.violations.map(({ id }) => id)).toEqual([]);

        await page.locator('.take-row a').first().click();
        const newest = (await listTakes(library.db, { limit: 1 })).takes[0]!.id;
        await page.locator('.remark-form input').first().fill('Left waits');
        await page.locator('.remark-form button[type=submit]').click();
        await page.locator('.remarks').getByText('Left waits').waitFor();
        expect((await readTake(library.db, newest)).remarks.map(({ text }) => text)).toEqual(['Left waits']);

        await page.goto(page.url().replace(/#.*/, '#/takes'));
        await page.locator('.take-row .choose').first().click();
        await page.getByRole('button', { name: /^Delete/ }).click();
        await page
          .getByRole('button', { name: /^Delete .*(good|take)/ })
          .last()
          .click();
        await page.getByText('1 take', { exact: true }).first().waitFor();
        expect((await library.audio.list()).length).toBe(1);
      });
    }));
});
