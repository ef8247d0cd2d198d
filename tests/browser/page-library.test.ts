import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openRecording } from '../../src/formats/open-recording.ts';
import { mp3Of } from '../../src/formats/write-mp3.ts';
import { programVersion } from '../../src/library/program-version.ts';
import { sha256Hex } from '../../src/library/sha256-hex.ts';
import { readTakeFile } from '../../src/library/take-file/read-take-file.ts';
import { gradingDigest } from '../../src/page/build/grading-digest.ts';
import { repository } from '../cli/built-program.ts';
import { browserThere } from './chromium.ts';
import { libraryInBrowser, wav } from './library-in-browser.ts';
import { scrolledTo } from './scrolled-to.ts';

describe.skipIf(!browserThere('the library in the browser'))('the library in the browser', () => {
  const { myTakes, add, exported, privateFiles, folder } = libraryInBrowser();

  it('keeps a take over a reload, opens it with its sound, exports it, takes it in again, deletes it for good', async () => {
    const page = await myTakes();
    expect(await add(page, [wav])).toEqual([expect.stringContaining('Graded and kept.')]);
    const hash = await sha256Hex(readFileSync(wav));
    expect(await privateFiles(page)).toEqual({ [hash]: readFileSync(wav).length });

    await page.reload();
    await page.locator('.take-row').waitFor();
    expect(await page.locator('.take-row').count()).toBe(1);
    expect(await page.locator('.take-row').textContent()).toMatch(
      /Mirelle, week 7: the accent walks.*100\sBPM.*84, nearly there.*Evenness 94/,
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
    await scrolledTo(page.getByRole('button', { name: /^Export$/ }));
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
    // The same grader as the program's that is built along with the page.
    expect(read.takes[0]!.gradedWith).toBe(`${programVersion}+${await gradingDigest(repository)}`);

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
    const mp3 = join(folder(), 'phone.mp3');
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
});
