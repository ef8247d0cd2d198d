import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  decodeHead,
  decodeTake,
  encodeHead,
  encodeNote,
  encodeSamples,
  type TakeHead,
} from '../../../../src/page/recording/kept/chunk-file.ts';

const head: TakeHead = {
  id: 'a1',
  startedAt: '2026-03-02T18:30:00.000Z',
  sampleRate: 48000,
  sheetText: 'tempo: 90\n>RLR >LRL',
  name: 'Übung 1',
};

function joined(...parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    bytes.set(part, at);
    at += part.length;
  }
  return bytes;
}

const ramp = (from: number, count: number) =>
  Float32Array.from({ length: count }, (_, i) => (from + i) / 1000);

describe('decodeTake', () => {
  it('reads back what was written, notes and all', () => {
    const note = { frame: 7, what: 'hidden', facts: { long: true } };
    const bytes = joined(
      encodeHead(head),
      encodeSamples(0, ramp(0, 7)),
      encodeNote(note),
      encodeSamples(7, ramp(7, 5)),
    );
    expect(decodeTake(bytes)).toEqual({ head, samples: ramp(0, 12), gaps: [], notes: [note] });
    expect(decodeHead(bytes)?.head).toEqual(head);
  });

  it('leaves silence where frames are missing, and says so', () => {
    const bytes = joined(encodeHead(head), encodeSamples(0, ramp(1, 3)), encodeSamples(10, ramp(1, 2)));
    const take = decodeTake(bytes)!;
    expect(take.gaps).toEqual([{ at: 3, frames: 7 }]);
    expect(Array.from(take.samples.subarray(3, 10))).toEqual([0, 0, 0, 0, 0, 0, 0]);
    expect(take.samples[11]).toBeCloseTo(0.002, 6);
  });

  it('reads what there is of a file that breaks off anywhere', () => {
    const pieces = Array.from({ length: 6 }, (_, i) => encodeSamples(20 * i, ramp(20 * i, 20)));
    const start = encodeHead(head);
    const whole = joined(start, ...pieces);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: whole.length }), (length) => {
        const take = decodeTake(whole.slice(0, length));
        expect(take === null).toBe(length < start.length);
        if (take === null) return;
        const frames = take.samples.length;
        expect(take.samples).toEqual(ramp(0, 120).slice(0, frames));
        // All but the head of the piece that breaks off.
        const complete = Math.floor((length - start.length) / pieces[0]!.length);
        expect(frames).toBeGreaterThanOrEqual(20 * complete);
        expect(take.gaps).toEqual([]);
      }),
    );
  });

  it('fills no memory with silence: ten minutes in all that never came, at no more than 192 kHz', () => {
    const far = Array.from({ length: 100 }, (_, i) => encodeSamples(i * 119 * 48_000, ramp(0, 1)));
    const take = decodeTake(joined(encodeHead(head), ...far))!;
    expect(take.samples.length / 48_000).toBeLessThan(600);
    expect(take.gaps).toHaveLength(5);
    expect(decodeTake(joined(encodeHead({ ...head, sampleRate: 1e12 }), far[0]!))).toBeNull();
  });

  it('takes nothing else for a take, and damaged bytes never throw', () => {
    expect(decodeTake(new Uint8Array(0))).toBeNull();
    expect(decodeTake(joined(new TextEncoder().encode('RIFF....WAVEfmt ')))).toBeNull();
    const whole = joined(encodeHead(head), encodeSamples(0, ramp(0, 20)), encodeSamples(20, ramp(20, 20)));
    fc.assert(
      fc.property(fc.nat(whole.length - 1), fc.nat(255), (at, value) => {
        const damaged = whole.slice();
        damaged[at] = value;
        const take = decodeTake(damaged);
        if (take !== null) expect(take.samples.length).toBeLessThanOrEqual(120 * 48000 + 40);
      }),
      { numRuns: 300 },
    );
  });
});
