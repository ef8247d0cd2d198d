import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { gradeCommand } from '../../../src/cli/grade-command.ts';
import type { TakeResult } from '../../../src/core/result/take-result.ts';
import { mean } from '../../../src/core/stats/mean.ts';
import { memoryBytes } from '../../../src/formats/memory-bytes.ts';
import { openRecording } from '../../../src/formats/open-recording.ts';
import { openSound } from '../../../src/formats/open-sound.ts';
import { compareResults, movedBy } from '../../bench/compare-results.ts';
import { sampleSheetPath } from '../../cli/built-program.ts';
import { describeProgram } from '../../programs.ts';
import { temporaryFolder } from '../temporary-folder.ts';
import { codedForms } from './coded-forms.ts';
import {
  decodedByFfmpeg,
  encoded,
  largestDifference,
  openedFile,
  shortTake,
  takeName,
} from './coded-take.ts';

const ofTime = ['evenness', 'shape', 'steadiness', 'completeness'];

/** Grades a take as the command line does. */
async function graded(path: string): Promise<TakeResult> {
  let written = '';
  const output = { stdout: (text: string) => (written += text), stderr: () => undefined };
  await gradeCommand(output).parseAsync([path, '--sheet', sampleSheetPath(takeName), '--json'], {
    from: 'user',
  });
  return JSON.parse(written) as TakeResult;
}

describeProgram('ffmpeg', 'takes in files of other encoders', (ffmpeg) => {
  let wave: TakeResult;
  beforeAll(async () => {
    wave = await graded(shortTake);
  });

  describe.each(codedForms)('$name', (form) => {
    const folder = mkdtempSync(join(tmpdir(), 'evenhand-'));
    const path = join(folder, form.file);
    beforeAll(() => void encoded(ffmpeg, folder, form, shortTake));
    afterAll(() => rmSync(folder, { recursive: true }));

    it('tells how far decoding has come, never back, to its end', async () => {
      const shares: number[] = [];
      const recording = await openRecording(path, { told: (share) => shares.push(share) });
      if (!recording.ok) throw new Error(JSON.stringify(recording.fault));
      recording.close();
      // Plain samples that can be read at any place aren't decoded beforehand.
      if (/^PCM in (CAF|AIFF)$/.test(form.name)) return expect(shares).toEqual([]);
      expect(shares.at(-1)).toBeGreaterThan(0.85);
      if (form.name === 'AAC in M4A') expect(mean(shares)).toBeCloseTo(0.5, 1);
      expect(shares.every((share, i) => i === 0 || share >= shares[i - 1]!)).toBe(true);
    });

    it('decodes to what ffmpeg makes of it, without what its encoder added', async () => {
      const recording = await openedFile(path);
      const { source, notes, gaps } = recording;
      expect({ notes, gaps }).toEqual({ notes: [], gaps: [] });
      const theirs = decodedByFfmpeg(ffmpeg, path, 0, form.decoder);
      const ours = source.read(0, 0, source.length);
      expect(ours.length - theirs.length).toBe(form.longer ?? 0);
      // A strike moved by one frame would differ by tenths.
      expect(largestDifference(ours, theirs)).toBeLessThanOrEqual(form.largest);
      recording.close();
    });

    if (!form.graded) return;
    it('gets the grade of the wave file from the command line, within the intervals', async () => {
      const { points, figures, lost, gained, refused } = compareResults(wave, await graded(path));
      expect([lost, gained]).toEqual([0, 0]);
      for (const id of form.levelsChange ? ofTime : Object.keys(points))
        expect(Math.abs(points[id]!), id).toBeLessThan(3);
      if (form.levelsChange) return;
      expect(figures.length).toBeGreaterThan(80);
      expect(figures.filter((pair) => Math.abs(movedBy(pair)) > 1)).toEqual([]);
      expect(refused).toEqual([]);
    });
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

  it.each([
    ['a video without sound', 'a.mp4', ['-an', '-c:v', 'mpeg4'], 'no-sound-track'],
    ['a coding that is not read here', 'b.mkv', ['-c:a', 'ac3'], 'codec-unreadable'],
    ['too many channels', 'c.mov', ['-c:a', 'pcm_s16le', '-ac', '16'], 'too-many-channels'],
  ])('has a sentence for %s', async (_, file, options, code) => {
    const folder = temporaryFolder();
    const path = join(folder, file);
    const video = ['-f', 'lavfi', '-i', 'testsrc=size=64x48:rate=5', '-t', '1'];
    execFileSync(ffmpeg, ['-v', 'error', '-i', shortTake, ...video, ...options, path]);
    expect(await openRecording(path)).toMatchObject({ ok: false, fault: { code } });
  });

  it('says what to install where AAC can not be decoded', async () => {
    const form = codedForms.find(({ file }) => file === 'm.m4a')!;
    const bytes = readFileSync(encoded(ffmpeg, temporaryFolder(), form, shortTake));
    expect(await openSound(memoryBytes(bytes), {})).toEqual({
      ok: false,
      fault: { code: 'decoder-missing', facts: { codec: 'aac' } },
    });
  });
});
