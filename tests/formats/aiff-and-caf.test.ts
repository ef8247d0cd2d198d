import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { aiffLayout } from '../../src/formats/aiff-layout.ts';
import { bigEndianChunks } from '../../src/formats/big-endian-chunks.ts';
import type { Bytes } from '../../src/formats/bytes.ts';
import { cafParts } from '../../src/formats/caf-parts.ts';
import { decoderInfo } from '../../src/formats/coded/decoder-info.ts';
import { memoryBytes } from '../../src/formats/memory-bytes.ts';
import { openRecording } from '../../src/formats/open-recording.ts';
import { openSound } from '../../src/formats/open-sound.ts';
import { recordingFaultSentence } from '../../src/formats/recording-fault-sentences.ts';
import { describeProgram } from '../programs.ts';
import { cafOfAac } from './coded/caf-of-aac.ts';
import { compared, decodedByFfmpeg, largestDifference, openedFile, shortTake } from './coded/coded-take.ts';
import { temporaryFolder } from './temporary-folder.ts';

const written = (ffmpeg: string, file: string, options: readonly string[]): string => {
  const path = join(temporaryFolder(), file);
  execFileSync(ffmpeg, ['-v', 'error', '-i', shortTake, ...options, path]);
  return path;
};
const chunk = (id: string, contents: readonly number[]): number[] => [
  ...new TextEncoder().encode(id),
  ...[24, 16, 8, 0].map((shift) => (contents.length >> shift) & 255),
  ...contents,
];
/** 44,100 Hz as the specification of AIFF 1.3 writes it: 400E AC44 0000 0000 0000. */
const rate44100 = [0x40, 0x0e, 0xac, 0x44, 0, 0, 0, 0, 0, 0];
const common = (channels: number, bits: number): number[] => [0, channels, 0, 0, 0, 2, 0, bits, ...rate44100];
const aiff = (...chunks: number[][]): Uint8Array =>
  Uint8Array.from([...chunk('FORM', []), ...new TextEncoder().encode('AIFF'), ...chunks.flat()]);
const sound = chunk('SSND', [0, 0, 0, 0, 0, 0, 0, 0, 0x40, 0, 0x80, 0]);

it('runs the examples of the comments', () => {
  const file = memoryBytes(new TextEncoder().encode('abcd\0\0\0\x02hi'));
  expect([...bigEndianChunks(file, 0, { sizeBytes: 4, padded: true })]).toEqual([
    { id: 'abcd', from: 8, to: 10, missing: 0, open: false },
  ]);
  expect(decoderInfo(Uint8Array.of(0x05, 2, 0x12, 0x08))).toEqual(Uint8Array.of(0x12, 0x08));
});

it('reads an AIFF file made by hand, whatever the order of its chunks', async () => {
  for (const file of [aiff(chunk('COMM', common(1, 16)), sound), aiff(sound, chunk('COMM', common(1, 16)))]) {
    const opened = await openSound(memoryBytes(file), {});
    if (!opened.ok) throw new Error(opened.fault.code);
    expect(opened.source).toMatchObject({ sampleRate: 44100, channels: 1, length: 2 });
    expect([...opened.source.read(0, -1, 3)]).toEqual([0, 0.5, -1, 0]);
  }
});

it.each([
  ['no-format', aiff(sound)],
  ['no-data', aiff(chunk('COMM', common(1, 16)))],
  ['no-samples', aiff(chunk('COMM', common(1, 16)), chunk('SSND', [0, 0, 0, 0, 0, 0, 0, 0]))],
  ['no-channels', aiff(chunk('COMM', common(0, 16)), sound)],
  ['too-many-channels', aiff(chunk('COMM', common(33, 16)), sound)],
  ['depth-unreadable', aiff(chunk('COMM', common(1, 40)), sound)],
  ['rate-out-of-range', aiff(chunk('COMM', [...common(1, 16).slice(0, 8), ...Array(10).fill(0)]), sound)],
  ['format-cut-short', aiff(chunk('COMM', common(1, 16).slice(0, 10)), sound)],
] as const)('has a sentence for %s', (code, file) => {
  const outcome = aiffLayout(memoryBytes(file));
  expect(outcome).toMatchObject({ ok: false, fault: { code } });
  if (!outcome.ok) expect(recordingFaultSentence('a.aiff', outcome.fault)).toMatch(/^"a\.aiff" .+\. .+\.$/);
});

