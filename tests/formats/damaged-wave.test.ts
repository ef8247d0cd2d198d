import fc from 'fast-check';
import { expect, it } from 'vitest';
import { memoryBytes } from '../../src/formats/memory-bytes.ts';
import { recordingFaultSentence } from '../../src/formats/recording-fault-sentences.ts';
import { riffLayout } from '../../src/formats/riff-layout.ts';
import { wavSource } from '../../src/formats/wav-source.ts';
import { chunk, extensible, format, u32, u64, wave } from './wave-bytes.ts';

const samples = Array.from({ length: 240 }, (_, index) => (index * 73) % 256);
const ds64 = chunk('ds64', [...u64(0), ...u64(240), ...u64(0), ...u32(0)]);
const files = [
  wave([chunk('fmt ', format()), chunk('LIST', [1, 2, 3]), chunk('data', samples)]),
  wave([chunk('data', samples), chunk('fmt ', format({ bits: 24 }))]),
  wave([chunk('fmt ', extensible(3, 64, { bits: 64, channels: 2 })), chunk('data', samples)]),
  wave([ds64, chunk('fmt ', format({ tag: 3, bits: 32 })), chunk('data', samples, 0xffffffff)], 'RF64'),
];

const damaged = fc
  .record({
    file: fc.constantFrom(...files),
    cut: fc.option(fc.double({ min: 0, max: 1, noNaN: true })),
    // Most of what decides stands in the first hundred bytes.
    flips: fc.array(fc.tuple(fc.nat(99), fc.nat(255)), { maxLength: 8 }),
  })
  .map(({ file, cut, flips }) => {
    const bytes = file.slice(0, cut === null ? file.length : Math.floor(cut * file.length));
    for (const [at, value] of flips) if (at < bytes.length) bytes[at] = value;
    return bytes;
  });

function expectReadOrFault(file: Uint8Array): void {
  const bytes = memoryBytes(file);
  const outcome = riffLayout(bytes);
  if (!outcome.ok) {
    expect(recordingFaultSentence('take.wav', outcome.fault)).toMatch(/^"take\.wav" .*\. .*\.$/);
    return;
  }
  const { dataFrom, frames, frameBytes } = outcome.layout;
  expect(dataFrom + frames * frameBytes).toBeLessThanOrEqual(file.length);
  const source = wavSource(bytes, outcome.layout);
  for (let channel = 0; channel < Math.min(source.channels, 4); channel++) {
    expect(source.read(channel, 0, source.length).every(Number.isFinite)).toBe(true);
  }
}

it('reads a damaged file or says what is wrong, and never throws or hangs', () => {
  fc.assert(fc.property(damaged, expectReadOrFault), { numRuns: 3000 });
});

it('so for bytes of no file at all', () => {
  fc.assert(fc.property(fc.uint8Array({ maxLength: 200 }), expectReadOrFault), { numRuns: 500 });
});

it('so for every length to which a file may be cut', () => {
  for (const file of files) {
    for (let length = 0; length <= file.length; length++) expectReadOrFault(file.slice(0, length));
  }
});
