import fc from 'fast-check';
import { expect, it } from 'vitest';
import { describeProgram } from '../programs.ts';
import { codedCorpus, secondsRead } from './coded-recordings.ts';
import { hostileRecordings } from './hostile-recordings.ts';

/** What files of each kind begin with, before any bytes at all. */
const beginnings = [
  'fLaC',
  'fLaC\x80\0\0\x22\x10\0\x10\0\0\0\0\0\0\0\x0b\xb8\0\xf0',
  'OggS\0\x02\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0',
  'ID3\x04\0\0\0\0\0\x0a',
  '\xff\xfb\x90\x64',
  '\xff\xf1\x50\x80',
  '\x1a\x45\xdf\xa3',
  '\0\0\0\x10ftypM4A \0\0\0\0',
  '\0\0\0\x10ftypqt  \0\0\0\0\0\0\0\x40moov',
  '\0\0\0\x10ftyp3gp4\0\0\0\0',
  'FORM\0\0\0\0AIFF',
  'FORM\0\0\0\0AIFCCOMM\0\0\0\x16\0\x01\0\0\0\0\0\x10\x40\x0e\xac\x44\0\0\0\0\0\0',
  'caff\0\x01\0\0desc\0\0\0\0\0\0\0\x20\x40\xe5\x88\x80\0\0\0\0',
  'RIFF\0\0\0\0WAVEfmt ',
];

it('any bytes behind the beginning of any kind of file are sound or a sentence', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.constantFrom(...beginnings),
      fc.uint8Array({ maxLength: 600 }),
      async (beginning, rest) => {
        const seconds = await secondsRead(Uint8Array.from([...Buffer.from(beginning, 'latin1'), ...rest]));
        // As a wave or AIFF file of one byte a sample at 8,000 Hz.
        expect(seconds).toBeLessThan(1);
      },
    ),
    { numRuns: 250, seed: 15 },
  );
}, 60_000);

it.each(hostileRecordings)('a file made to harm ends soon: $name', async ({ bytes }) => {
  const file = bytes();
  const { heapUsed, external } = process.memoryUsage();
  expect(await secondsRead(file)).toBeLessThan(60);
  const after = process.memoryUsage();
  expect(after.heapUsed + after.external - heapUsed - external).toBeLessThan(300e6);
});

describeProgram('ffmpeg', 'recordings of every kind', (ffmpeg) => {
  it('are what damage is tried on: all but AMR are read whole', async () => {
    for (const { name, bytes } of await codedCorpus(ffmpeg)) {
      const seconds = await secondsRead(bytes);
      if (name === 'AMR in 3GP') expect(seconds).toBe(0);
      else expect(Math.abs(seconds - 0.5), name).toBeLessThan(0.05);
    }
  }, 60_000);
});
