import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { seeded } from '../../../fixtures/generator/random.ts';
import { aacByPackage } from '../../../src/formats/aac-by-package.ts';
import { alacByPackage } from '../../../src/formats/alac-by-package.ts';
import { memoryBytes } from '../../../src/formats/memory-bytes.ts';
import { openSound } from '../../../src/formats/open-sound.ts';
import { recordingFaultSentence } from '../../../src/formats/recording-fault-sentences.ts';
import { describeProgram } from '../../programs.ts';
import { codedForms } from './coded-forms.ts';
import { encoded, shortTake } from './coded-take.ts';
import { damaged } from './damage.ts';

/** Opens a file, and gives its seconds of sound, or 0 when a sentence says why there is none. */
async function secondsOf(file: Uint8Array): Promise<number> {
  const opened = await openSound(memoryBytes(file), { aac: aacByPackage, alac: alacByPackage });
  if (!opened.ok) {
    expect(recordingFaultSentence('take.m4a', opened.fault)).toMatch(/^"take\.m4a" [^\n]*\. [^\n]*\.$/);
    return 0;
  }
  const { source } = opened;
  expect(source.read(0, 0, source.length).every(Number.isFinite)).toBe(true);
  opened.close();
  return source.length / source.sampleRate;
}

describeProgram('ffmpeg', 'damaged files', (ffmpeg) => {
  it('are decoded as far as they go or named in a sentence, and end, in little memory', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'evenhand-'));
    const files = codedForms.map((form) => {
      const short = { ...form, options: [...form.options, '-t', '0.5'] };
      return readFileSync(encoded(ffmpeg, folder, short, shortTake));
    });
    rmSync(folder, { recursive: true });
    const random = seeded('damaged files');
    const before = process.memoryUsage().rss;
    let decoded = 0;
    for (let i = 0; i < 80; i++) {
      const seconds = await secondsOf(damaged(files[i % files.length]!, random));
      if (seconds > 0) decoded += 1;
      // Half a second of sound; an invented length would be minutes.
      expect(seconds, `damage ${i}`).toBeLessThan(60);
    }
    expect(decoded).toBeGreaterThan(20);
    expect(process.memoryUsage().rss - before).toBeLessThan(400e6);
    // Decoders start anew for each; a busy machine takes minutes.
  }, 240_000);
});

it('a WebM file that is junk to its end sends the demuxer round in no circle', async () => {
  const head =
    '1a45dfa39f4286810142f7810142f2810442f381084282847765626d42878104428581021853806701ffffffffffffff';
  const file = Uint8Array.from(Buffer.from(head + '00'.repeat(100), 'hex'));
  expect(await secondsOf(file)).toBe(0);
});
