import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type PageFile, readPageFiles } from '../../src/server/page-files.ts';
import { browserThere } from './chromium.ts';
import { withPage } from './opened-page.ts';

/** The built page as another version would be: another description, and the list with another version's name. */
function newer(files: Map<string, PageFile>): void {
  const change = (path: string, from: RegExp | string, to: string) => {
    const file = files.get(path)!;
    const text = Buffer.from(file.contents).toString();
    expect(text.replace(from, to)).not.toBe(text);
    files.set(path, { ...file, contents: Buffer.from(text.replace(from, to)) });
  };
  change('/index.html', 'content="Practise accented', 'content="Newer: practise accented');
  change('/service-worker.js', /[0-9a-f]{16}/, '0123456789abcdef');
}

describe.skipIf(!browserThere('a newer version of the page'))('a newer version of the page', () => {
  it('waits until it is let in, never while a take runs, and leaves other tabs what they need', async () => {
    const files = new Map(readPageFiles(join(import.meta.dirname, '../../dist/page')));
    const switches = ['--use-fake-ui-for-media-stream', '--use-fake-device-for-media-stream'];
    await withPage({ files, switches }, async ({ page, context, address, faults }) => {
      await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
      const other = await context.newPage();
      await other.goto(address);
      await other.getByRole('button', { name: 'Play and record' }).waitFor();

      newer(files);
      // What only the old version has is gone from the server.
      for (const path of [...files.keys()]) if (/help-view|result-view/.test(path)) files.delete(path);
      const listed = /"assets\/(?:help|result)-view[^"]*",?/g;
      const worker = files.get('/service-worker.js')!;
      const text = Buffer.from(worker.contents).toString().replaceAll(listed, '');
      files.set('/service-worker.js', { ...worker, contents: Buffer.from(text) });

      await page.getByRole('button', { name: 'Play and record' }).click();
      await page.getByRole('button', { name: 'Stop' }).waitFor();
      await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
      await page.waitForFunction(async () => (await navigator.serviceWorker.ready).waiting !== null);
      await page.locator('.band').waitFor({ state: 'attached' });
      expect(await page.locator('.band').isVisible()).toBe(false);
      expect(await page.getByRole('button', { name: 'Stop' }).isVisible()).toBe(true);
      await page.getByRole('button', { name: 'Stop' }).click();
      await page.locator('.result-verdict').waitFor();

      await page.getByRole('button', { name: 'Load it now' }).click();
      await page.waitForFunction(() => document.head.innerHTML.includes('Newer: practise'));
      // The other tab still runs the old version and loads a part of it that it hadn't yet.
      await other.evaluate(() => {
        location.hash = '#/help';
      });
      await other.getByRole('heading', { name: 'How it works' }).waitFor();
      expect(faults).toEqual([]);
    });
  });
});
