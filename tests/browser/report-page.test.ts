import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import axe from 'axe-core';
import { parse } from 'csv-parse/sync';
import MIDIFile from 'midifile';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { TakeResult } from '../../src/core/result/take-result.ts';
import { writeReport } from '../../src/report/write-report.ts';
import { clientBundle, filesBundle } from '../report/client-bundle.ts';
import { exampleResult } from '../support/example-result.ts';
import { args, browserThere, executablePath } from './chromium.ts';
import { openedFile } from './opened-file.ts';

const sample = JSON.parse(
  readFileSync(new URL('../../reports/samples/demo.json', import.meta.url), 'utf8'),
) as TakeResult;

/** A sheet of sixteen lines, more than two sheets of paper hold. */
const long: TakeResult = {
  ...sample,
  sheet: {
    ...sample.sheet,
    lines: Array.from({ length: 16 }, (_, i) => ({ ...sample.sheet.lines[i % 3]!, label: `Line ${i + 1}` })),
  },
};

const hostile = ['</script><img src=x onerror=alert(1)>', '\u202Eesrever', '🥁👩🏽‍🎤', 'W'.repeat(10_000)];

const model: NonNullable<TakeResult['model']> = {
  name: 'model.wav',
  linesLeftOut: 0,
  measures: [
    {
      id: 'model-level',
      unit: 'dB',
      scope: { line: 0, partial: 1, accent: true },
      outcome: { state: 'measured', value: -2, low: -3, high: -1, strokes: 12, pointsAt: [] },
      band: 1,
      standing: 'below',
    },
  ],
};

