import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parseSheet } from '../../src/core/exercise/parse-sheet.ts';
import { writeMusicXml } from '../../src/formats/music-xml/write-music-xml.ts';
import { browserThere } from './chromium.ts';
import { withPage } from './opened-page.ts';

describe.skipIf(!browserThere('sheets on the page'))('sheets on the page', () => {
  let folder: string;
  const file = (name: string, contents: string): string => {
    const path = join(folder, name);
    writeFileSync(path, contents);
    return path;
  };
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'evenhand-sheets-'));
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('are text or a score, and what is neither is told', async () => {
    const parsed = parseSheet(
      'title: Week 7\ntempo: 96\n>RLR >LRL ; name: On one\nRL>R LR>L ; name: On three\n',
    );
    if (!parsed.ok) throw new Error('a plain sheet');
    const score = writeMusicXml(parsed.sheet);
    await withPage({}, async ({ page, faults }) => {
      const open = (path: string) => page.setInputFiles('.sheet-file input[type=file]', path);
      await page.getByText('A sheet', { exact: true }).click();
      await open(file('week-7.musicxml', score));
      await page.getByText('week-7.musicxml').waitFor();
      for (const text of ['Week 7', 'On one', 'On three']) await page.getByText(text).first().waitFor();
      expect(await page.locator('.sheet-file .fault').textContent()).toBe('');

      await open(file('bare.musicxml', score.replaceAll(/<technical>.*?<\/technical>/g, '')));
      await page.getByText('No hand is written at 12 strokes').waitFor();

      await open(file('page.xml', '<html/>'));
      await page.getByText('no MusicXML score').waitFor();
      expect(await page.getByText('bare.musicxml').count()).toBe(1);

      await open(file('noise.sheet', '\u0000\u0001'));
      await page.getByText('"noise.sheet" is no sheet').waitFor();
      await open(file('plain.sheet', '>RLR >LRL ; name: Plain\n'));
      await page.getByText('plain.sheet').waitFor();
      expect(faults).toEqual([]);
    });
  });
});
