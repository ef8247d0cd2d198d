import { describe, expect, it } from 'vitest';
import { finiteSource } from '../../src/core/signal/finite-source.ts';
import { pickup } from '../../src/core/signal/pickup.ts';
import { atGain } from '../../src/core/signal/usual-gain.ts';
import { keptSource } from '../../src/formats/kept-source.ts';
import { memoryBytes } from '../../src/formats/memory-bytes.ts';
import { riffLayout } from '../../src/formats/riff-layout.ts';
import { wavSource } from '../../src/formats/wav-source.ts';
import { writeWav } from '../../src/formats/write-wav.ts';

const frames = 300;
const wave = (phase: number) => Float32Array.from({ length: frames }, (_, n) => Math.sin(n / 7 + phase) / 2);

function recorded(depth: 'int16' | 'int24' | 'float32', channels: number) {
  const sound = Array.from({ length: channels }, (_, channel) => wave(channel / 10));
  const bytes = memoryBytes(writeWav({ channels: sound, sampleRate: 48_000, depth }));
  const read = riffLayout(bytes);
  if (!read.ok) throw new Error('no layout');
  return wavSource(bytes, read.layout);
}

describe('a block read into a room that was used before', () => {
  it.each([
    ['int16', 1],
    ['int16', 2],
    ['int24', 2],
    ['float32', 2],
  ] as const)('holds what one of its own does: %s, %i channels', (depth, channels) => {
    const plain = recorded(depth, channels);
    const room = new Float32Array(128);
    for (const source of [plain, keptSource(plain), atGain(pickup(finiteSource(plain)), 2)]) {
      for (let channel = 0; channel < source.channels; channel++) {
        // Over both ends, inside, past the end, and more than the room holds.
        for (const [from, to] of [
          [-20, 60],
          [0, 128],
          [100, 150],
          [250, 340],
          [310, 330],
          [0, 200],
        ] as const) {
          room.fill(9);
          const expected = source.read(channel, from, to);
          expect(source.read(channel, from, to, room)).toEqual(expected);
        }
      }
    }
  });
});
