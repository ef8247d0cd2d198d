import { describe, expect, it } from 'vitest';
import { cutSource } from '../../../src/core/signal/cut-source.ts';
import { formulaSource } from '../../support/float-source.ts';

describe('cutSource', () => {
  const part = cutSource(
    formulaSource(100, 1000, (n) => n),
    { from: 2, to: 3 },
  );
  it('is a recording of its own, with silence round it', () => {
    expect([part.length, part.sampleRate, part.channels]).toEqual([100, 100, 1]);
    expect([...part.read(0, 0, 3)]).toEqual([200, 201, 202]);
    expect([...part.read(0, -2, 1)]).toEqual([0, 0, 200]);
    expect([...part.read(0, 98, 102)]).toEqual([298, 299, 0, 0]);
    expect([...part.read(0, 200, 202)]).toEqual([0, 0]);
  });
  it('gives what stands in the room of who reads', () => {
    const room = new Float32Array(4).fill(9);
    expect([...part.read(0, 98, 102, room)]).toEqual([298, 299, 0, 0]);
    expect([...part.read(0, 5, 8, room)]).toEqual([205, 206, 207]);
  });
  it('ends where the recording ends', () => {
    expect(
      cutSource(
        formulaSource(100, 1000, () => 0),
        { from: 9, to: 12 },
      ).length,
    ).toBe(100);
  });
});
