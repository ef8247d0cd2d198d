/**
 * Time from the press that ends a take on the page to its verdict and its report: each take is recorded in real time from
 * a rendered file, in a browser of its own. `tsx tests/bench/stop-to-verdict.ts [takes] [s of the shortest] [of the longest]
 * [name=folder of a built page …]` writes reports/stop-to-verdict.md. Several pages are measured in turn, to be compared. What an
 * earlier run found is added where KEEP names a file for it; KIND takes one kind alone. Ten takes of one page last eight minutes.
 */
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { encodeWav } from '../../fixtures/generator/wav-file.ts';
import { median } from '../../src/core/stats/median.ts';
import { readPageFiles } from '../../src/server/page-files.ts';
import { withPage } from '../browser/opened-page.ts';
import { figure, markdownTable } from './markdown-table.ts';
import { type SpeedKind, speedTake, verdictKinds } from './speed-takes.ts';
import { type Moments, watchVerdict } from './watch-verdict.ts';

interface Row extends Moments {
  readonly page: string;
  readonly kind: string;
  readonly seconds: number;
  readonly load: number;
}

const [takes = 10, shortest = 30, longest = 60] = process.argv.slice(2, 5).map(Number);
const named = process.argv.slice(5).map((text) => text.split('=') as [string, string]);
const pages = named.length > 0 ? named : [['this page', 'dist/page'] as [string, string]];
const kinds = verdictKinds.filter((kind) => (process.env.KIND ?? kind) === kind);
const keep = process.env.KEEP;
const rows: Row[] =
  keep !== undefined && existsSync(keep) ? (JSON.parse(readFileSync(keep, 'utf8')) as Row[]) : [];
const before = rows.length / pages.length;
const folder = mkdtempSync(join(tmpdir(), 'verdict-'));
try {
  for (let i = 0; i < takes; i++) {
    const kind = kinds[(before + i) % kinds.length]!;
    const seconds = Math.round(shortest + ((longest - shortest) * i) / Math.max(1, takes - 1));
    for (const [page, built] of pages) {
      const load = loadavg()[0] ?? Number.NaN;
      const row = { page, kind, seconds, load, ...(await measured(kind, seconds, built)) };
      rows.push(row);
      console.warn(JSON.stringify(row));
    }
  }
} finally {
  rmSync(folder, { recursive: true });
}
if (keep !== undefined) writeFileSync(keep, JSON.stringify(rows));

const span = (values: readonly number[]) =>
  [Math.min(...values), median(values), Math.max(...values)].map((value) => figure(value, 0));
const table = [...new Set(rows.map(({ page }) => page))].map((page) => {
  const own = rows.filter((row) => row.page === page);
  return [
    page,
    `${own.length}`,
    ...span(own.map(({ verdict }) => verdict)),
    ...span(own.map(({ report }) => report)),
    figure(Math.min(...own.map(({ load }) => load)), 1),
    figure(Math.max(...own.map(({ load }) => load)), 1),
  ];
});
const times = ['shortest', 'median', 'longest'];
const lengths = rows.map(({ seconds }) => seconds);
writeFileSync(
  'reports/stop-to-verdict.md',
  `# From stopping to the verdict

Takes of ${Math.min(...lengths)} to ${Math.max(...lengths)} s (${verdictKinds.join(', ')} in turn) played and recorded on the page in real time, each in a new
browser whose microphone hears a rendered file; ms from the key that stops it to the verdict, and to the report. ${cpus().length} ×
${cpus()[0]?.model.trim()}; the machine's load of the minute before stands beside it, since others worked on it: the browser was run ahead of
them (\`chrt -r 1\`). Written by
\`tsx tests/bench/stop-to-verdict.ts\`.

${markdownTable(['page', 'takes', ...times.map((time) => `verdict, ${time}`), ...times.map((time) => `report, ${time}`), 'load from', 'to'], table)}

${markdownTable(
  ['page', 'kind', 'take, s', 'verdict, ms', 'report, ms', 'load'],
  rows.map(({ page, kind, seconds, verdict, report, load }) => [
    page,
    kind,
    `${seconds}`,
    `${verdict}`,
    `${report}`,
    figure(load, 1),
  ]),
)}
`,
);

async function measured(kind: SpeedKind, seconds: number, built: string): Promise<Moments> {
  const { samples, sampleRate, sheetText } = speedTake(kind, seconds);
  const wav = join(folder, 'take.wav');
  writeFileSync(wav, encodeWav(samples, sampleRate));
  const switches = [
    '--use-fake-ui-for-media-stream',
    '--use-fake-device-for-media-stream',
    `--use-file-for-fake-audio-capture=${wav}%noloop`,
  ];
  const [tempo, line] = sheetText.trim().split('\n') as [string, string];
  let moments: Moments | undefined;
  await withPage({ switches, files: readPageFiles(built) }, async ({ page }) => {
    // The compiler that runs this file names functions by a function of its own.
    await page.evaluate('globalThis.__name = (f) => f');
    await page.evaluate(watchVerdict);
    await page.getByText('My own').click();
    await page.locator('#own-text').fill(line.replace(/times: \d+/, `${tempo} ; times: 99`));
    await page.getByRole('button', { name: 'Play and record' }).click();
    await page.getByRole('button', { name: 'Stop' }).waitFor();
    await page.waitForTimeout(1000 * seconds);
    await page.keyboard.press('Space');
    await page.locator('iframe.report').waitFor({ timeout: 60_000 });
    moments = await page.evaluate(() => (globalThis as unknown as { told: Moments }).told);
  });
  return moments!;
}
