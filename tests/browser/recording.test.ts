import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { renderTake } from '../../fixtures/generator/render-take.ts';
import { scenario } from '../../fixtures/generator/scenarios.ts';
import { encodeWav } from '../../fixtures/generator/wav-file.ts';
import { browserThere } from './chromium.ts';
import type { RecordingInPage } from './recording-page/main.ts';
import { recordingPage, samplesOf } from './recording-page.ts';
import { shareAsPlayed, withMicrophone } from './with-microphone.ts';

const rate = 44100;
const sheetText = 'tempo: 120\n>RLR >LRL ; times: 8';

declare const recording: RecordingInPage;

const what = 'recording in a browser';
describe.skipIf(!browserThere(what))(what, () => {
  let page: Page;
  let context: BrowserContext;
  let served: Awaited<ReturnType<typeof recordingPage>>;
  let folder: string;
  let played: Float32Array;

  const open = async () => {
    context = await withMicrophone(join(folder, 'profile'), join(folder, 'take.wav'));
    page = await context.newPage();
    await page.goto(served.url);
  };
  const start = async () => {
    const opened = await page.evaluate((r) => recording.open(r), rate);
    await page.evaluate((text) => recording.start(text), sheetText);
    return opened;
  };
  const stop = async (release = true) => {
    const take = await page.evaluate((r) => recording.stop(r), release);
    return { ...take, samples: samplesOf(take.samples) };
  };

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'evenhand-microphone-'));
    played = renderTake({ ...scenario('clean-120', 1).spec, sampleRate: rate }).samples;
    // Longer than the tests: where Chromium begins the file again it doesn't keep to the sample.
    const longer = new Float32Array(played.length * 20);
    for (let i = 0; i < 20; i++) longer.set(played, i * played.length);
    writeFileSync(join(folder, 'take.wav'), encodeWav(longer, rate));
    served = await recordingPage();
    await open();
  }, 120_000);
  afterAll(async () => {
    await context?.close();
    served?.close();
    if (folder) rmSync(folder, { recursive: true, force: true });
  });

  it("gives the microphone's samples as they are, with nothing in between", { retry: 2 }, async () => {
    expect(await start()).toMatchObject({
      sampleRate: rate,
      settings: { echoCancellation: false, noiseSuppression: false, autoGainControl: false },
    });
    await page.waitForTimeout(3000);
    const take = await stop();
    expect(take.samples.length).toBeGreaterThan(2.8 * rate);
    // The device needs some hundredths of a second to begin.
    expect(shareAsPlayed(take.samples.subarray(0.1 * rate), played)).toBe(1);
    expect(take).toMatchObject({ gaps: [], warnings: [], safe: true, clickTimes: null });
    expect(take.playedClick).toMatchObject({ calibrated: false });
    expect((await page.evaluate(() => recording.recovered())).length).toBe(0);
  });

  it('marks a gap where frames are missing and keeps time', async () => {
    await start();
    await page.waitForTimeout(1000);
    await page.evaluate(() => recording.loseFor(300));
    await page.waitForTimeout(1000);
    const take = await stop();
    expect(take.gaps).toHaveLength(1);
    const { at, frames } = take.gaps[0]!;
    expect(frames / rate).toBeGreaterThan(0.2);
    expect(frames / rate).toBeLessThan(0.8);
    expect(at / rate).toBeGreaterThan(0.8);
    expect(take.samples.subarray(at, at + frames).every((sample) => sample === 0)).toBe(true);
    expect(take.samples.length).toBeGreaterThan(at + frames + 0.8 * rate);
    expect(take.troubles.map(({ code }) => code)).toContain('gap');
  });

  it('ends when the microphone goes away, keeps what there is and says so', async () => {
    await start();
    await page.waitForTimeout(1200);
    await page.evaluate(() => recording.endTrack());
    await page.waitForTimeout(800);
    const take = await stop();
    expect(take.samples.length / rate).toBeGreaterThan(1.1);
    expect(take.samples.length / rate).toBeLessThan(1.9);
    expect(take.warnings.map(({ code }) => code)).toEqual(['recording-cut-short']);
    expect(await page.evaluate(() => recording.troubles.map(({ sentence }) => sentence))).toContain(
      'The microphone went away, so the recording ended there. What was played until then is kept.',
    );
  });

  it.each(['page', 'browser'] as const)('finds a recording again after the %s was killed', async (killed) => {
    await start();
    await page.waitForTimeout(3000);
    const session = await context.newCDPSession(page);
    const gone = killed === 'browser' ? 'Browser.crash' : 'Page.crash';
    session.send(gone).catch(() => undefined);
    await page.waitForTimeout(500).catch(() => undefined);
    if (killed === 'browser') await open();
    else {
      page = await context.newPage();
      await page.goto(served.url);
    }
    const found = await page.evaluate(() => recording.recovered());
    expect(found.length).toBe(1);
    const [take] = found;
    expect(take).toMatchObject({ sheetText, name: 'Tuesday', sampleRate: rate, gaps: [] });
    const samples = samplesOf(take!.samples);
    expect(samples.length / rate).toBeGreaterThan(2.4);
    expect(shareAsPlayed(samples.subarray(0.1 * rate), played)).toBeGreaterThan(0.9);
    await page.evaluate(() => recording.removeAll());
    expect((await page.evaluate(() => recording.recovered())).length).toBe(0);
  });

  it('leaves alone what another tab is recording', async () => {
    await start();
    await page.waitForTimeout(1500);
    const other = await context.newPage();
    await other.goto(served.url);
    expect((await other.evaluate(() => recording.recovered())).length).toBe(0);
    await other.close();
    await stop();
  });

  // A machine that is too busy loses sound, and says so; that isn't what is looked at here.
  const busy = { retry: 2, timeout: 60_000 };
  it('measures the delay of its output to the half millisecond and puts clicks there', busy, async () => {
    const frames = 1873;
    await page.evaluate(([r, f]) => recording.loop(r!, f!, -12), [rate, frames]);
    const outcome = await page.evaluate(() => recording.calibrate());
    if (outcome.state !== 'measured') throw new Error(outcome.state);
    expect(Math.abs(outcome.latency - frames / rate)).toBeLessThan(0.0005);
    await page.evaluate((text) => recording.start(text), sheetText);
    await page.waitForTimeout(1500);
    await page.evaluate(() => recording.silence());
    await page.waitForTimeout(4000);
    const take = await stop();
    expect(take.troubles).toEqual([]);
    expect(take.warnings).toEqual([]);
    expect(take.playedClick).toMatchObject({ calibrated: true });
    // The clicks themselves are in the recording, and stop where another plan took over.
    const inside = take.clickTimes!.filter((time) => time < take.samples.length / rate - 0.1);
    const heard = inside.filter((time) => {
      const from = Math.round((time - 0.05) * rate);
      const later = take.samples
        .subarray(from, from + 0.15 * rate)
        .findIndex((sample) => Math.abs(sample) > 0.01);
      if (later >= 0) expect(Math.abs((from + later) / rate - time)).toBeLessThan(0.0008);
      return later >= 0;
    });
    expect(heard.length).toBeGreaterThanOrEqual(6);
    expect(heard.length).toBeLessThan(inside.length - 1);
    expect(heard).toEqual(inside.slice(0, heard.length));
  });
});
