import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import axe, { type AxeResults } from 'axe-core';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { openRecording } from '../../src/formats/open-recording.ts';
import { mp3Of } from '../../src/formats/write-mp3.ts';
import { programVersion } from '../../src/library/program-version.ts';
import { sha256Hex } from '../../src/library/sha256-hex.ts';
import { readTakeFile } from '../../src/library/take-file/read-take-file.ts';
import { writeTakeFile } from '../../src/library/take-file/write-take-file.ts';
import { madeParcel } from '../library/take-file/made-parcel.ts';
import { runningPage } from '../server/running-page.ts';
import { args, browserThere, executablePath } from './chromium.ts';

const takes = join(import.meta.dirname, '../../fixtures/takes');
const wav = join(takes, 'demo.wav');
const sheet = join(takes, 'demo.sheet');

describe.skipIf(!browserThere('the library in the browser'))('the library in the browser', () => {
  let browser: Browser;
  let served: Awaited<ReturnType<typeof runningPage>>;
  let context: BrowserContext;
  let folder: string;
  const faults: string[] = [];

  beforeAll(async () => {
    served = await runningPage();
    browser = await chromium.launch({ executablePath, args });
    folder = mkdtempSync(join(tmpdir(), 'evenhand-page-library-'));
  }, 60_000);
  afterAll(async () => {
    await browser?.close();
    served?.close();
    rmSync(folder, { recursive: true, force: true });
  });
  beforeEach(async () => {
    faults.length = 0;
    context = await browser.newContext();
  });
  afterEach(async () => {
    await context.close();
    expect(faults).toEqual([]);
  });

  async function myTakes(): Promise<Page> {
    const page = await context.newPage();
    page.on('console', (message) => faults.push(message.text()));
    page.on('pageerror', (error) => faults.push(error.message));
    await page.goto(`http://127.0.0.1:${served.port}/#/takes`);
    await page.getByRole('heading', { name: 'My takes', level: 1 }).waitFor();
    return page;
  }

  /** Adds recordings of the demo's exercise, and gives what the queue says of each. */
  async function add(page: Page, files: readonly string[]): Promise<string[]> {
    await page.setInputFiles('.drop input[type=file]', files);
    if (files.some((file) => !file.endsWith('.zip'))) await sayWhatWasPlayed(page);
    return whatBecameOfThem(page);
  }

  async function sayWhatWasPlayed(page: Page): Promise<void> {
    await page.getByText('A sheet', { exact: true }).click();
    await page.setInputFiles('.sheet-file input[type=file]', sheet);
    await page.getByRole('button', { name: /^Grade and keep/ }).click();
  }

  async function whatBecameOfThem(page: Page): Promise<string[]> {
    await page.getByText('All done').waitFor();
    const said = await page.locator('.queue li').allTextContents();
    await page.getByRole('button', { name: 'Clear this list' }).click();
    return said;
  }

  async function exported(page: Page, button: RegExp): Promise<string> {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: button }).click(),
    ]);
    const path = join(folder, download.suggestedFilename());
    await download.saveAs(path);
    return path;
  }

  /** Recordings in the browser's private files, with their sizes. */
  const privateFiles = (page: Page) =>
    page.evaluate(async () => {
      type Folder = FileSystemDirectoryHandle & { entries(): AsyncIterable<[string, FileSystemHandle]> };
      const root = await navigator.storage.getDirectory();
      const audio = (await root.getDirectoryHandle('evenhand-audio', { create: true })) as Folder;
      const found: Record<string, number> = {};
      for await (const [name, handle] of audio.entries())
        found[name] = (await (handle as FileSystemFileHandle).getFile()).size;
      return found;
    });

  it('keeps a take over a reload, opens it with its sound, exports it, takes it in again, deletes it for good', async () => {
    const page = await myTakes();
    expect(await add(page, [wav])).toEqual([expect.stringContaining('Graded and kept.')]);
    const hash = await sha256Hex(readFileSync(wav));
    expect(await privateFiles(page)).toEqual({ [hash]: readFileSync(wav).length });

    await page.reload();
    await page.locator('.take-row').waitFor();
    expect(await page.locator('.take-row').count()).toBe(1);
    expect(await page.locator('.take-row').textContent()).toMatch(
      /Mirelle, week 7: the accent walks.*100 BPM.*84, nearly there.*Evenness 94/,
    );

    await page.locator('.take-row a').click();
    const report = page.frameLocator('iframe.report');
    await report.getByRole('heading', { name: 'Scores' }).waitFor();
    expect(await report.getByRole('button', { name: '0:20.0' }).count()).toBeGreaterThan(0);
    await page.getByLabel('A remark').fill('Calmer than last week');
    await page.getByLabel(/^At/).fill('0:12.5');
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.getByText('Calmer than last week').waitFor();

    // A moment chosen by ear: a spot that the report names is played, and the moment heard is taken over.
    await report.getByRole('button', { name: '0:20.0' }).first().click();
    await report.getByRole('button', { name: '■ Stop' }).waitFor();
    await expect.poll(() => report.locator('#listen-place').textContent()).toMatch(/^0:2/);
    await report.getByRole('button', { name: 'Remark here' }).click();
    await page.locator('.remark-form input:focus').waitFor();
    const chosen = await page.getByLabel(/^At/).inputValue();
    expect(chosen).toMatch(/^0:2\d\.\d$/);
    await page.keyboard.type('Left waits here');
    await page.keyboard.press('Enter');
    const pinned = page.locator('.remarks li').filter({ hasText: 'Left waits here' });
    await pinned.getByRole('button', { name: `Play from ${chosen}` }).click();
    await expect.poll(() => report.locator('#listen-place').textContent()).toMatch(/^0:(19|20)/);
    await page.reload();
    await pinned.waitFor();

    const file = await exported(page, /^Export$/);
    expect(file).toMatch(/mirelle-week-7-the-accent-walks\.take\.zip$/);
    const read = await readTakeFile(new Uint8Array(readFileSync(file)));
    if (!read.ok) throw new Error(read.fault.code);
    expect(read.faults).toEqual([]);
    expect(read.takes.map(({ remarks }) => remarks.map(({ text, moment }) => [text, moment]))).toEqual([
      [
        ['Calmer than last week', 12.5],
        ['Left waits here', Number(chosen.slice(2))],
      ],
    ]);
    expect(await sha256Hex(read.takes[0]!.audio!.bytes)).toBe(hash);
    expect(read.takes[0]!.result.grading).toEqual({ state: 'graded' });
    expect(read.takes[0]!.gradedWith).toBe(programVersion);

    await page.getByRole('link', { name: 'All my takes' }).click();
    expect(await add(page, [file])).toEqual([expect.stringContaining('1 take there already.')]);
    expect(await page.locator('.take-row').count()).toBe(1);

    await page.locator('.take-row input').check();
    await page.getByRole('button', { name: 'Delete' }).click();
    await page.getByRole('button', { name: 'Leave as it is' }).click();
    expect(await page.locator('.take-row').count()).toBe(1);
    await page.getByRole('button', { name: 'Delete' }).click();
    await page.getByRole('button', { name: 'Delete for good' }).click();
    await page.getByText('No take is kept here yet.').waitFor();
    expect(await privateFiles(page)).toEqual({});

    expect(await add(page, [file])).toEqual([expect.stringContaining('1 take kept.')]);
    await page.reload();
    await page.getByText('2 remarks').waitFor();
    expect(await privateFiles(page)).toEqual({ [hash]: readFileSync(wav).length });
  });

  it("grades a compressed recording by the browser's decoder, and lets it be heard when it is opened again", async () => {
    const page = await myTakes();
    const recording = await openRecording(wav);
    if (!recording.ok) throw new Error('demo.wav cannot be read');
    const mp3 = join(folder, 'phone.mp3');
    writeFileSync(mp3, await mp3Of(recording.source));
    recording.close();
    expect(await add(page, [mp3])).toEqual([expect.stringContaining('Graded and kept.')]);
    expect(await privateFiles(page)).toEqual({
      [await sha256Hex(readFileSync(mp3))]: readFileSync(mp3).length,
    });
    await page.reload();
    await page.locator('.take-row a').click();
    const report = page.frameLocator('iframe.report');
    await report
      .getByRole('button', { name: /\d:\d\d\.\d$/ })
      .first()
      .waitFor();
  });

  it('gives the room of many takes back, recordings and tables alike', async () => {
    const page = await myTakes();
    const tableBytes = () =>
      page.evaluate(async () => {
        type Folder = FileSystemDirectoryHandle & { values(): AsyncIterable<Folder | FileSystemFileHandle> };
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
    const many = join(folder, 'many.take.zip');
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
    const devtools = await context.newCDPSession(page);
    const { usage } = await page.evaluate(() => navigator.storage.estimate());
    await devtools.send('Storage.overrideQuotaForOrigin', {
      origin: `http://127.0.0.1:${served.port}`,
      quotaSize: usage! + 1_000_000,
    });
    expect(await add(page, [wav])).toEqual([expect.stringContaining('There is no room left')]);
    expect(await privateFiles(page)).toEqual({});
    await devtools.send('Storage.overrideQuotaForOrigin', { origin: `http://127.0.0.1:${served.port}` });
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

  it('takes in several files, each with what became of it, and exports many as one', async () => {
    const page = await myTakes();
    const text = join(folder, 'notes.txt');
    const cut = join(folder, 'cut.wav');
    const silent = join(folder, 'other.wav');
    const wrong = join(folder, 'wrong.take.zip');
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

    const asleep = await context.newPage();
    await asleep.goto(`http://127.0.0.1:${served.port}/#/help`);
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
    await context.route('**/library-worker-*.js', async (route) => {
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

  it('takes several files that are dropped on it together', async () => {
    const page = await myTakes();
    const other = join(takes, 'accent-one.wav');
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
});
