import { join } from 'node:path';
import axe from 'axe-core';
import { chromium, type Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { answerCall } from '../../src/library/answer-call.ts';
import { keepTake } from '../../src/library/keep-take.ts';
import { listTakes } from '../../src/library/list-takes.ts';
import type { FolderLibrary } from '../../src/library/open-folder-library.ts';
import { readTake } from '../../src/library/read-take.ts';
import { readPageFiles, withHome } from '../../src/server/page-files.ts';
import { madeTake } from '../library/made-take.ts';
import { withLibrary } from '../library/temporary-library.ts';
import { runningPage } from '../server/running-page.ts';
import { args, browserThere, executablePath } from './chromium.ts';

const built = join(import.meta.dirname, '../../dist/page');

/** The page, served with a folder's library. */
async function served(library: FolderLibrary, use: (page: Page, faults: string[]) => Promise<void>) {
  const files = withHome(readPageFiles(built), library.folder);
  const server = await runningPage(files, (message) => answerCall(library, message));
  const browser = await chromium.launch({ executablePath, args });
  try {
    const page = await browser.newPage();
    const faults: string[] = [];
    page.on('console', (message) => faults.push(message.text()));
    page.on('pageerror', (error) => faults.push(error.message));
    await page.goto(`http://127.0.0.1:${server.port}/#/takes`);
    await use(page, faults);
    server.close();
  } finally {
    await browser.close();
    server.close();
  }
}

describe.skipIf(!browserThere("a folder's library in the page"))('a library in a folder, in the page', () => {
  it('is said, listed, opened, remarked on and deleted from, in the folder itself', () =>
    withLibrary(async (library) => {
      const example = await import('../../reports/samples/demo.json', { with: { type: 'json' } });
      const result = { ...example.default, recording: { ...example.default.recording, sha256: null } };
      for (const number of [1, 2]) await keepTake(library, madeTake(number, {}, result as never));
      await served(library, async (page, faults) => {
        await page.getByText(`in the folder ${library.folder}`).waitFor();
        expect(await page.locator('.take-row').count()).toBe(2);
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
        expect(faults).toEqual([]);
      });
    }));
});
