import { describe, expect, it } from 'vitest';
import type { CapturedBlock } from '../../../../src/page/recording/capture/captured-block.ts';
import { clockAtStart, followClock } from '../../../../src/page/recording/capture/follow-clock.ts';
import { followFrames, nothingFollowed } from '../../../../src/page/recording/capture/follow-frames.ts';

const block = (frame: number, length = 1024, clockMs = 0): CapturedBlock => ({
  frame,
  samples: new Float32Array(length),
  clockMs,
});

describe('followFrames', () => {
  const followed = (frames: readonly number[]) => {
    let state = nothingFollowed;
    const places = frames.map((frame) => {
      const step = followFrames(state, block(frame));
      state = step.followed;
      return [step.at, step.skip];
    });
    return { state, places };
  };

  it('counts the recording from its first block', () => {
    const { state, places } = followed([5120, 6144, 7168]);
    expect(places).toEqual([
      [0, 0],
      [1024, 0],
      [2048, 0],
    ]);
    expect(state).toEqual({ first: 5120, length: 3072, gaps: [] });
  });

  it('marks every gap where it is and as long as it is', () => {
    const { state } = followed([0, 1024, 4096, 5120, 7000]);
    expect(state.gaps).toEqual([
      { at: 2048, frames: 2048 },
      { at: 6144, frames: 856 },
    ]);
    expect(state.length).toBe(8024);
  });

  it("doesn't write the same frames twice", () => {
    const { state, places } = followed([0, 512]);
    expect(places[1]).toEqual([1024, 512]);
    expect(state).toEqual({ first: 0, length: 1536, gaps: [] });
  });
});

describe('followClock', () => {
  const rate = 48000;
  /** Blocks for so many seconds, handed over late by what `late` says, s. */
  const stallsOf = (seconds: number, late: (at: number) => number) => {
    let state = clockAtStart;
    for (let place = 0; place < seconds * rate; place += 1024) {
      const at = (place + 1024) / rate;
      state = followClock(state, block(place, 1024, 1000 * (at + late(at)) + 1e6), place, rate);
    }
    return state.stalls;
  };

  it('is quiet about late hands and clocks that part slowly', () => {
    expect(stallsOf(60, (at) => 0.03 * Math.abs(Math.sin(99 * at)) + 1e-4 * at)).toEqual([]);
  });

  it('finds where the sound fell behind', () => {
    const stalls = stallsOf(30, (at) => (at > 12.4 ? 0.08 : 0));
    expect(stalls).toHaveLength(1);
    expect(Math.abs(stalls[0]!.at - 12.4)).toBeLessThan(2);
    expect(stalls[0]!.seconds).toBeCloseTo(0.08, 3);
  });
});
