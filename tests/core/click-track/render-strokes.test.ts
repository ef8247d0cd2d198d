import { describe, expect, it } from 'vitest';
import { renderStrokes } from '../../../src/core/click-track/render-strokes.ts';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { parseSheet } from '../../../src/core/exercise/parse-sheet.ts';

const rate = 48_000;

function rendered(text: string) {
  const parsed = parseSheet(text);
  if (!parsed.ok) throw new Error('no sheet');
  return { slots: layOut(parsed.sheet), track: renderStrokes(parsed.sheet, 1, 4, rate) };
}

const peakFrom = (track: Float32Array, time: number) => {
  const at = Math.round(time * rate);
  return Math.max(...track.slice(at, at + 20).map(Math.abs));
};

describe('renderStrokes', () => {
  it('plays every stroke on its sample, accents 12 dB over taps', () => {
    const { slots, track } = rendered('>R-R >LRL ; tempo: 60 ; times: 1\n');
    const peaks = slots.map(({ time }) => peakFrom(track, 1 + time!));
    expect(
      slots.map(({ accent }, i) => [accent, Math.round(20 * Math.log10(peaks[i]! / peaks[0]!))]),
    ).toEqual([
      [true, 0],
      [false, -12],
      [true, 0],
      [false, -12],
      [false, -12],
    ]);
    for (const { time } of slots)
      expect(Math.abs(track[Math.round((1 + time!) * rate) - 1]!)).toBeLessThan(0.02);
    // The rest is silent.
    expect(peakFrom(track, 1 + 1 / 3)).toBeLessThan(0.01);
    expect(peakFrom(track, 0.5)).toBe(0);
  });

  it('puts grace notes before their stroke', () => {
    const { track } = rendered('lR - ; tempo: 60\n');
    expect(peakFrom(track, 0.97)).toBeGreaterThan(0.05);
    expect(peakFrom(track, 1)).toBeGreaterThan(peakFrom(track, 0.97));
  });

  it('stays silent where no tempo is said', () => {
    expect(rendered('>RLR\n').track.every((sample) => sample === 0)).toBe(true);
  });
});
