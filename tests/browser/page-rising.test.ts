import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { browserThere } from './chromium.ts';
import { withPage } from './opened-page.ts';
import { writeRisingMicrophone } from './rising-microphone.ts';

const folder = mkdtempSync(join(tmpdir(), 'rising-'));
afterAll(() => rmSync(folder, { recursive: true }));

describe.skipIf(!browserThere('a take whose tempo rises'))('a take whose tempo rises, on the page', () => {
  it('is chosen, ends by itself where the player stops, and says at which tempo each part breaks', async () => {
    const wav = join(folder, 'rising.wav');
    // Four tempos in nine seconds, then nothing. They are near each other, as this player doesn't hear the click.
    writeRisingMicrophone(wav, { from: 200, to: 230, step: 5 }, { fall: { kind: 'stops' }, from: 4 });
    const switches = [
      '--use-fake-ui-for-media-stream',
      '--use-fake-device-for-media-stream',
      `--use-file-for-fake-audio-capture=${wav}%noloop`,
    ];
    await withPage({ switches }, async ({ page, faults }) => {
      await page.getByText('My own').click();
      await page.locator('#own-text').fill('>RLR >LRL');
      await page.getByText('Faster and faster').click();
      await page.getByRole('textbox', { name: 'First tempo' }).fill('200');
      await page.getByRole('textbox', { name: 'Last tempo' }).fill('230');
      await page.getByRole('textbox', { name: 'Each time faster by' }).fill('5');
      await page.getByRole('button', { name: 'Play and record' }).click();
      await page.getByText('tempo 2 of 7').waitFor();
      await page.getByRole('alert').getByText('You stopped at 220.').waitFor();
      await page.getByText('The take ends in').waitFor();
      // Nobody says no.
      await page.locator('.result-verdict').waitFor();
      expect(await page.locator('.result-verdict').textContent()).toContain(
        'Nothing broke in the 4 of 7 tempos',
      );
      await page.getByText('The take ends after 4 of 7 tempos.').waitFor();
      const parts = await page.locator('.breaking-answer dt').allTextContents();
      expect(parts).toContain('Evenness');
      const evenness = await page.locator('.breaking-answer div', { hasText: 'Evenness' }).textContent();
      expect(evenness).toMatch(/(did not break up to|breaks at about|broken at) 2\d\d/);
      await page.getByRole('link', { name: 'Kept in My takes' }).waitFor();
      expect(faults).toEqual([]);
    });
  });
});