describeProgram('ffmpeg', 'AIFF and CAF files of ffmpeg', (ffmpeg) => {
  it.each([
    ['a.aiff', ['-c:a', 'pcm_s8']],
    ['b.aiff', ['-c:a', 'pcm_s16be', '-ac', '2']],
    ['c.aiff', ['-c:a', 'pcm_s16le']],
    ['d.aif', ['-c:a', 'pcm_s24be']],
    ['e.aiff', ['-c:a', 'pcm_s32be', '-ac', '3']],
    ['f.aiff', ['-c:a', 'pcm_f32be']],
    ['g.aiff', ['-c:a', 'pcm_f64be']],
    ['h.caf', ['-c:a', 'pcm_s16be']],
    ['i.caf', ['-c:a', 'pcm_s16le', '-ac', '2']],
    ['j.caf', ['-c:a', 'pcm_s24le']],
    ['k.caf', ['-c:a', 'pcm_s32be']],
    ['l.caf', ['-c:a', 'pcm_f32le', '-ar', '96000']],
    ['m.caf', ['-c:a', 'pcm_f64le']],
    ['n.caf', ['-c:a', 'pcm_s8']],
  ])('reads %s to the bit: %j', async (file, options) => {
    const path = written(ffmpeg, file, options);
    const { source, notes } = await openedFile(path);
    expect(notes).toEqual([]);
    for (let channel = 0; channel < source.channels; channel++) {
      const theirs = decodedByFfmpeg(ffmpeg, path, channel);
      expect(source.length).toBe(theirs.length);
      expect(source.read(channel, 0, source.length)).toEqual(theirs);
    }
  });

  it.each(['a.aiff', 'b.caf'])('reads %s as far as it goes, and little of it at a time', async (file) => {
    const bytes = readFileSync(written(ffmpeg, file, []));
    const whole = memoryBytes(bytes.subarray(0, bytes.length - 20_000));
    let most = 0;
    const counted: Bytes = {
      length: whole.length,
      read(from, to) {
        most = Math.max(most, to - from);
        return whole.read(from, to);
      },
    };
    const opened = await openSound(counted, {});
    if (!opened.ok) throw new Error(opened.fault.code);
    expect(opened.notes).toMatchObject([{ code: 'end-missing' }]);
    most = 0;
    opened.source.read(0, 1000, 2000);
    expect(most).toBeLessThanOrEqual(4000);
  });

  it.each([
    ['a.aiff', ['-c:a', 'pcm_mulaw'], 'coding-unreadable', 'ulaw'],
    ['b.caf', ['-c:a', 'pcm_mulaw'], 'codec-unreadable', 'µ-law'],
    ['c.caf', ['-c:a', 'adpcm_ima_qt', '-ac', '1'], 'codec-unreadable', 'ima4'],
  ])('names the coding of %s', async (file, options, code, words) => {
    const outcome = await openRecording(written(ffmpeg, file, options));
    expect(outcome).toMatchObject({ ok: false, fault: { code } });
    if (!outcome.ok) expect(recordingFaultSentence(file, outcome.fault)).toContain(words);
  });

  it('reads AAC in a CAF file, as memos of a phone are, without what its encoder added', async () => {
    const m4a = written(ffmpeg, 'a.m4a', ['-c:a', 'aac', '-aac_pns', '0']);
    const folder = temporaryFolder();
    const path = join(folder, 'a.caf');
    writeFileSync(path, await cafOfAac(readFileSync(m4a)));
    const ours = await openedFile(path);
    const theirs = await openedFile(m4a);
    expect(ours.source.length).toBe(theirs.source.length);
    expect(
      largestDifference(
        ours.source.read(0, 0, ours.source.length),
        theirs.source.read(0, 0, theirs.source.length),
      ),
    ).toBe(0);
    // ffmpeg finds the same sound in this file, and leaves the encoder's delay in.
    const { later, largest } = compared(
      ours.source.read(0, 0, ours.source.length),
      decodedByFfmpeg(ffmpeg, path),
    );
    expect(later).toBe(-1024);
    expect(largest).toBeLessThan(1e-3);
    expect(cafParts(memoryBytes(readFileSync(path)))).toMatchObject({ coding: 'aac ', channels: 1 });
  });

  it('tells of AMR, in a file of its own and in 3GP, what it is and what to do', async () => {
    const folder = temporaryFolder();
    const amr = join(folder, 'memo.amr');
    // Twenty frames of 12.2 kbit/s (RFC 4867, 5.3: a head of 0x3c and 31 bytes).
    const frame = [0x3c, ...Array(31).fill(0x55)];
    const frames = Array.from({ length: 20 }, () => frame).flat();
    writeFileSync(amr, Uint8Array.from([...new TextEncoder().encode('#!AMR\n'), ...frames]));
    const in3gp = join(folder, 'memo.3gp');
    execFileSync(ffmpeg, ['-v', 'error', '-i', amr, '-c', 'copy', in3gp]);
    for (const path of [amr, in3gp]) {
      const outcome = await openRecording(path);
      if (outcome.ok) throw new Error('AMR is read.');
      const sentence = recordingFaultSentence(outcome.name, outcome.fault);
      expect(sentence).toMatch(/AMR.*speech that leaves out what strokes are made of/);
      expect(sentence).toMatch(/Save it as a WAV file/);
    }
  });
});
