import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { microphones } from '../../fixtures/generator/microphone.ts';
import { encodeWav } from '../../fixtures/generator/wav-file.ts';
import { proofPlan, renderProof } from '../../src/page/recording/proof/proof-plan.ts';
import { throughLoop } from '../page/recording/loop.ts';
import { browserThere } from './chromium.ts';
import type { RecordingInPage } from './recording-page/main.ts';
import { recordingPage } from './recording-page.ts';
import { withMicrophone } from './with-microphone.ts';

const rate = 44100;
declare const recording: RecordingInPage;

const proving = "a microphone's habits in a browser";
describe.skipIf(!browserThere(proving))(proving, () => {
  let served: Awaited<ReturnType<typeof recordingPage>>;
  let folder: string;
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'evenhand-proof-'));
    served = await recordingPage();
  }, 60_000);
  afterAll(() => {
    served?.close();
    if (folder) rmSync(folder, { recursive: true, force: true });
  });

  // What comes back is in the file, which begins with the microphone: the page takes a moment until it sends.
  it.each([
    ['gate', 'gating'],
    ['phone', 'obeyed'],
  ] as const)('with a %s is found to be %s', { retry: 2, timeout: 60_000 }, async (device, verdict) => {
    const sent = renderProof(proofPlan(), rate);
    const delayed = new Float32Array(sent.length + 2 * rate);
    delayed.set(sent);
    const wav = join(folder, `${device}.wav`);
    const back = throughLoop(delayed, rate, { delay: 1.4, noiseDb: -62, microphone: microphones[device] });
    writeFileSync(wav, encodeWav(back, rate));
    const context = await withMicrophone(join(folder, device), `${wav}%noloop`);
    try {
      const page = await context.newPage();
      await page.goto(served.url);
      await page.evaluate((r) => recording.open(r), rate);
      const proof = await page.evaluate(() => recording.prove());
      expect(proof).toMatchObject({ verdict });
      if (verdict === 'obeyed') expect(Math.abs(proof!.difference!.value - 20)).toBeLessThan(2);
    } finally {
      await context.close();
    }
  });
});
