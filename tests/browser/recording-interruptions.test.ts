import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { encodeWav } from '../../fixtures/generator/wav-file.ts';
import { browserThere } from './chromium.ts';
import type { RecordingInPage } from './recording-page/main.ts';
import { recordingPage, samplesOf } from './recording-page.ts';
import { withMicrophone } from './with-microphone.ts';

const rate = 44100;
const sheetText = 'tempo: 120\n>RLR >LRL ; times: 8';

/** Something that hums in the place. */
const hum = (size: number) => Float32Array.from({ length: 3 * rate }, (_, n) => size * Math.sin(n * 0.05));

declare const recording: RecordingInPage;

const what = 'a recording that is interrupted, in a browser';
describe.skipIf(!browserThere(what))(what, () => {
  let page: Page;
  let context: BrowserContext;
  let served: Awaited<ReturnType<typeof recordingPage>>;
  let folder: string;

  const start = async (input: 'microphone' | 'loop' = 'microphone') => {
    if (input === 'microphone') await page.evaluate((r) => recording.open(r), rate);
    else await page.evaluate((r) => recording.loop(r, 1000, -12), rate);
    if (input === 'loop') expect((await page.evaluate(() => recording.calibrate())).state).toBe('measured');
    await page.evaluate((text) => recording.start(text), sheetText);
    await page.waitForTimeout(1200);
  };
  const stop = async () => {
    const take = await page.evaluate(() => recording.stop(true));
    return {
      ...take,
      seconds: samplesOf(take.samples).length / rate,
      codes: take.troubles.map(({ code }) => code),
    };
  };

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'evenhand-interrupted-'));
    writeFileSync(join(folder, 'tone.wav'), encodeWav(hum(0.002), rate));
    writeFileSync(join(folder, 'loud.wav'), encodeWav(hum(0.05), rate));
    served = await recordingPage();
    context = await withMicrophone(join(folder, 'profile'), join(folder, 'tone.wav'));
  }, 60_000);
  beforeEach(async () => {
    page = await context.newPage();
    await page.goto(served.url);
  });
  afterAll(async () => {
    await context?.close();
    served?.close();
    if (folder) rmSync(folder, { recursive: true, force: true });
  });

  it('ends where the device takes the sound away, and says so', async () => {
    await start();
    await page.evaluate(() => recording.suspend());
    await page.waitForTimeout(700);
    const take = await stop();
    expect(take.codes).toContain('interrupted');
    expect(take.warnings.map(({ code }) => code)).toEqual(['recording-cut-short']);
    expect(take.seconds).toBeGreaterThan(0.9);
    expect(take.seconds).toBeLessThan(1.8);
    expect(take.safe).toBe(true);
  });

  it('marks a stretch in which the device muted the microphone', async () => {
    await start();
    await page.evaluate(() => recording.muteFor(400));
    await page.waitForTimeout(500);
    const take = await stop();
    expect(take.codes).toEqual(['microphone-muted']);
    expect(take.gaps).toHaveLength(1);
    expect(take.gaps[0]!.frames / rate).toBeGreaterThan(0.3);
    expect(take.gaps[0]!.frames / rate).toBeLessThan(0.9);
  });

  it('goes on out of sight, and notes it', async () => {
    await start();
    await page.evaluate(() => recording.hide());
    await page.waitForTimeout(500);
    const take = await stop();
    expect(take.codes).toEqual(['page-hidden']);
    expect(take.warnings).toEqual([]);
    expect(take.seconds).toBeGreaterThan(1.5);
  });

  it('says nothing of ahead or behind once the output was switched', async () => {
    await start('loop');
    await page.evaluate(() => recording.switchOutput());
    await page.waitForTimeout(500);
    const take = await stop();
    expect(take.codes).toContain('output-changed');
    expect(take.codes).not.toContain('interrupted');
    expect(take.playedClick).toMatchObject({ calibrated: false });
    expect(take.clickTimes).toBeNull();
  });

  it('warns of a noisy place before the first click', async () => {
    const loud = await withMicrophone(join(folder, 'loud'), join(folder, 'loud.wav'));
    try {
      page = await loud.newPage();
      await page.goto(served.url);
      await start();
      const take = await stop();
      expect(take.codes).toEqual(['noisy']);
      expect(take.troubles[0]!.at).toBeLessThan(1);
    } finally {
      await loud.close();
    }
  });

  it('goes on in memory where there is no room for a copy', async () => {
    const session = await context.newCDPSession(page);
    const { origin } = new URL(served.url);
    await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 60_000 });
    await start();
    await page.waitForTimeout(1200);
    const take = await stop();
    expect(take.codes).toContain('storage-full');
    expect(take.safe).toBe(false);
    expect(take.gaps).toEqual([]);
    expect(take.seconds).toBeGreaterThan(2);
    await session.send('Storage.overrideQuotaForOrigin', { origin });
    expect(await page.evaluate(() => recording.troubles.map(({ sentence }) => sentence).join())).toContain(
      'no room left',
    );
  });
});
