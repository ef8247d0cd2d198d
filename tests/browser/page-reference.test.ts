import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { practisedPlayer } from '../../fixtures/generator/player.ts';
import { seeded } from '../../fixtures/generator/random.ts';
import { readSheet } from '../../fixtures/generator/read-sheet.ts';
import { renderTake } from '../../fixtures/generator/render-take.ts';
import { plainTake } from '../../fixtures/generator/take-spec.ts';
import { encodeWav } from '../../fixtures/generator/wav-file.ts';
import { browserThere } from './chromium.ts';
import { withPage } from './opened-page.ts';

const folder = mkdtempSync(join(tmpdir(), 'reference-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** s from one eight strokes to the next in what the microphone hears. */
const every = 2.6;

/** Writes eight strokes for each gain. */
function writeStrokes(path: string, gains: readonly number[]): void {
  const { slots } = readSheet('tempo: 300\nR R R R ; times: 2\n');
  const spec = { ...plainTake, player: practisedPlayer, bpm: 300, slots, seed: 5, leadSeconds: 0.2 };
  const { samples, sampleRate } = renderTake({ ...spec, tailSeconds: 0.5 });
  const quiet = seeded('quiet');
  const all = Float32Array.from(
    { length: Math.round((gains.length * every + 3) * sampleRate) },
    () => 0.0002 * quiet.normal(),
  );
  gains.forEach((gain, i) => {
    const at = Math.round((1.8 + i * every) * sampleRate);
    samples.forEach((sample, n) => {
      all[at + n]! += gain * sample;
    });
  });
  writeFileSync(path, encodeWav(all, sampleRate));
}

describe.skipIf(!browserThere('a same-set-up reference'))('a same-set-up reference, on the page', () => {
  it('is noted, and the next time says that levels compare', async () => {
    const wav = join(folder, 'strokes.wav');
    // Whenever the microphone is opened: both hands.
    writeStrokes(wav, [0.8, 0.8]);
    const switches = [
      '--use-fake-ui-for-media-stream',
      '--use-fake-device-for-media-stream',
      `--use-file-for-fake-audio-capture=${wav}%noloop`,
    ];
    await withPage({ switches, view: '#/microphone' }, async ({ page, faults }) => {
      let opened = 0;
      const open = async () => {
        await page.getByRole('button', { name: 'Open the microphone' }).click();
        opened = Date.now();
      };
      const hear = async (name: string, turn: number) => {
        await page.getByRole('button', { name }).click();
        await page.waitForTimeout(Math.max(0, opened + 1000 * (1.6 + (turn + 1) * every) - Date.now()));
        await page.getByRole('button', { name: /Stop/ }).click();
        await page.getByRole('button', { name: `${name} once more` }).waitFor();
      };
      await open();
      await hear('Right hand', 0);
      await page.getByText('✓ 8 strokes heard.').waitFor();
      await page.getByText('Now the left hand').waitFor();
      await hear('Left hand', 1);
      await page.getByText('Noted. The next time you play them here').waitFor();
      await page.reload();
      await open();
      await hear('Right hand', 0);
      await hear('Left hand', 1);
      const verdict = page.getByText(/^✓ As on .*: the strokes are as loud as then/);
      await verdict.waitFor();
      // A hand played once more begins a new reference: nothing is said until the other has been played, too.
      await page.getByRole('button', { name: 'Right hand once more' }).click();
      await page.getByRole('button', { name: 'Left hand', exact: true }).waitFor();
      expect(await verdict.count()).toBe(0);
      expect(faults).toEqual([]);
    });
  });
});
