import { describe, expect, it } from 'vitest';
import {
  handTerm,
  levelEffect,
  partialTerms,
  strokesWithoutSlips,
} from '../../../src/core/measures/level-effect.ts';
import type { PlayedStroke } from '../../../src/core/measures/played-stroke.ts';
import { studentTQuantile } from '../../../src/core/stats/student-t-quantile.ts';
import { plain, takeOfLevels } from './made-levels.ts';

const louderLeft = (slot: Parameters<typeof plain>[0]) => plain(slot) + (slot.hand === 'L' ? 3 : 0);
const { strokes } = takeOfLevels('>RLR >LRL; x24', louderLeft, { levelSd: () => 0.2 });
const taps = strokes.filter((s) => !s.slot.accent);

describe('levelEffect', () => {
  it('is the difference that was put in', () => {
    const effect = levelEffect(taps, { term: handTerm, behind: partialTerms(taps) });
    expect(effect?.value).toBeCloseTo(3, 1);
    expect(effect!.low).toBeLessThan(3);
    expect(effect!.high).toBeGreaterThan(3);
  });

  it('is null where earlier terms explain it', () => {
    expect(levelEffect(taps, { before: [handTerm], term: (s) => -2 * handTerm(s) })).toBeNull();
  });

  it('speaks for later terms that are the same', () => {
    const alone = levelEffect(taps, { term: handTerm });
    const doubled = levelEffect(taps, { term: handTerm, behind: [handTerm] });
    expect(doubled?.value).toBeCloseTo(alone!.value, 9);
  });

  it('has the range of Newey and West by beats, worked out for one term', () => {
    const x = taps.map(handTerm);
    const [n, mean] = [x.length, x.reduce((a, b) => a + b, 0) / x.length];
    const size = x.reduce((sum, v) => sum + (v - mean) ** 2, 0);
    const level = taps.reduce((sum, { levelDb }) => sum + levelDb, 0) / n;
    const slope = taps.reduce((sum, { levelDb }, i) => sum + (x[i]! - mean) * (levelDb - level), 0) / size;
    // The pull of each stroke on the slope; two taps stand in each beat.
    const pull = taps.map(
      ({ levelDb }, i) => ((x[i]! - mean) / size) * (levelDb - level - slope * (x[i]! - mean)),
    );
    const beats = Array.from({ length: n / 2 }, (_, b) => pull[2 * b]! + pull[2 * b + 1]!);
    const variance = beats.reduce((sum, own, b) => sum + own * own + own * (beats[b + 1] ?? 0), 0);
    const degrees = (beats.length - 2) / 1.5;
    const half = studentTQuantile(0.975, degrees) * Math.sqrt((variance * n) / (n - 2));
    const effect = levelEffect(taps, { term: handTerm })!;
    expect(effect.degrees).toBeCloseTo(degrees, 9);
    expect(effect.value).toBeCloseTo(slope, 9);
    expect(effect.high - effect.value).toBeCloseTo(half, 9);
    expect(effect.value - effect.low).toBeCloseTo(half, 9);
  });

  it('takes out what lies in the partials', () => {
    const level: typeof plain = (slot) => louderLeft(slot) + (slot.partial === 2 ? 2 : 0);
    // Fewer of one kind, so that hand and partial go together.
    const exact = taps
      .filter(({ slot }, i) => !(slot.hand === 'R' && slot.partial === 2 && i % 4 !== 0))
      .map((stroke) => ({ ...stroke, levelDb: level(stroke.slot) }));
    const off = levelEffect(exact, { term: handTerm })!.value;
    expect(Math.abs(off - 3)).toBeGreaterThan(0.2);
    expect(levelEffect(exact, { term: handTerm, behind: partialTerms(exact) })!.value).toBeCloseTo(3, 6);
    expect(levelEffect(exact, { before: partialTerms(exact), term: handTerm })!.value).toBeCloseTo(3, 6);
  });

  it('is told by how a term changes, not by how large it is', () => {
    const alone = levelEffect(taps, { term: handTerm })!;
    const far = levelEffect(taps, { term: (s) => 50 + handTerm(s) })!;
    expect([far.value, far.low]).toEqual([expect.closeTo(alone.value, 6), expect.closeTo(alone.low, 6)]);
    // The same but for one stroke in eight: its own part is less than a tenth, or rests on fewer than six strokes.
    const nearly = (s: PlayedStroke, i: number) => handTerm(s) + (i % 48 === 0 ? 0.5 : 0);
    let index = 0;
    expect(levelEffect(taps, { before: [handTerm], term: (s) => nearly(s, index++) })).toBeNull();
    const wobbling = (off: number) => {
      let i = 0;
      return levelEffect(taps, {
        before: [handTerm],
        term: (s) => handTerm(s) + (i++ % 4 < 2 ? off : -off),
      });
    };
    // Own share of its variance: off² of off² + ¼.
    expect(wobbling(0.16)).toBeNull();
    expect(wobbling(0.18)).not.toBeNull();
  });

  it('needs four beats, and no hand counts for neither', () => {
    const within = (beats: number) => taps.filter(({ slot }) => slot.beatTime < beats);
    const told = (beats: number) => levelEffect(within(beats), { term: handTerm });
    expect(told(3)).toBeNull();
    expect(told(4)?.degrees).toBeCloseTo(2 / 1.5, 9);
    expect(handTerm({ ...taps[0]!, hand: null })).toBe(0);
  });

  it('leaves one slip out', () => {
    const slip = taps.map((s, i) => (i === 20 ? { ...s, levelDb: s.levelDb + 20 } : s));
    expect(levelEffect(slip, { term: handTerm })?.value).toBeCloseTo(3, 1);
    // Four of the levels' robust standard deviations, 0.8 dB, are a slip; a tenth of a dB is none, however even they are.
    const others = levelEffect(taps.toSpliced(20, 1), { term: handTerm })!;
    const small = taps.map((s, i) => (i === 20 ? { ...s, levelDb: s.levelDb + 3 } : s));
    expect(levelEffect(small, { term: handTerm })).toEqual(others);
    const even = taps.map((s, i) => ({ ...s, levelDb: plain(s.slot) + (i === 20 ? 0.35 : 0) }));
    expect(strokesWithoutSlips(even, { term: handTerm })).toHaveLength(taps.length);
  });
});
