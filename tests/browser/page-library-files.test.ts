import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import axe, { type AxeResults } from 'axe-core';
import { describe, expect, it } from 'vitest';
import { readTakeFile } from '../../src/library/take-file/read-take-file.ts';
import { writeTakeFile } from '../../src/library/take-file/write-take-file.ts';
import { madeParcel } from '../library/take-file/made-parcel.ts';
import { browserThere } from './chromium.ts';
import { libraryInBrowser, wav } from './library-in-browser.ts';

describe.skipIf(!browserThere('files taken into the library in the browser'))(
  'files taken into the library in the browser',
  () => {
    const { myTakes, add, sayWhatWasPlayed, whatBecameOfThem, exported, folder } = libraryInBrowser();

    it('takes in several files, each with what became of it, and exports many as one', async () => {
      const page = await myTakes();
      const text = join(folder(), 'notes.txt');
      const cut = join(folder(), 'cut.wav');
      const silent = join(folder(), 'other.wav');
      const wrong = join(folder(), 'wrong.take.zip');
      writeFileSync(text, 'no recording');
      const bytes = readFileSync(wav);
      writeFileSync(cut, bytes.subarray(0, 30));
      writeFileSync(silent, Buffer.concat([bytes.subarray(0, 44), Buffer.alloc(200_000)]));
      writeFileSync(wrong, 'PK\u0003\u0004 but no more');
      const said = await add(page, [wav, text, cut, silent, wrong, wav]);
      expect(said).toHaveLength(6);
      const of = (name: string) => said.filter((sentence) => sentence.includes(name));
      expect(of('demo.wav')[0]).toContain('Graded and kept.');
      expect(of('demo.wav')[1]).toContain('Is there already.');
      expect(of('notes.txt')[0]).toContain('is a text file');
      expect(of('cut.wav')[0]).toContain('description of its samples breaks off after');
      expect(of('other.wav')[0]).toContain('could not be graded');
      expect(of('wrong.take.zip')[0]).toContain('is not a take file, or its end is missing');
      await page.getByText('2 takes', { exact: true }).waitFor();

      const file = await exported(page, /^Export all 2$/);
      const read = await readTakeFile(new Uint8Array(readFileSync(file)));
      expect(read.ok && read.takes.map(({ audio }) => audio?.name).sort()).toEqual(['demo.wav', 'other.wav']);
    });

    it('takes several files that are dropped on it together', async () => {
      const page = await myTakes();
      const other = join(import.meta.dirname, '../../fixtures/takes/accent-one.wav');
      const takeFile = await writeTakeFile([madeParcel(1)]);
      const dropped = await page.evaluateHandle(
        (files) => {
          const data = new DataTransfer();
          for (const { name, contents } of files)
            data.items.add(new File([Uint8Array.from(atob(contents), (c) => c.charCodeAt(0))], name));
          return data;
        },
        [
          { name: 'monday.wav', contents: readFileSync(wav).toString('base64') },
          { name: 'from-a-friend.take.zip', contents: Buffer.from(takeFile).toString('base64') },
          { name: 'tuesday.wav', contents: readFileSync(other).toString('base64') },
        ],
      );
      const place = page.locator('.drop');
      await place.dispatchEvent('dragover', { dataTransfer: dropped });
      await page.locator('.drop.over').waitFor();
      await place.dispatchEvent('drop', { dataTransfer: dropped });
      await page.getByText('monday.wav, tuesday.wav').waitFor();
      expect(await page.locator('.drop.over').count()).toBe(0);
      await sayWhatWasPlayed(page);
      const said = await whatBecameOfThem(page);
      expect(said).toHaveLength(3);
      expect(said.filter((text) => /1 take kept|Graded and kept|Kept, but/.test(text))).toHaveLength(3);
      expect(await page.locator('.take-row').count()).toBe(3);
    });

    it('takes what is shared to the installed page', async () => {
      const page = await myTakes();
      await page.evaluate(() => navigator.serviceWorker.ready);
      await page.reload();
      await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
      // As the system does it: a form with files that leads to another page.
      await page.evaluate((contents) => {
        const shared = new DataTransfer();
        shared.items.add(new File([Uint8Array.from(atob(contents), (c) => c.charCodeAt(0))], 'phone.wav'));
        const form = document.createElement('form');
        Object.assign(form, { action: './share', method: 'post', enctype: 'multipart/form-data' });
        const input = document.createElement('input');
        Object.assign(input, { type: 'file', name: 'recordings', files: shared.files });
        form.append(input);
        document.body.append(form);
        form.submit();
      }, readFileSync(wav).toString('base64'));
      await page.waitForURL(/#\/takes/);
      await page.getByText('phone.wav').waitFor();
      await sayWhatWasPlayed(page);
      expect(await whatBecameOfThem(page)).toEqual([expect.stringContaining('Graded and kept.')]);
    });

    it('can be read by everyone, on a phone and in the dark', async () => {
      const page = await myTakes();
      await add(page, [wav]);
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme });
        await page.setViewportSize({ width: 360, height: 740 });
        for (const view of ['asking', 'list', 'take']) {
          if (view === 'asking') {
            await page.setInputFiles('.drop input[type=file]', wav);
            await page.getByRole('button', { name: 'Grade and keep it' }).waitFor();
          } else if (view === 'take') {
            await page.locator('.take-row a').click();
            await page.getByRole('heading', { name: 'Remarks' }).waitFor();
          } else await page.getByRole('button', { name: 'Leave it out' }).click();
          const wide = await page.evaluate(() => document.documentElement.scrollWidth);
          expect(wide, `${view}, ${colorScheme}`).toBeLessThanOrEqual(360);
          await page.evaluate(axe.source);
          const { violations } = (await page.evaluate("axe.run({ exclude: ['iframe'] })")) as AxeResults;
          expect(
            violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)]),
            `${view}, ${colorScheme}`,
          ).toEqual([]);
        }
        await page.getByRole('link', { name: 'All my takes' }).click();
      }
    });
  },
);
