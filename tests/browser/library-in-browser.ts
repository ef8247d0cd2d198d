import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect } from 'vitest';
import { runningPage } from '../server/running-page.ts';
import { args, executablePath } from './chromium.ts';

const takes = join(import.meta.dirname, '../../fixtures/takes');
/** A recording and what was played in it. */
export const wav = join(takes, 'demo.wav');
const sheet = join(takes, 'demo.sheet');

/** A browser for the tests of a file, a new profile of it for each, in which nothing may go wrong. */
export function libraryInBrowser() {
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

  return {
    myTakes,
    add,
    sayWhatWasPlayed,
    whatBecameOfThem,
    exported,
    privateFiles,
    profile: () => context,
    folder: () => folder,
    address: () => `http://127.0.0.1:${served.port}`,
  };
}
