import { describe, expect, it } from 'vitest';
import { lookAhead } from '../../../src/core/alignment/look-ahead.ts';
import { mainSlots } from '../../../src/core/alignment/main-slots.ts';
import { thinStrokes } from '../../../src/core/alignment/thin-strokes.ts';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { line, sheetOf } from './made-sheet.ts';

const sheet = sheetOf(line('RL- R-L RLR L--', { repeats: 2, bpm: null }));
const main = mainSlots(layOut(sheet), sheet);
const pulse = (times: readonly number[], stroke: number, slot: number, guesses: readonly number[] = []) => {
  const onsets = Float64Array.from(times);
  const thin = thinStrokes(onsets, new Float64Array(times.length).fill(-20), main);
  return lookAhead(onsets, thin, stroke, main, slot, guesses);
};

describe('lookAhead', () => {
  const onTheBeat = Array.from(main.beat, (beat) => 1 + 0.7 * beat);

  it('finds a tempo nobody told it, and where the beat stands', () => {
    const found = pulse(onTheBeat, 0, 0)!;
    expect(found.period).toBeCloseTo(0.7, 6);
    expect(found.due).toBeCloseTo(1, 6);
  });

  it('takes the beat from the strokes ahead when the first one comes early', () => {
    const [, ...rest] = onTheBeat;
    expect(pulse([0.93, ...rest], 0, 0)!.due).toBeGreaterThan(0.96);
  });

  it('copes with a missed and an extra stroke', () => {
    const damaged = [...onTheBeat.filter((_, i) => i !== 3), onTheBeat[5]! + 0.12].sort((a, b) => a - b);
    expect(pulse(damaged, 0, 0, [0.7])!.period).toBeCloseTo(0.7, 1);
  });

  it('refuses strokes without that rhythm', () => {
    expect(pulse([1, 1.9, 2, 4.7, 4.8, 7, 9.5, 9.6, 13], 0, 0)).toBeNull();
  });

  it('finds the same pulse from every slot with the same rhythm ahead, whatever came before it', () => {
    const uneven = sheetOf(line('RLRL R L R L R L R L R L R L R L', { bpm: 60 }));
    const slots = mainSlots(layOut(uneven), uneven);
    const [afterShort, afterLong] = [4, 5];
    expect(slots.signature[afterShort]).toBe(slots.signature[afterLong]);
    expect([slots.room[afterShort], slots.room[afterLong]]).toEqual([0.25, 1]);
    const onsets = Float64Array.from({ length: 10 }, (_, i) => 1 + i + (i % 2) * 0.2);
    const thin = thinStrokes(onsets, new Float64Array(onsets.length).fill(-20), slots);
    const found = lookAhead(onsets, thin, 0, slots, afterLong, [1]);
    expect(found!.period).toBeCloseTo(1, 1);
    expect(lookAhead(onsets, thin, 0, slots, afterShort, [1])).toEqual(found);
  });

  it('keeps to every stroke where the asked tempo would meet every second one', () => {
    const triplets = sheetOf(line('RLR LRL', { repeats: 4, bpm: 60 }));
    const asked = mainSlots(layOut(triplets), triplets);
    const onsets = Float64Array.from(asked.beat, (beat, i) => 1 + 0.5 * beat + (i % 2 === 0 ? 0 : 0.003));
    const thin = thinStrokes(onsets, new Float64Array(onsets.length).fill(-20), asked);
    expect(lookAhead(onsets, thin, 0, asked, 0, [1])!.period).toBeCloseTo(0.5, 2);
  });
});
