import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openRecording } from '../../src/formats/open-recording.ts';
import { writeAtomically } from '../../src/formats/write-atomically.ts';
import { type WavContents, writeWav } from '../../src/formats/write-wav.ts';
import { describeProgram } from '../programs.ts';
import { temporaryFolder } from './temporary-folder.ts';

const frames = 4801;
const [left, right] = [0.7, 0.3].map((peak) =>
  Float32Array.from({ length: frames }, (_, frame) => peak * Math.sin(frame / 17)),
) as [Float32Array, Float32Array];

function writeTake(folder: string, depth: WavContents['depth'] = 'float32'): string {
  const path = join(folder, 'from.wav');
  writeAtomically(path, writeWav({ channels: [left, right], sampleRate: 48000, depth }));
  return path;
}

/** Reads a file that another program made of the take and compares every sample. */
async function expectTake(path: string, tolerance: number): Promise<void> {
  const recording = await openRecording(path);
  if (!recording.ok) throw new Error(recording.fault.code);
  expect(recording.source).toMatchObject({ sampleRate: 48000, channels: 2, length: frames });
  for (const [channel, samples] of [left, right].entries()) {
    const read = recording.source.read(channel, 0, frames);
    const worst = read.reduce((most, sample, frame) => Math.max(most, Math.abs(sample - samples[frame]!)), 0);
    expect(worst).toBeLessThanOrEqual(tolerance);
  }
  recording.close();
}

describeProgram('ffmpeg', 'wave files of ffmpeg', (ffmpeg) => {
  const run = (args: string[]) => execFileSync(ffmpeg, ['-v', 'error', '-y', ...args]);

  it.each([
    ['pcm_u8', 1 / 128],
    ['pcm_s16le', 1 / 32768],
    ['pcm_s24le', 2 ** -23],
    ['pcm_s32le', 2 ** -24],
    ['pcm_f32le', 0],
    ['pcm_f64le', 0],
  ])('reads %s', async (codec, tolerance) => {
    const folder = temporaryFolder();
    const to = join(folder, 'to.wav');
    run(['-i', writeTake(folder), '-c:a', codec, to]);
    await expectTake(to, tolerance);
  });

  it('reads RF64', async () => {
    const folder = temporaryFolder();
    const to = join(folder, 'to.wav');
    run(['-i', writeTake(folder), '-c:a', 'pcm_s24le', '-rf64', 'always', to]);
    await expectTake(to, 2 ** -23);
  });

  it('reads what it writes to a pipe, with no length', async () => {
    const folder = temporaryFolder();
    const to = join(folder, 'to.wav');
    const piped = execFileSync(ffmpeg, [
      '-v',
      'error',
      '-i',
      writeTake(folder),
      '-c:a',
      'pcm_s16le',
      '-f',
      'wav',
      '-',
    ]);
    writeAtomically(to, piped);
    await expectTake(to, 1 / 32768);
    expect(await openRecording(to)).toMatchObject({ notes: [{ code: 'length-not-written' }] });
  });

  it.each(['pcm_alaw', 'pcm_mulaw', 'adpcm_ms', 'adpcm_ima_wav'])('names the coding of %s', async (codec) => {
    const folder = temporaryFolder();
    const to = join(folder, 'to.wav');
    run(['-i', writeTake(folder), '-c:a', codec, to]);
    const coding = {
      pcm_alaw: 'A-law',
      pcm_mulaw: 'µ-law',
      adpcm_ms: 'Microsoft ADPCM',
      adpcm_ima_wav: 'IMA ADPCM',
    }[codec];
    expect(await openRecording(to)).toMatchObject({
      ok: false,
      fault: { code: 'coding-unreadable', facts: { coding } },
    });
  });

  it.each(['au', 'w64'])('names a file of the kind %s', async (container) => {
    const folder = temporaryFolder();
    const to = join(folder, `to.${container}`);
    run(['-i', writeTake(folder), to]);
    const kind = container === 'w64' ? 'wave64' : container;
    expect(await openRecording(to)).toMatchObject({
      ok: false,
      fault: { code: 'not-a-recording', facts: { kind } },
    });
  });
});

describeProgram('sox', 'wave files of sox', (sox) => {
  it.each([
    ['8 bits', ['-b', '8', '-e', 'unsigned-integer'], 1 / 128],
    ['16 bits', ['-b', '16'], 1 / 32768],
    ['24 bits', ['-b', '24'], 2 ** -23],
    ['32 bits', ['-b', '32', '-e', 'signed-integer'], 2 ** -24],
    // Sox holds samples as 32-bit integers.
    ['32-bit floats', ['-b', '32', '-e', 'floating-point'], 2 ** -24],
    ['64-bit floats', ['-b', '64', '-e', 'floating-point'], 2 ** -31],
  ])('reads %s', async (_, options, tolerance) => {
    const folder = temporaryFolder();
    const to = join(folder, 'to.wav');
    execFileSync(sox, ['-D', writeTake(folder), ...options, to]);
    await expectTake(to, tolerance);
  });

  describe('reads what writeWav writes', () => {
    it.each([
      ['int16', 0],
      ['int24', 0],
      ['float32', 2 ** -24],
    ] as const)('%s', async (depth, tolerance) => {
      const path = writeTake(temporaryFolder(), depth);
      const raw = execFileSync(sox, [path, '-t', 'f32', '-'], { stdio: ['ignore', 'pipe', 'pipe'] });
      const theirs = new Float32Array(Uint8Array.from(raw).buffer);
      const recording = await openRecording(path);
      if (!recording.ok) throw new Error(recording.fault.code);
      expect(theirs).toHaveLength(2 * frames);
      const ours = [recording.source.read(0, 0, frames), recording.source.read(1, 0, frames)];
      expect(
        theirs.every((sample, index) => Math.abs(sample - ours[index % 2]![index >> 1]!) <= tolerance),
      ).toBe(true);
      recording.close();
    });
  });
});
