import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { TakeResult } from '../../src/core/result/take-result.ts';
import { answerCall } from '../../src/library/answer-call.ts';
import { keepTake } from '../../src/library/keep-take.ts';
import type { FolderLibrary } from '../../src/library/open-folder-library.ts';
import { addPerson } from '../../src/library/people.ts';
import { readPageFiles, withHome } from '../../src/server/page-files.ts';
import { madeTake } from '../library/made-take.ts';
import { withPage } from './opened-page.ts';

const built = join(import.meta.dirname, '../../dist/page');
const wav = readFileSync(join(import.meta.dirname, '../../fixtures/takes/demo.wav'));
const sheetText = readFileSync(join(import.meta.dirname, '../../fixtures/takes/demo.sheet'), 'utf8');

/** The calendar day so many days ago. */
export const day = (ago: number) => new Date(Date.now() - ago * 86_400_000).toISOString().slice(0, 10);

/** A take of the demo some days ago with its sound, one sample of which makes it another recording. */
export async function demo(ago: number) {
  const { default: sample } = await import('../../reports/samples/demo.json', { with: { type: 'json' } });
  const result = { ...sample, recording: { ...sample.recording, sha256: null } } as never as TakeResult;
  const bytes = Uint8Array.from(wav);
  bytes[bytes.length - 1] = ago;
  const recordedAt = Date.now() - ago * 86_400_000;
  return { result, recordedAt, day: day(ago), sheetText, audio: { name: `${ago}.wav`, bytes } };
}

export async function demoTake(library: FolderLibrary, ago: number, personId: string): Promise<string> {
  const { id } = await keepTake(library, { ...madeTake(ago, { personId }), ...(await demo(ago)) });
  return id;
}

export async function person(library: FolderLibrary, name: string): Promise<string> {
  const id = crypto.randomUUID();
  await addPerson(library.db, { id, name, role: 'student', note: '', createdAt: 0 });
  return id;
}

/** The page, served with a folder's library; nothing may go wrong in it. */
export const withServedLibrary = (
  library: FolderLibrary,
  view: string,
  use: (page: Page) => Promise<void>,
): Promise<void> =>
  withPage(
    {
      view: `#/${view}`,
      files: withHome(readPageFiles(built), library.folder),
      answer: (message) => answerCall(library, message),
    },
    async ({ page, faults }) => {
      await use(page);
      expect(faults).toEqual([]);
    },
  );

/** On a phone's screen, in one of the two schemes: what page-views holds every view to while it is empty. */
export async function readable(page: Page, colorScheme: 'light' | 'dark'): Promise<void> {
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
