import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import axe from 'axe-core';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { keepStudio } from '../../fixtures/studio/keep-studio.ts';
import { students } from '../../fixtures/studio/students.ts';
import { takePairHtml } from '../../src/cli/weeks/compare-pages.ts';
import { lessonHtml, lessonsHtml } from '../../src/cli/weeks/lesson-html.ts';
import { lessonOf } from '../../src/library/lesson.ts';
import { listTakes } from '../../src/library/list-takes.ts';
import { openFolderLibrary } from '../../src/library/open-folder-library.ts';
import { readTake } from '../../src/library/read-take.ts';
import { likeMoment, type PairSound, pairVolumes } from '../../src/report/weeks/pair-sound.ts';
import { args, browserThere, executablePath } from './chromium.ts';
import { openedFile } from './opened-file.ts';

const there = browserThere('pages on several takes in a browser');
const lastDay = '2026-06-01';
/** The last weeks of two short lines; the two newest takes have sound. */
const student = {
  ...students.find(({ name }) => name.startsWith('Tomas'))!,
  missedWeeks: [0, 1, 2, 3, 4, 5, 6, 7, 8],
};

describe.skipIf(!there)('pages on several takes in a browser', () => {
  let browser: Browser;
  let folder: string;
  const pages = ['two-takes.html', 'lesson.html', 'lessons.html'] as const;

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'evenhand-weeks-'));
    const library = await openFolderLibrary(join(folder, 'library'));
    try {
      await keepStudio(library, { lastDay, who: [student] });
      const { takes } = await listTakes(library.db, { limit: 2 });
      const [second, first] = await Promise.all(takes.map(({ id }) => readTake(library.db, id)));
      const lesson = await lessonOf(library.db, {
        personId: student.id,
        since: '2026-05-20',
        today: lastDay,
      });
      const write = (name: (typeof pages)[number], html: string) => writeFileSync(join(folder, name), html);
      write('two-takes.html', await takePairHtml(library, first!, second!));
      write('lesson.html', await lessonHtml(library, student.name, lesson));
      write('lessons.html', await lessonsHtml('2026-05-20', lastDay, [{ player: student.name, lesson }]));
    } finally {
      await library.close();
    }
    browser = await chromium.launch({
      executablePath,
      args: [...args, '--autoplay-policy=no-user-gesture-required'],
    });
  }, 120_000);

  afterAll(async () => {
    await browser?.close();
    if (folder) rmSync(folder, { recursive: true });
  });

  const opened = (
    name: (typeof pages)[number],
    options: BrowserContextOptions,
    use: (page: Page, faults: string[]) => Promise<void>,
  ) => openedFile(browser, join(folder, name), options, use);

  const sounds = (page: Page) =>
    page.$$eval('audio', (all) =>
      (all as HTMLAudioElement[]).map(({ paused, currentTime, volume }) => ({ paused, currentTime, volume })),
    );

  it('switches from one take to the same beat of the other and back, and makes them equally loud', () =>
    opened('two-takes.html', {}, async (page, faults) => {
      const shared = JSON.parse((await page.textContent('#pair-sound'))!) as PairSound;
      await page.locator('#pair-controls').waitFor();
      await page.waitForFunction(() =>
        [...document.querySelectorAll('audio')].every(({ readyState }) => readyState >= 2),
      );
      const begun = shared.beats[0][4]! + 0.1;
      await page.evaluate(async (time) => {
        const first = document.querySelector('audio')!;
        first.currentTime = time;
        await first.play();
      }, begun);
      await page.click('#pair-switch');
      await page.waitForFunction(() => document.querySelectorAll('audio')[1]!.currentTime > 0);
      const [first, second] = await sounds(page);
      expect([first!.paused, second!.paused]).toEqual([true, false]);
      // It goes on playing while it is asked, so it lies a little after the place it was set to.
      const place = likeMoment(shared, 0, first!.currentTime);
      expect(second!.currentTime).toBeGreaterThan(place - 0.05);
      expect(second!.currentTime).toBeLessThan(place + 3);
      expect(await page.textContent('#pair-said')).toContain('You hear the second take');

      await page.click('#pair-switch');
      const back = await sounds(page);
      expect(back.map(({ paused }) => paused)).toEqual([false, true]);
      const before = likeMoment(shared, 1, back[1]!.currentTime);
      expect(Math.abs(back[0]!.currentTime - before)).toBeLessThan(3);
      // A take that is begun by its own button silences the other.
      await page.evaluate(() => document.querySelectorAll('audio')[1]!.play());
      await page.waitForFunction(() => document.querySelectorAll('audio')[0]!.paused);

      await page.check('#pair-matched');
      const matched = pairVolumes(shared);
      for (const [side, { volume }] of (await sounds(page)).entries())
        expect(volume).toBeCloseTo(matched[side]!, 2);
      await page.uncheck('#pair-matched');
      expect((await sounds(page)).map(({ volume }) => volume)).toEqual([1, 1]);
      expect(faults).toEqual([]);
    }));

  it('plays the two weakest lines of a lesson, each a stretch of its take', () =>
    opened('lesson.html', { javaScriptEnabled: true }, async (page, faults) => {
      const lengths = await page.waitForFunction(() => {
        const all = [...document.querySelectorAll('audio')].map(({ duration }) => duration);
        return all.length > 0 && all.every((one) => one > 0) ? all : false;
      });
      const seconds = await lengths.jsonValue();
      expect(seconds).toHaveLength(2);
      // Eight times two beats at 84 BPM, and a little around.
      for (const length of seconds as number[]) {
        expect(length).toBeGreaterThan(10);
        expect(length).toBeLessThan(14);
      }
      expect(faults).toEqual([]);
    }));

  it.each(pages)('%s fits a phone and a desk, by day and by night, and every reader', async (name) => {
    for (const [width, colorScheme] of [
      [360, 'light'],
      [1440, 'dark'],
    ] as const)
      await opened(name, { viewport: { width, height: 800 }, colorScheme, bypassCSP: true }, async (page) => {
        const { scrollWidth, clientWidth } = await page.evaluate(() => {
          const { scrollWidth, clientWidth } = document.documentElement;
          return { scrollWidth, clientWidth };
        });
        expect(scrollWidth, `${width} px`).toBeLessThanOrEqual(clientWidth);
        await page.evaluate(axe.source);
        const { violations } = await page.evaluate(() =>
          (window as unknown as { axe: typeof axe }).axe.run(document),
        );
        expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
      });
  });

  it.each(pages)('%s holds all it says without scripts, and on paper no players', (name) =>
    opened(name, { javaScriptEnabled: false }, async (page) => {
      const figures = await page.locator('figure').count();
      expect(await page.locator('figure img').count()).toBe(figures);
      for (const image of await page.locator('figure img').all()) expect(await image.isVisible()).toBe(true);
      for (const canvas of await page.locator('figure canvas').all())
        expect(await canvas.isVisible()).toBe(false);
      for (const audio of await page.locator('audio').all())
        expect(await audio.getAttribute('controls')).not.toBeNull();
      if (name === 'two-takes.html') expect(await page.locator('#pair-controls').isVisible()).toBe(false);
      await page.emulateMedia({ media: 'print' });
      for (const audio of await page.locator('audio').all()) expect(await audio.isVisible()).toBe(false);
    }),
  );
});