describe.skipIf(!browserThere('the page of a report'))('the page of a report', () => {
  let browser: Browser;
  let folder: string;

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'evenhand-page-'));
    browser = await chromium.launch({ executablePath, args });
    const scripts = { clientScript: await clientBundle(), filesScript: await filesBundle() };
    const write = async (name: string, result: TakeResult) =>
      writeFileSync(join(folder, `${name}.html`), await writeReport(result, scripts));
    await write('sample', { ...sample, model });
    await write('long', long);
    const reason = { code: 'too-few-strokes-to-score', facts: { strokes: 9, needed: 24 } };
    await write('ungraded', exampleResult({ grading: { state: 'not-gradable', reason }, scores: null }));
    for (const [i, text] of hostile.entries()) {
      const lines = sample.sheet.lines.map((line) => ({ ...line, label: text }));
      const recording = { ...sample.recording, name: text };
      await write(`hostile-${i}`, { ...sample, recording, sheet: { title: text, lines }, model });
    }
  }, 60_000);

  afterAll(async () => {
    await browser?.close();
    if (folder) rmSync(folder, { recursive: true });
  });

  const opened = (
    name: string,
    options: BrowserContextOptions,
    use: (page: Page, faults: string[]) => Promise<void>,
  ) => openedFile(browser, join(folder, `${name}.html`), options, use);

  it("shows scores, what to do, what the take can't tell and the exercise without scrolling at 1440 × 900", async () => {
    await opened('sample', {}, async (page, faults) => {
      for (const id of ['scores', 'first', 'limits', 'exercise']) {
        const box = (await page.locator(`#${id}`).boundingBox())!;
        expect(box.y + box.height, id).toBeLessThanOrEqual(900);
      }
      expect(faults).toEqual([]);
    });
  });

  it.each([
    ['sample', 'light', 1440],
    ['sample', 'dark', 1440],
    ['sample', 'light', 360],
    ['sample', 'dark', 360],
    ['ungraded', 'dark', 360],
  ] as const)('has nothing that axe-core finds: %s, %s, %i px', async (name, colorScheme, width) => {
    await opened(name, { colorScheme, viewport: { width, height: 900 }, bypassCSP: true }, async (page) => {
      await page.$$eval('details', (all) => {
        for (const one of all) one.open = true;
      });
      await page.evaluate(axe.source);
      const found = await page.evaluate(() =>
        (window as unknown as { axe: typeof axe }).axe.run({ resultTypes: ['violations'] }),
      );
      const violations = found.violations.map(({ id, nodes }) => [id, nodes.slice(0, 3).map((n) => n.html)]);
      expect(violations).toEqual([]);
      expect(found.passes.length).toBeGreaterThan(10);
    });
  });

  it('draws its pictures for paper in light colours, and then for a dark screen again', async () => {
    await opened('sample', { colorScheme: 'dark' }, async (page) => {
      await page.locator('figure.drawn canvas').first().waitFor();
      /** Points of a picture in the colour of its words. */
      const inks = () =>
        page.evaluate(() => {
          const canvas = document.querySelector<HTMLCanvasElement>('figure.drawn canvas')!;
          const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
          const count = (r: number, g: number, b: number) => {
            let points = 0;
            for (let i = 0; i < data.length; i += 4)
              if (data[i] === r && data[i + 1] === g && data[i + 2] === b && data[i + 3] === 255) points++;
            return points;
          };
          return { light: count(0xec, 0xe8, 0xdf), dark: count(0x22, 0x26, 0x2b) };
        });
      const onScreen = await inks();
      expect(onScreen.light).toBeGreaterThan(100);
      expect(onScreen.dark).toBe(0);
      await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
      const onPaper = await inks();
      expect(onPaper.dark).toBeGreaterThan(100);
      expect(onPaper.light).toBe(0);
      await page.evaluate(() => dispatchEvent(new Event('afterprint')));
      expect(await inks()).toEqual(onScreen);
    });
  });

  it.each(['sample', 'long'])('prints on two pages: %s', async (name) => {
    await opened(name, {}, async (page) => {
      const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
      // ISO 32000-1, 7.7.3.3: every page is an object of type Page; Chromium writes them uncompressed.
      expect(pdf.match(/\/Type \/Page\b(?!s)/g)).toHaveLength(2);
    });
  });

  it('saves the four files, each of which another program reads', async () => {
    await opened('sample', { acceptDownloads: true }, async (page, faults) => {
      const saved = async (name: string) => {
        const [download] = await Promise.all([
          page.waitForEvent('download'),
          page.click(`button[data-file="${name}"]`),
        ]);
        expect(download.suggestedFilename()).toBe(name);
        return readFileSync((await download.path())!);
      };
      expect(JSON.parse((await saved('result.json')).toString())).toEqual({ ...sample, model });
      const rows = parse((await saved('strokes.csv')).toString(), { record_delimiter: '\r\n' });
      expect(rows).toHaveLength(sample.strokes.time.length + 1);
      const midi = await saved('strokes.mid');
      const notes = new MIDIFile(Uint8Array.from(midi).buffer)
        .getMidiEvents()
        .filter(({ subtype }) => subtype === 0x9);
      expect(notes).toHaveLength(sample.strokes.role.filter((role) => role === 'matched').length);
      const svg = await saved('exercise.svg');
      const blank = await page.context().newPage();
      const valid = await blank.evaluate(
        (text) =>
          new DOMParser().parseFromString(text, 'image/svg+xml').querySelector('parsererror') === null,
        svg.toString(),
      );
      expect(valid).toBe(true);
      expect(faults).toEqual([]);
    });
  });

  it('leads from a figure to how it is measured', async () => {
    await opened('sample', {}, async (page) => {
      const link = page.locator('#figures a.how').first();
      const target = (await link.getAttribute('href'))!;
      await link.focus();
      await page.keyboard.press('Enter');
      await page.waitForFunction(
        (id) => document.querySelector(':target') === document.querySelector(id),
        target,
      );
      expect((await page.locator(target).boundingBox())!.y).toBeLessThan(900);
    });
  });

  it.each(hostile.map((_, i) => i))('lives with names from outside (%i), at 360 px', async (i) => {
    await opened(`hostile-${i}`, { viewport: { width: 360, height: 800 } }, async (page, faults) => {
      const { scrollWidth, clientWidth } = await page.evaluate(() => {
        const { scrollWidth, clientWidth } = document.documentElement;
        return { scrollWidth, clientWidth };
      });
      expect(scrollWidth).toBeLessThanOrEqual(clientWidth);
      expect(await page.locator('img[src="x"]').count()).toBe(0);
      expect(faults).toEqual([]);
    });
  });
});
