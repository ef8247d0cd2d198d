import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { soundForReport } from '../../src/cli/sound-for-report.ts';
import { mp3Of } from '../../src/formats/write-mp3.ts';
import type { ReportSound } from '../../src/report/parts/listening.ts';
import { writeReport } from '../../src/report/write-report.ts';
import { smallTake } from '../charts/small-take.ts';
import { browserBundle, clientBundle, listeningBundle } from '../report/client-bundle.ts';
import { floatSource } from '../support/float-source.ts';
import { args, browserThere, executablePath } from './chromium.ts';
import { openedFile } from './opened-file.ts';

const rate = 44100;
const duration = 5;
const small = smallTake(6);
const advice = [{ code: 'taps-uneven', facts: { value: 2, low: 1, high: 3 }, strokes: [5] }];
const take = { ...small, advice, recording: { ...small.recording, duration } };

/** The take as a sound: noise that dies away from each onset, louder for accents. */
function played(): Float32Array {
  const samples = new Float32Array(duration * rate);
  take.strokes.time.forEach((time, stroke) => {
    const from = Math.round(time * rate);
    const level = stroke % 3 === 0 ? 0.6 : 0.15;
    for (let i = 0; i < 3000 && from + i < samples.length; i++)
      samples[from + i]! += level * Math.sin(i * i * 0.11) * Math.exp(-i / 400);
  });
  return samples;
}

/** Keeps what the page sends to its loudspeaker, by the time at which it is to sound. */
const keepBlocks = () => {
  const kept: { when: number; samples: number[] }[] = [];
  Object.assign(globalThis, { kept });
  const start = AudioBufferSourceNode.prototype.start;
  AudioBufferSourceNode.prototype.start = function (when = 0) {
    kept.push({ when, samples: Array.from(this.buffer?.getChannelData(0) ?? []) });
    start.call(this, when);
  };
};

const what = 'listening to a take in a browser';
describe.skipIf(!browserThere(what))(what, () => {
  let browser: Browser;
  let folder: string;

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'evenhand-listening-'));
    browser = await chromium.launch({ executablePath, args });
  });
  afterAll(async () => {
    await browser?.close();
    if (folder) rmSync(folder, { recursive: true });
  });

  async function opened(sound: ReportSound, use: (page: Page, faults: string[]) => Promise<void>) {
    const scripts = { clientScript: await clientBundle(), listeningScript: await listeningBundle() };
    const file = join(folder, 'report.html');
    writeFileSync(file, await writeReport(take, { ...scripts, sound, withImages: false }));
    await openedFile(browser, file, {}, use, keepBlocks);
  }

  const inside = async () => (await soundForReport(floatSource(rate, played()), take, 'a.html'))!.sound;

  /** Gaps from onset to onset, ms, in the next `seconds` that are sent to the loudspeaker. */
  async function nextGaps(page: Page, seconds: number): Promise<number[]> {
    type Kept = { kept: { when: number; samples: number[] }[] };
    await page.evaluate(() => (globalThis as unknown as Kept).kept.splice(0));
    await page.waitForFunction((wanted) => {
      const { kept } = globalThis as unknown as Kept;
      return kept.length > 0 && kept.at(-1)!.when - kept[0]!.when > wanted;
    }, seconds);
    const found = await page.evaluate((sampleRate) => {
      const stream = (globalThis as unknown as Kept).kept.flatMap(({ samples }) => samples);
      const peak = stream.reduce((most, s) => Math.max(most, Math.abs(s)), 0);
      const times: number[] = [];
      stream.forEach((sample, i) => {
        const time = i / sampleRate;
        // An MP3 sounds faintly for some milliseconds before an attack.
        if (Math.abs(sample) > 0.16 * peak && time - (times.at(-1) ?? -1) > 0.1) times.push(time);
      });
      return times;
    }, rate);
    // The first may have begun before.
    return found.slice(2).map((time, i) => 1000 * (time - found[i + 1]!));
  }

  it('sounds each block right behind the one before it, to the sample', async () => {
    const page = await browser.newPage();
    await page.addScriptTag({ content: await browserBundle('tests/browser/render-blocks.ts') });
    const { worst, before, compared } = await page.evaluate(() =>
      (
        globalThis as unknown as {
          renderBlocks(): Promise<{ worst: number; before: number; compared: number }>;
        }
      ).renderBlocks(),
    );
    await page.close();
    expect(compared).toBeGreaterThan(30_000);
    expect(Math.abs(before - Math.ceil(0.08 * rate))).toBeLessThanOrEqual(1);
    expect(worst).toBeLessThan(1e-4);
  });

  it('plays on, from a moment, and stops', async () => {
    await opened(await inside(), async (page, faults) => {
      expect(await page.locator('#sound').isVisible()).toBe(false);
      await page.click('#listen-play');
      const place = () => page.textContent('#listen-place');
      await page.waitForFunction(() => document.querySelector('#listen-place')!.textContent! > '0:00.5');
      await page.click('.advice button.moment');
      // Stroke 5 is in the second beat, which begins at 1.6 s.
      await page.waitForFunction(() => /beat 2/.test(document.querySelector('#listen-place')!.textContent!));
      expect(await place()).toMatch(/^0:0[12]\.\d {2}time 1, beat 2$/);
      await page.click('#listen-play');
      expect(await page.textContent('#listen-play')).toBe('▶ Play');
      const stopped = await place();
      await page.waitForTimeout(300);
      expect(await place()).toBe(stopped);
      expect(faults).toEqual([]);
    });
  });

  it('goes round a beat, as played, on the even places, and at half speed', async () => {
    await opened(await inside(), async (page, faults) => {
      await page.selectOption('#listen-round', 'beat');
      await page.click('.advice button.moment');
      // Deviations of the small take: 0, −6 and 4 ms; 200 ms from place to place.
      const asPlayed = await nextGaps(page, 2.5);
      const cycle = (times: readonly number[], first: number) => {
        const begin = times.findIndex((gap) => Math.abs(gap - first) < 1.5);
        return times.slice(begin, begin + 3).map(Math.round);
      };
      expect(cycle(asPlayed, 210)).toEqual([210, 196, 194]);
      await page.click('#listen-switch');
      expect(await page.textContent('#listen-said')).toBe('Now heard: your strokes on their even places.');
      expect(Math.max(...(await nextGaps(page, 2.5)).map((gap) => Math.abs(gap - 200)))).toBeLessThan(1);
      await page.check('#listen-half');
      const slow = await nextGaps(page, 3.5);
      expect(slow.length).toBeGreaterThan(4);
      expect(Math.max(...slow.map((gap) => Math.abs(gap - 400)))).toBeLessThan(1);
      expect(faults).toEqual([]);
    });
  });

  it("plays a file beside the report with the browser's own player", async () => {
    writeFileSync(join(folder, 'my take.mp3'), await mp3Of(floatSource(rate, played())));
    await opened({ place: 'beside', file: 'my take.mp3' }, async (page, faults) => {
      const time = () => page.$eval('#sound', (sound) => (sound as HTMLAudioElement).currentTime);
      await page.selectOption('#listen-round', 'beat');
      await page.click('.advice button.moment');
      await page.waitForTimeout(1500);
      // Round and round between 1.6 and 2.2 s; without going round it would be past 3 s by now.
      expect(await page.$eval('#sound', (sound) => (sound as HTMLAudioElement).paused)).toBe(false);
      expect(await time()).toBeGreaterThan(1.5);
      expect(await time()).toBeLessThan(2.5);
      expect(faults).toEqual([]);
    });
  });
});
