import { describe, expect, it } from 'vitest';
import { writeTakeFile } from '../../src/library/take-file/write-take-file.ts';
import { madeParcel } from '../library/take-file/made-parcel.ts';
import { withLibrary } from '../library/temporary-library.ts';
import { browserThere } from './chromium.ts';
import { withPage } from './opened-page.ts';
import { day, demo, demoTake, person, readable, withServedLibrary } from './served-library.ts';

describe.skipIf(!browserThere('kept takes held against each other, in the page'))(
  'kept takes held against each other, in the page',
  () => {
    it('two takes chosen on the list are held against each other, both to be heard', () =>
      withLibrary(async (library) => {
        const mirelle = await person(library, 'Mirelle');
        for (const ago of [1, 3]) await demoTake(library, ago, mirelle);
        await withServedLibrary(library, 'takes', async (page) => {
          await page.locator('.take-row').nth(1).waitFor();
          for (const box of await page.locator('.take-row .choose').all()) await box.click();
          await page.getByRole('link', { name: 'Compare these two' }).click();
          const shown = page.frameLocator('iframe.report');
          await shown.getByRole('heading', { name: 'Listen to both' }).waitFor();
          const older = await shown.locator('.facts').first().textContent();
          expect(older).toContain('Mirelle');
          expect(older).toContain(
            new Date(`${day(3)}T12:00Z`).toLocaleDateString('en-GB', { day: 'numeric', month: 'short' }),
          );
          for (const which of ['first', 'second']) {
            const audio = shown.locator(`#${which}-sound`);
            await audio.evaluate((element: HTMLAudioElement) => element.play());
            await expect
              .poll(() => audio.evaluate((element: HTMLAudioElement) => element.currentTime))
              .toBeGreaterThan(0);
          }
          // A picture that is drawn, not only told.
          await shown.locator('figure.picture.drawn').first().waitFor();
          await readable(page, 'dark');
        });
      }));

    it('progress over the weeks, and days before and after a day with a verdict', () =>
      withLibrary(async (library) => {
        const mirelle = await person(library, 'Mirelle');
        for (const ago of [1, 2, 4, 8, 9, 11]) await demoTake(library, ago, mirelle);
        await withServedLibrary(library, `progress/${mirelle}`, async (page) => {
          const shown = page.frameLocator('iframe.report');
          await shown.getByRole('heading', { name: 'Mirelle' }).waitFor();
          expect(await shown.locator('.exercise-weeks').first().textContent()).toContain('6 takes on 6 days');
          await shown.locator('figure.picture.drawn').first().waitFor();
          await readable(page, 'light');
          await page.getByLabel(/before and after a day/).check();
          await shown.getByText('No clear change.', { exact: true }).waitFor();
        });
      }));

    it("takes that came in one file are held against each other and followed over weeks in the browser's own library", () =>
      withPage({ view: '#/takes' }, async ({ page, address, faults }) => {
        const parcels = await Promise.all([1, 3, 9].map(async (ago) => madeParcel(ago, await demo(ago))));
        await page.setInputFiles('.drop input[type=file]', {
          name: 'mirelle.take.zip',
          mimeType: 'application/zip',
          buffer: Buffer.from(await writeTakeFile(parcels)),
        });
        await page.getByText('3 takes kept').waitFor();
        for (const at of [0, 2]) await page.locator('.take-row .choose').nth(at).click();
        await page.getByRole('link', { name: 'Compare these two' }).click();
        const shown = page.frameLocator('iframe.report');
        await shown.getByRole('heading', { name: 'Listen to both' }).waitFor();
        await shown.locator('figure.picture.drawn').first().waitFor();
        const heard = shown.locator('#second-sound');
        await heard.evaluate((element: HTMLAudioElement) => element.play());
        await expect
          .poll(() => heard.evaluate((element: HTMLAudioElement) => element.currentTime))
          .toBeGreaterThan(0);

        await page.goto(`${address}#/progress`);
        await page.getByRole('combobox', { name: 'Player' }).selectOption('Mirelle');
        await shown.getByRole('heading', { name: 'Mirelle' }).waitFor();
        expect(await shown.locator('.exercise-weeks').first().textContent()).toContain('3 takes on 3 days');
        await shown.locator('figure.picture.drawn').first().waitFor();
        await page.getByLabel(/before and after a day/).check();
        await shown.getByText('There are too few days for a verdict.').waitFor();
        expect(faults).toEqual([]);
      }));
  },
);
