import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { describeProgram } from '../../programs.ts';
import { temporaryFolder } from '../temporary-folder.ts';
import { compared, decodedByFfmpeg, encoded, openedFile, shortTake } from './coded-take.ts';

/** Differences in frames from ffmpeg's decoding, which knows what encoders add: sound comes later, is longer. */
interface Expected {
  readonly later: number;
  readonly longer: number;
  /** Largest difference of a sample. */
  readonly largest: number;
}
const same: Expected = { later: 0, longer: 0, largest: 0 };

describeProgram('ffmpeg', 'takes in files of other encoders', (ffmpeg) => {
  it.each<[string, string, readonly string[], Expected]>([
    ['FLAC, 16 bits', 'a.flac', [], same],
    ['FLAC, 24 bits, stereo', 'b.flac', ['-ac', '2', '-sample_fmt', 's32'], same],
  ])('%s', async (_, file, options, expected) => {
    const path = encoded(ffmpeg, temporaryFolder(), { file, options }, shortTake);
    const recording = await openedFile(path);
    const { source, notes, gaps } = recording;
    expect({ notes, gaps }).toEqual({ notes: [], gaps: [] });
    for (let channel = 0; channel < source.channels; channel++) {
      const ours = source.read(channel, 0, source.length);
      const { later, longer, largest } = compared(ours, decodedByFfmpeg(ffmpeg, path, channel));
      expect({ later, longer }).toEqual({ later: expected.later, longer: expected.longer });
      expect(largest).toBeLessThanOrEqual(expected.largest);
    }
    recording.close();
  });

  it('tells how much is missing of a file that was cut short', async () => {
    const folder = temporaryFolder();
    const whole = encoded(ffmpeg, folder, { file: 'a.flac', options: [] }, shortTake);
    const bytes = readFileSync(whole);
    const cut = join(folder, 'cut.flac');
    writeFileSync(cut, bytes.subarray(0, bytes.length / 2));
    const [all, part] = [await openedFile(whole), await openedFile(cut)];
    const missing = (all.source.length - part.source.length) / all.source.sampleRate;
    expect(missing).toBeGreaterThan(2);
    expect(part.notes).toEqual([
      { code: 'end-missing', facts: { missingSeconds: expect.closeTo(missing, 6) } },
    ]);
    const { length } = part.source;
    expect(part.source.read(0, 0, length)).toEqual(all.source.read(0, 0, length));
  });

  it('keeps the time of what follows a damaged frame, which is a gap', async () => {
    const folder = temporaryFolder();
    const whole = encoded(ffmpeg, folder, { file: 'a.flac', options: [] }, shortTake);
    const bytes = readFileSync(whole);
    const middle = bytes.length >> 1;
    bytes.fill(0x55, middle, middle + 40);
    const bad = join(folder, 'bad.flac');
    writeFileSync(bad, bytes);
    const [all, damaged] = [await openedFile(whole), await openedFile(bad)];
    expect(damaged.source.length).toBe(all.source.length);
    const [gap] = damaged.gaps;
    expect(damaged.gaps).toHaveLength(1);
    const expected = all.source.read(0, 0, all.source.length);
    expected.fill(0, gap!.at, gap!.at + gap!.frames);
    expect(damaged.source.read(0, 0, all.source.length)).toEqual(expected);
  });
});
