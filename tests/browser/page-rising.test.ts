import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { TempoRise } from '../../src/core/exercise/rising-sheet.ts';
import { browserThere } from './chromium.ts';
import { openPage } from './opened-page.ts';
import { writeRisingMicrophone } from './rising-microphone.ts';

const folder = mkdtempSync(join(tmpdir(), 'rising-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Whatever stands there whenever the microphone is opened is what it hears. */
const wav = join(folder, 'rising.wav');
const switches = [
  '--use-fake-ui-for-media-stream',
  '--use-fake-device-for-media-stream',
  `--use-file-for-fake-audio-capture=${wav}%noloop`,
];

async function playRise(page: Page, notation: string, repeats: number, rise: TempoRise): Promise<void> {
  await page.getByText('My own').click();
  await page.locator('#own-text').fill(notation);
  const fill = (name: string, value: number) => page.getByRole('textbox', { name }).fill(`${value}`);
  await fill('First tempo', rise.from);
  await fill('Last tempo', rise.to);
  await fill('Each time faster by', rise.step);
  await fill('Times at each tempo', repeats);
  await page.getByRole('button', { name: 'Play and record' }).click();
}

describe.skipIf(!browserThere('a take whose tempo rises'))('a take whose tempo rises, on the page', () => {
  let opened: Awaited<ReturnType<typeof openPage>>;
  beforeAll(async () => {
    opened = await openPage({ switches });
    const { page } = opened;
    // Time passes by itself, and can be passed over.
    await page.clock.install();
    await page.reload();
    await page.getByText('Faster and faster').click();
  });
  afterAll(() => opened?.close());

  it('is chosen, ends by itself where the player stops, and says at which tempo each part breaks', async () => {
    const { page, faults } = opened;
    // Four tempos in ten seconds, then nothing. They are near each other, as this player doesn't hear the page's click.
    const rise = { from: 240, to: 270, step: 5 };
    const player = { fall: { kind: 'stops' }, from: 4 } as const;
    writeRisingMicrophone(wav, { notation: '>RLR >LRL', repeats: 5, rise, player, clickDb: null });
    await playRise(page, '>RLR >LRL', 5, rise);
    await page.getByText('tempo 2 of 7').waitFor();
    await page.getByRole('alert').getByText('You stopped at 260.').waitFor();
    expect(await page.getByText('on top of most of your notes').count()).toBe(0);
    await page.getByText('The take ends in 5 …').waitFor();
    // Nobody says no.
    await page.clock.runFor(5000);
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

  it('says while it is played that clicks lie on most notes, and then ends only when it is told to', async () => {
    const { page, faults, address } = opened;
    const rise = { from: 150, to: 180, step: 10 };
    const player = { fall: { kind: 'none' }, from: 4 } as const;
    writeRisingMicrophone(wav, { notation: 'R >L R L', repeats: 2, rise, player, clickDb: -12 });
    await page.goto(address);
    await page.reload();
    await playRise(page, 'R >L R L', 2, rise);
    await page
      .getByRole('status')
      .getByText(
        "The microphone hears the click on top of most of your notes, so the page can't tell where it breaks",
      )
      .waitFor();
    await page.getByRole('button', { name: 'Stop' }).click();
    await page.locator('.result-verdict').waitFor();
    expect(faults).toEqual([]);
  });
});
