import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { writeReport } from '../../src/report/write-report.ts';
import { args, executablePath } from '../browser/chromium.ts';
import { smallTake } from '../charts/small-take.ts';
import { restless } from '../report/restless.ts';
import { markdownTable } from './markdown-table.ts';

/**
 * How long a report takes to open, by its strokes: from asking for the file until every picture is drawn, the middle of
 * three times, beside an empty page. Prints a table; `npm run build` first.
 */
const strokes = [72, 2000, 20_000];
const again = 3;

const folder = mkdtempSync(join(tmpdir(), 'evenhand-opening-'));
const browser = await chromium.launch({ executablePath, args });
const middle = (values: number[]) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;

async function opened(path: string): Promise<{ shown: number; drawn: number }> {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  await page.goto(pathToFileURL(path).href, { waitUntil: 'load' });
  // The report's policy lets nothing be evaluated but what is asked for at once.
  const look = () =>
    page.evaluate(() => {
      const all = document.querySelectorAll('figure[data-chart]').length;
      const [navigation] = performance.getEntriesByType('navigation') as PerformanceNavigationTiming[];
      return {
        done: document.querySelectorAll('figure.drawn').length === all,
        shown: navigation!.domContentLoadedEventEnd,
        drawn: performance.now(),
      };
    });
  let times = await look();
  for (let tries = 0; !times.done; tries++) {
    if (tries > 3000) throw new Error('the pictures were never drawn');
    times = await look();
  }
  await page.close();
  return times;
}

try {
  const rows: string[][] = [];
  const empty = join(folder, 'empty.html');
  writeFileSync(empty, '<!doctype html><title>empty</title>');
  for (const count of strokes) {
    const path = join(folder, `${count}.html`);
    const html = await writeReport(restless(smallTake(Math.floor(count / 3))));
    writeFileSync(path, html);
    const [own, nothing] = [[] as { shown: number; drawn: number }[], [] as number[]];
    for (let i = 0; i < again; i++) {
      own.push(await opened(path));
      nothing.push((await opened(empty)).drawn);
    }
    console.error(`${count} strokes: ${own.map(({ drawn }) => drawn.toFixed(0)).join(', ')} ms`);
    rows.push([
      String(count),
      (Buffer.byteLength(html) / 1000).toFixed(0),
      middle(own.map(({ shown }) => shown)).toFixed(0),
      middle(own.map(({ drawn }) => drawn)).toFixed(0),
      middle(nothing).toFixed(0),
    ]);
  }
  console.log(
    markdownTable(['strokes', 'kB', 'shown, ms', 'all pictures drawn, ms', 'an empty page, ms'], rows),
  );
} finally {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
}
