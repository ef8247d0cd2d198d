import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { listAssignments } from '../../src/library/assignments.ts';
import { withLibrary } from '../library/temporary-library.ts';
import { browserThere } from './chromium.ts';
import { withPage } from './opened-page.ts';
import { day, demoTake, person, readable, withServedLibrary } from './served-library.ts';

describe.skipIf(!browserThere('assignments and the lesson, in the page'))(
  'assignments and the lesson, in the page',
  () => {
    it('a sheet is handed out, written as a file to send, done, deleted; the lesson looks back on it, with its weakest lines to hear', () =>
      withLibrary(async (library) => {
        const [mirelle] = [await person(library, 'Mirelle'), await person(library, 'Joris')];
        await demoTake(library, 0, mirelle);
        await withServedLibrary(library, 'assignments', async (page) => {
          await page.getByLabel('Or one that is kept').selectOption({ index: 1 });
          await page.getByRole('combobox', { name: 'For', exact: true }).selectOption('Mirelle');
          await page.getByLabel('Until (or nothing)').fill(day(-7));
          await page.getByLabel('Beats per minute (or as written)').fill('98');
          await page.getByLabel('A word to the player').fill('Left hand first');
          await page.getByRole('button', { name: 'Hand out' }).click();
          const item = page.locator('.assignment-list li').first();
          await item.getByText(/^Mirelle: /).waitFor();
          await item.getByText(/in 7 days; played once, on .*, best score 84\./).waitFor();
          const [download] = await Promise.all([
            page.waitForEvent('download'),
            item.getByRole('button', { name: /^Save the sheet/ }).click(),
          ]);
          const sheet = readFileSync(await download.path(), 'utf8');
          expect(sheet).toMatch(/^title: .*\nfor: Mirelle\ndue: .*\nnote: Left hand first\ntempo: 98\n/);
          await readable(page, 'light');

          await page.locator('.hand-out textarea').fill('RLX');
          await page.getByRole('button', { name: 'Hand out' }).click();
          await page.getByText('"X" means nothing here').waitFor();
          await item.getByRole('button', { name: /^Done/ }).click();
          await page.getByText('Done: 1').click();
          await item.getByRole('button', { name: /^Open again/ }).click();

          await page.goto(page.url().replace(/#.*/, '#/lesson'));
          const shown = page.frameLocator('iframe.report');
          await shown.getByRole('heading', { name: /^All players since/ }).waitFor();
          expect(await shown.locator('tbody tr').allTextContents()).toEqual([
            expect.stringContaining('Joris'),
            expect.stringMatching(/Mirelle.*played once/),
          ]);
          await readable(page, 'dark');
          await page.getByRole('combobox', { name: 'With' }).selectOption('Mirelle');
          await shown.getByRole('heading', { name: 'Weakest lines' }).waitFor();
          await shown.getByText('Left hand first').waitFor();
          const audio = shown.locator('audio').first();
          await audio.evaluate((element: HTMLAudioElement) => element.play());
          await expect
            .poll(() => audio.evaluate((element: HTMLAudioElement) => element.currentTime))
            .toBeGreaterThan(0);

          await page.goto(page.url().replace(/#.*/, '#/assignments'));
          await item.getByRole('button', { name: /^Delete/ }).click();
          await page.getByRole('dialog').getByRole('button', { name: 'Delete for good' }).click();
          await page.getByText('Nothing is open.').waitFor();
          expect((await listAssignments(library.db)).length).toBe(0);
        });
      }));

    it("a name typed before the first take, and a teacher's sheet that becomes the assignment, in the browser's own library", () =>
      withPage({ viewport: { width: 360, height: 740 } }, async ({ page, faults }) => {
        await page.getByText('Who plays: no name').click();
        await page.getByLabel('Another name').fill('Joris');
        await page.getByRole('button', { name: 'Add' }).click();
        await page.getByText('Who plays: Joris').waitFor();
        await page.getByLabel('A sheet', { exact: true }).check();
        const sheet = `title: Week 8\nfor: joris\ndue: ${day(-1)}\nnote: Left hand first\ntempo: 96\n>RLR >LRL ; times: 4\n`;
        await page.setInputFiles('.sheet-file input[type=file]', {
          name: 'week-8.sheet',
          mimeType: 'text/plain',
          buffer: Buffer.from(sheet),
        });
        await page.getByText(/^Kept as an assignment, due on/).waitFor();
        await page
          .locator('.assignments-due')
          .getByText(/Week 8: due on .*, in a day; not played yet/)
          .waitFor();
        await page.locator('.assignments-due').getByText('Left hand first').waitFor();
        await readable(page, 'light');
        await page.reload();
        await page.locator('.assignments-due').getByRole('button', { name: /^Done/ }).click();
        await page.locator('.assignments-due').waitFor({ state: 'detached' });
        expect(faults).toEqual([]);
      }));
  },
);
