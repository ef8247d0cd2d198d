import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import axe from 'axe-core';
import { chromium, type Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { TakeResult } from '../../src/core/result/take-result.ts';
import { answerCall } from '../../src/library/answer-call.ts';
import { listAssignments, setAssignment } from '../../src/library/assignments.ts';
import { keepTake } from '../../src/library/keep-take.ts';
import type { FolderLibrary } from '../../src/library/open-folder-library.ts';
import { addPerson, listPeople } from '../../src/library/people.ts';
import { listDiscomfort, listPractice } from '../../src/library/practice.ts';
import { writeTakeFile } from '../../src/library/take-file/write-take-file.ts';
import { readPageFiles, withHome } from '../../src/server/page-files.ts';
import { madeTake } from '../library/made-take.ts';
import { madeParcel } from '../library/take-file/made-parcel.ts';
import { withLibrary } from '../library/temporary-library.ts';
import { runningPage } from '../server/running-page.ts';
import { args, browserThere, executablePath } from './chromium.ts';
import { withPage } from './opened-page.ts';

const built = join(import.meta.dirname, '../../dist/page');
const wav = readFileSync(join(import.meta.dirname, '../../fixtures/takes/demo.wav'));
const sheetText = readFileSync(join(import.meta.dirname, '../../fixtures/takes/demo.sheet'), 'utf8');

const day = (ago: number) => new Date(Date.now() - ago * 86_400_000).toISOString().slice(0, 10);

/** A take of the demo some days ago with its sound, one sample of which makes it another recording. */
async function demo(ago: number) {
  const { default: sample } = await import('../../reports/samples/demo.json', { with: { type: 'json' } });
  const result = { ...sample, recording: { ...sample.recording, sha256: null } } as never as TakeResult;
  const bytes = Uint8Array.from(wav);
  bytes[bytes.length - 1] = ago;
  const recordedAt = Date.now() - ago * 86_400_000;
  return { result, recordedAt, day: day(ago), sheetText, audio: { name: `${ago}.wav`, bytes } };
}

async function demoTake(library: FolderLibrary, ago: number, personId: string): Promise<string> {
  const { id } = await keepTake(library, { ...madeTake(ago, { personId }), ...(await demo(ago)) });
  return id;
}

async function person(library: FolderLibrary, name: string): Promise<string> {
  const id = crypto.randomUUID();
  await addPerson(library.db, { id, name, role: 'student', note: '', createdAt: 0 });
  return id;
}

/** The page, served with a folder's library. */
async function served(library: FolderLibrary, view: string, use: (page: Page) => Promise<void>) {
  const files = withHome(readPageFiles(built), library.folder);
  const server = await runningPage(files, (message) => answerCall(library, message));
  const browser = await chromium.launch({ executablePath, args });
  try {
    const page = await browser.newPage();
    const faults: string[] = [];
    page.on('console', (message) => faults.push(message.text()));
    page.on('pageerror', (error) => faults.push(error.message));
    await page.goto(`http://127.0.0.1:${server.port}/#/${view}`);
    await use(page);
    expect(faults).toEqual([]);
  } finally {
    await browser.close();
    server.close();
  }
}

/** On a phone's screen, in one of the two schemes: what page-views holds every view to while it is empty. */
async function readable(page: Page, colorScheme: 'light' | 'dark'): Promise<void> {
  await page.setViewportSize({ width: 360, height: 740 });
  await page.emulateMedia({ colorScheme });
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate(() =>
    (globalThis as unknown as { axe: typeof axe }).axe.run(document, { iframes: false }),
  );
  expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
  const over = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(over).toBeLessThanOrEqual(0);
}

describe.skipIf(!browserThere('what is kept, in the page'))('what is kept, in the page', () => {
  it('two takes chosen on the list are held against each other, both to be heard', () =>
    withLibrary(async (library) => {
      const mirelle = await person(library, 'Mirelle');
      for (const ago of [1, 3]) await demoTake(library, ago, mirelle);
      await served(library, 'takes', async (page) => {
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
      await served(library, `progress/${mirelle}`, async (page) => {
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

  it('people are renamed, made one of two and deleted with their recordings', () =>
    withLibrary(async (library) => {
      const [one, two] = [await person(library, 'Mirele'), await person(library, 'M. Quist')];
      await demoTake(library, 1, one);
      await demoTake(library, 2, two);
      await served(library, 'people', async (page) => {
        const card = page
          .locator('.people > li')
          .filter({ has: page.getByRole('heading', { name: 'Mirele' }) });
        await card.locator('summary').click();
        await card.getByLabel('Name', { exact: true }).fill('Mirelle');
        await card.getByRole('button', { name: 'Rename' }).click();
        await page.getByText('Mirele is called Mirelle now.').waitFor();
        await readable(page, 'dark');

        const other = page
          .locator('.people > li')
          .filter({ has: page.getByRole('heading', { name: 'M. Quist' }) });
        await other.locator('summary').click();
        await other.getByLabel('Is the same person as').selectOption(one);
        await other.getByRole('button', { name: 'Make one of both' }).click();
        await page.getByRole('dialog').getByRole('button', { name: 'Make one of both' }).click();
        await page.getByText('are one now: Mirelle.').waitFor();
        expect((await listPeople(library.db)).map(({ name, takes }) => [name, takes])).toEqual([
          ['Mirelle', 2],
        ]);

        await page.getByRole('button', { name: /^Delete Mirelle/ }).click();
        await page.getByRole('dialog').getByRole('button', { name: 'Leave as it is' }).click();
        expect(await library.audio.list()).toHaveLength(2);
        await page.getByRole('button', { name: /^Delete Mirelle/ }).click();
        await page.getByRole('dialog').getByRole('button', { name: 'Delete for good' }).click();
        await page.getByText('Mirelle is deleted, with 2 takes and their recordings.').waitFor();
        expect(await library.audio.list()).toEqual([]);
        expect(await listPeople(library.db)).toEqual([]);
      });
    }));

  it('practice is written down, a note on discomfort stops advice on tempo, and both can be taken back', () =>
    withLibrary(async (library) => {
      const mirelle = await person(library, 'Mirelle');
      const text = '>RLR >LRL ; times: 4\n';
      await demoTake(library, 1, mirelle);
      const assigned = {
        id: 'a',
        personId: mirelle,
        bpm: 96,
        dueDay: day(-2),
        note: 'Softly',
        setAt: 1,
        doneAt: null,
      };
      await setAssignment(library.db, { ...assigned, sheetText: `title: Week 7\n${text}` });
      await served(library, `practice-time/${mirelle}`, async (page) => {
        await page.getByLabel('Minutes', { exact: true }).fill('25');
        await page.getByRole('button', { name: 'Write it down' }).click();
        await page.getByText('Recorded takes, and minutes written down by hand.').waitFor();
        await page.getByLabel('What, where, since when').fill('left wrist');
        await page.getByRole('button', { name: 'Note it' }).click();
        await page.locator('.written-list').getByText('left wrist').waitFor();
        await readable(page, 'light');
        const days = { personId: mirelle, fromDay: day(2), toDay: day(-2) };
        expect((await listPractice(library.db, days)).map(({ minutes }) => minutes)).toEqual([25]);

        // Where practising begins: who plays, what is due, which tempo is next.
        await page.evaluate((id) => localStorage.setItem('evenhand-player', id), mirelle);
        await page.goto(page.url().replace(/#.*/, '#/'));
        await page.reload();
        await page.getByText('Who plays: Mirelle').waitFor();
        const due = page.locator('.assignments-due');
        await due.getByText(/Week 7: due on .*, in 2 days; played once, on .*, best score 84\./).waitFor();
        await due.getByRole('button', { name: /^Open/ }).click();
        await page.getByText('Open now: Week 7').waitFor();
        await page.getByRole('checkbox', { name: /^Something hurts/, checked: true }).waitFor();
        await page.getByLabel('My own', { exact: true }).check();
        await page.locator('#own-text').fill('>RLR >LRL');
        await page
          .locator('.next-tempo')
          .getByText(/You noted discomfort/)
          .waitFor();
        await readable(page, 'dark');

        await page.goto(page.url().replace(/#.*/, `#/practice-time/${mirelle}`));
        await page.getByRole('button', { name: /^Delete the note/ }).click();
        await page.locator('.written-list').getByText('left wrist').waitFor({ state: 'detached' });
        expect(await listDiscomfort(library.db, days)).toEqual([]);
        await page.goto(page.url().replace(/#.*/, '#/'));
        await page.locator('.next-tempo').getByText('From your takes').waitFor();
        expect(await page.locator('.next-tempo').textContent()).not.toContain('discomfort');
      });
    }));

  it('a sheet is handed out, written as a file to send, done, deleted; the lesson looks back on it, with its weakest lines to hear', () =>
    withLibrary(async (library) => {
      const [mirelle] = [await person(library, 'Mirelle'), await person(library, 'Joris')];
      await demoTake(library, 0, mirelle);
      await served(library, 'assignments', async (page) => {
        await page.getByLabel('Or one that is kept').selectOption({ index: 1 });
        await page.getByRole('combobox', { name: 'For', exact: true }).selectOption('Mirelle');
        await page.getByLabel('Until (or nothing)').fill(day(-7));
        await page.getByLabel('Beats per minute (or as written)').fill('96');
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
        expect(sheet).toMatch(/^title: .*\nfor: Mirelle\ndue: .*\nnote: Left hand first\ntempo: 96\n/);
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
});
