import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { writeTakeFile } from '../../src/library/take-file/write-take-file.ts';
import { madeParcel } from '../library/take-file/made-parcel.ts';
import { browserThere } from './chromium.ts';
import { libraryInBrowser, wav } from './library-in-browser.ts';

describe.skipIf(!browserThere('room, tabs and crashes of the library in the browser'))(
  'room, tabs and crashes of the library in the browser',
  () => {
    const { myTakes, add, privateFiles, profile, folder, address } = libraryInBrowser();

    it('gives the room of many takes back, recordings and tables alike', async () => {
      const page = await myTakes();
      const tableBytes = () =>
        page.evaluate(async () => {
          type Folder = FileSystemDirectoryHandle & {
            values(): AsyncIterable<Folder | FileSystemFileHandle>;
          };
          const folders = [
            await (await navigator.storage.getDirectory()).getDirectoryHandle('.evenhand-takes'),
          ];
          let bytes = 0;
          for (let folder = folders.pop(); folder !== undefined; folder = folders.pop()) {
            for await (const handle of (folder as Folder).values()) {
              if (handle.kind === 'directory') folders.push(handle);
              else bytes += (await handle.getFile()).size;
            }
          }
          return bytes;
        });
      const empty = await tableBytes();
      const many = join(folder(), 'many.take.zip');
      const parcels = Array.from({ length: 20 }, (_, i) => madeParcel(i));
      writeFileSync(many, await writeTakeFile(parcels));
      expect(await add(page, [many])).toEqual([expect.stringContaining('20 takes kept.')]);
      expect(await tableBytes()).toBeGreaterThan(empty + 100_000);
      for (const box of await page.locator('.take-row input').all()) await box.check();
      await page.getByRole('button', { name: 'Delete 20 takes' }).click();
      await page.getByRole('button', { name: 'Delete for good' }).click();
      await page.getByText('No take is kept here yet.').waitFor();
      expect(await privateFiles(page)).toEqual({});
      expect(await tableBytes()).toBeLessThan(empty + 50_000);
    });

    it('keeps nothing half where there is no room, and says so', async () => {
      const page = await myTakes();
      const devtools = await profile().newCDPSession(page);
      const { usage } = await page.evaluate(() => navigator.storage.estimate());
      await devtools.send('Storage.overrideQuotaForOrigin', {
        origin: address(),
        quotaSize: usage! + 1_000_000,
      });
      expect(await add(page, [wav])).toEqual([expect.stringContaining('There is no room left')]);
      expect(await privateFiles(page)).toEqual({});
      await devtools.send('Storage.overrideQuotaForOrigin', { origin: address() });
      expect(await add(page, [wav])).toEqual([expect.stringContaining('Graded and kept.')]);
    });

    it('asks the browser to keep the takes, and says what it answered', async () => {
      const page = await myTakes();
      await page.getByText('The browser may clear your takes away').waitFor();
      await page.getByRole('button', { name: 'Ask the browser to keep them' }).click();
      const kept = page.getByText('The browser has promised to keep your takes');
      await kept.or(page.getByText('The browser did not promise it')).waitFor();
      const promised = await page.evaluate(() => navigator.storage.persisted());
      expect(await kept.isVisible()).toBe(promised);
    });

    it('is shared by two tabs, and says so when another one has it and sleeps', async () => {
      const [one, two] = [await myTakes(), await myTakes()];
      await add(one, [wav]);
      await two.getByLabel('Another name').fill('Mirelle');
      await two.getByRole('button', { name: 'Add' }).click();
      await two.getByText('1 take', { exact: true }).waitFor();
      await one.reload();
      await one.getByRole('option', { name: 'Mirelle' }).first().waitFor({ state: 'attached' });
      await two.reload();
      await two.locator('.take-row').waitFor();
      await Promise.all([one.close(), two.close()]);

      const asleep = await profile().newPage();
      await asleep.goto(`${address()}/#/help`);
      await asleep.evaluate(
        () =>
          new Promise<void>((had) => {
            void navigator.locks.request('evenhand-takes', () => {
              had();
              return new Promise(() => {});
            });
          }),
      );
      const page = await myTakes();
      expect(await page.getByRole('alert').textContent()).toContain('another tab of this browser');
      await asleep.close();
      await page.getByRole('button', { name: 'Try again' }).click();
      await page.locator('.take-row').waitFor();
    });

    it('clears away what a crash left of a recording', async () => {
      const page = await myTakes();
      await page.evaluate(async () => {
        const root = await navigator.storage.getDirectory();
        const audio = await root.getDirectoryHandle('evenhand-audio', { create: true });
        for (const name of ['ab'.repeat(32), `${crypto.randomUUID()}.arriving`]) {
          const writable = await (await audio.getFileHandle(name, { create: true })).createWritable();
          await writable.write('half a recording');
          await writable.close();
        }
      });
      expect(Object.keys(await privateFiles(page))).toHaveLength(2);
      await page.reload();
      await page.getByText('No take is kept here yet.').waitFor();
      expect(await privateFiles(page)).toEqual({});
    });

    it('says where nothing can be kept, and the page works all the same', async () => {
      await profile().route('**/library-worker-*.js', async (route) => {
        const response = await route.fetch();
        const refuse =
          'navigator.storage.getDirectory = () => Promise.reject(new DOMException("no", "SecurityError"));';
        await route.fulfill({ response, body: refuse + (await response.text()) });
      });
      const page = await myTakes();
      expect(await page.getByRole('alert').textContent()).toContain("takes can't be kept here");
      await page.getByRole('link', { name: 'Practise', exact: true }).click();
      await page.getByRole('heading', { name: 'What you play' }).waitFor();
    });
  },
);
