import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { browserThere } from './chromium.ts';
import { withPage } from './opened-page.ts';
import { expectAgreement, gradedHere, hears, keptRecordings, shownResult, takes } from './recorded-take.ts';

async function chooseOwn(page: Page, text: string): Promise<void> {
  await page.getByText('My own').click();
  await page.locator('#own-text').fill(text);
}

const own = '>RLR >LRL ; tempo: 144 ; times: 9';

describe.skipIf(!browserThere('a take on the page'))('a take on the page', () => {
  it('is played, recorded, graded as the command line grades it, and kept', async () => {
    await withPage({ switches: hears('accent-one') }, async ({ page, faults }) => {
      await chooseOwn(page, own);
      await page.getByRole('button', { name: 'Play and record' }).click();
      await page.getByRole('button', { name: 'Stop' }).waitFor();
      await page.locator('.meter-track').waitFor();
      expect(await page.locator('.heard').count()).toBe(0);
      // The rendered take lasts 8.2 s.
      await page.waitForTimeout(9500);
      const stopped = Date.now();
      await page.keyboard.press('Space');
      await page.locator('.result-verdict').waitFor();
      const verdictAfter = Date.now() - stopped;
      console.info(`From stopping to the verdict: ${verdictAfter} ms`);
      // Under a second on a machine of its own; ten times that where many things run at once.
      expect(verdictAfter).toBeLessThan(10_000);
      await page.locator('iframe.report').waitFor();
      await page.getByRole('link', { name: 'Kept in My takes' }).waitFor();

      const shown = await shownResult(page);
      expectAgreement(shown, gradedHere(readFileSync(join(takes, 'accent-one.wav'))));
      const [recording] = await keptRecordings(page);
      const again = gradedHere(recording!);
      expectAgreement(shown, again);
      expect(again.strokes.time.length).toBe(shown.strokes.time.length);
      again.strokes.time.forEach((time, i) => {
        expect(time).toBeCloseTo(shown.strokes.time[i]!, 6);
      });

      // The report works where it is shown: its pictures are drawn, under both policies.
      const report = page.frameLocator('iframe.report');
      await report.locator('figure.drawn').first().waitFor();
      await report.locator('#listening').waitFor();
      expect(faults).toEqual([]);
    });
  });

  it('says what to do when the microphone may not be used', async () => {
    await withPage(
      { switches: ['--use-fake-device-for-media-stream'], permissions: [] },
      async ({ page }) => {
        await page.getByRole('button', { name: 'Play and record' }).click();
        await page.getByRole('alert').getByText('may not use the microphone').waitFor();
        await page.getByRole('button', { name: 'Back' }).click();
        await page.getByRole('button', { name: 'Play and record' }).waitFor();
      },
    );
  });

  it('begins with the space bar, asks for a guess first where that is wanted, and tells the truth after', async () => {
    await withPage({ switches: hears('accent-one') }, async ({ page }) => {
      await chooseOwn(page, own);
      await page.getByText('Let me guess').click();
      await page.locator('details.click summary').click();
      await page.getByText('Show the strokes heard').click();
      await page.getByLabel('Silent bars').selectOption('holding');
      await page.locator('main').focus();
      await page.keyboard.press('PageDown');
      await page.getByRole('button', { name: 'Stop' }).waitFor();
      // Four beats at 144 are counted in and eight played; then the click is silent for a bar.
      await page.getByText('The click is silent: keep the beat.').waitFor();
      await page.waitForTimeout(4500);
      const heard = Number(/\d+/.exec((await page.locator('.heard figcaption').textContent())!)![0]);
      expect(heard).toBeGreaterThan(45);
      expect(heard).toBeLessThan(60);
      await page.keyboard.press('Enter');
      await page.getByRole('heading', { name: 'What do you think?' }).waitFor();
      expect(await page.locator('.result-verdict').count()).toBe(0);
      await page.getByLabel('The tempo, from start to end').selectOption('rushed');
      await page.getByRole('button', { name: 'Show me' }).click();
      expect(await page.locator('.guess-answer').textContent()).toContain('you said it got faster; it held.');
      // One silence tells nothing sure of how a beat wanders: it takes three.
      await page.getByText(/^In the one silence of this take, 4\sbeats, .* It takes 3 silences/).waitFor();
      await page.locator('iframe.report').waitFor();
      const outcome = (await shownResult(page)).measures.find(({ id }) => id === 'silent-wander')!.outcome;
      expect(outcome).toMatchObject({ state: 'not-measurable', reason: { code: 'too-few-silences' } });
      await page.getByText('Your guesses so far').click();
      await page.getByText('Tempo: right in 0 of 1 guess').waitFor();
    });
  });

  it('is found again after its tab was closed in the middle, graded and kept, and then no more', async () => {
    await withPage({ switches: hears('accent-one') }, async ({ page, context, address }) => {
      await chooseOwn(page, own);
      await page.getByRole('button', { name: 'Play and record' }).click();
      await page.getByRole('button', { name: 'Stop' }).waitFor();
      await page.waitForTimeout(9000);
      await page.close();

      const later = await context.newPage();
      await later.goto(address);
      await later.getByRole('heading', { name: 'A recording is still here' }).waitFor();
      await later.getByText(/, (8|9|10) seconds/).waitFor();
      await later.getByRole('button', { name: 'Grade and keep it' }).click();
      await later.getByRole('link', { name: 'Kept in My takes' }).waitFor();
      await later.locator('iframe.report').waitFor();
      expectAgreement(await shownResult(later), gradedHere(readFileSync(join(takes, 'accent-one.wav'))));
      await later.goto(address);
      await later.getByRole('button', { name: 'Play and record' }).waitFor();
      await later.waitForTimeout(500);
      expect(await later.getByText('still here').count()).toBe(0);
    });
  });

  it('calls for rest after most of an hour: while playing, with the result, before the next take, and not once rested', async () => {
    await withPage({ switches: hears('accent-one') }, async ({ page }) => {
      // Time runs as it does, but can be sent ahead.
      await page.clock.install();
      await chooseOwn(page, own);
      await page.getByRole('button', { name: 'Play and record' }).click();
      await page.getByRole('button', { name: 'Stop' }).waitFor();
      const note = page.locator('.rest-note');
      await page.clock.fastForward('00:49:00');
      expect(await note.textContent()).toBe('');
      await page.clock.fastForward('00:02:00');
      const said = /most of an hour: ten minutes. rest/;
      await note.getByText(said).waitFor();
      await page.keyboard.press('Space');
      await page.locator('.result-verdict').waitFor();
      await note.getByText(said).waitFor();
      await page.getByRole('link', { name: 'Practise', exact: true }).click();
      await note.getByText(said).waitFor();
      await page.clock.fastForward('00:11:00');
      await expect.poll(() => note.textContent()).toBe('');
    });
  });

  it('remembers what was chosen', async () => {
    await withPage({}, async ({ page }) => {
      await chooseOwn(page, 'R>LR L>RL');
      await page.getByLabel('Beats per minute').fill('117');
      await page.getByRole('button', { name: 'Faster by 1' }).click();
      await page.reload();
      expect(await page.locator('#own-text').inputValue()).toBe('R>LR L>RL');
      expect(await page.getByLabel('Beats per minute').inputValue()).toBe('118');
    });
  });

  it('says at once what is wrong with notes, and lets nothing be played', async () => {
    await withPage({}, async ({ page }) => {
      await chooseOwn(page, 'RLX');
      await page.getByText('"X" means nothing here').waitFor();
      expect(await page.getByRole('button', { name: 'Play and record' }).isDisabled()).toBe(true);
    });
  });

  it('takes the tempo from beats on its button', async () => {
    await withPage({}, async ({ page }) => {
      const button = page.locator('button.tap');
      for (let beat = 0; beat < 7; beat++) {
        await button.dispatchEvent('pointerdown');
        await page.waitForTimeout(500);
      }
      const bpm = Number(await page.getByLabel('Beats per minute').inputValue());
      // Waiting takes a little longer than asked for.
      expect(bpm).toBeGreaterThan(95);
      expect(bpm).toBeLessThanOrEqual(121);
    });
  });
});
