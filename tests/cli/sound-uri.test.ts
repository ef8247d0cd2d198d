import { describe, expect, it } from 'vitest';
import { longestSound, soundUri } from '../../src/cli/sound-uri.ts';
import type { Source } from '../../src/core/signal/source.ts';

function source(channels: readonly (readonly number[])[], length = channels[0]!.length): Source {
  return {
    sampleRate: 8000,
    channels: channels.length,
    length,
    read: (channel, from, to) => Float32Array.from(channels[channel]!.slice(from, to)),
  };
}

describe('soundUri', () => {
  it('mixes the channels into one WAV file', () => {
    const uri = soundUri(
      source([
        [0, 0.5, -1],
        [0.5, 0.5, 0],
      ]),
    )!;
    expect(uri).toMatch(/^data:audio\/wav;base64,UklGR/);
    const bytes = Buffer.from(uri.slice(uri.indexOf(',') + 1), 'base64');
    // Fields of the canonical WAVE header (Microsoft and IBM, 1991): channels, rate, bits; then the samples.
    expect([bytes.readUInt16LE(22), bytes.readUInt32LE(24), bytes.readUInt16LE(34)]).toEqual([1, 8000, 16]);
    expect([44, 46, 48].map((at) => bytes.readInt16LE(at))).toEqual([8192, 16384, -16384]);
  });

  it('leaves out what is too long for a report', () => {
    expect(soundUri(source([[]], longestSound * 8000 + 1))).toBeNull();
  });
});
