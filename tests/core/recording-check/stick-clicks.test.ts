import { describe, expect, it } from 'vitest';
import type { HeardRecording } from '../../../src/core/recording-check/heard-recording.ts';
import { stickClicks } from '../../../src/core/recording-check/stick-clicks.ts';

const sound = (time: number) => ({ time, sound: 'stick-click' }) as const;
/** Sounds at some times, s, with clicks of a metronome at others. */
const heardAt = (times: readonly number[], clicks: readonly number[] | null) =>
  ({
    hearing: { sounds: times.map(sound), click: clicks && { times: clicks } },
    source: {},
    performance: { sheet: { lines: [] } },
  }) as unknown as HeardRecording;

describe('sticks struck together', () => {
  it('are told with the first one, and a single one is not', () => {
    expect(stickClicks(heardAt([0.5, 1], null))?.facts).toEqual({ clicks: 2, at: 0.5 });
    expect(stickClicks(heardAt([0.5], null))).toBeNull();
  });

  it('are not what is left of a click that was taken off, far softer and right behind it', () => {
    const behind = (clickDb: number) => {
      const { hearing, ...rest } = heardAt([], [0.5, 1]);
      const sounds = [0.5, 1].flatMap((time) => [
        { time, sound: 'click', levelDb: clickDb },
        { time: time + 0.031, sound: 'stick-click', levelDb: -55 },
      ]);
      return stickClicks({ ...rest, hearing: { ...hearing, sounds } } as unknown as HeardRecording);
    };
    expect(behind(-22)).toBeNull();
    expect(behind(-50)?.facts).toEqual({ clicks: 2, at: 0.531 });
  });

  it('count in on the click; what follows each click by a sixth of a second is its own', () => {
    const clicks = [0.5, 1, 1.5, 2];
    expect(stickClicks(heardAt([0.51, 1.01, 1.49, 2.02], clicks))?.facts).toEqual({ clicks: 4, at: 0.51 });
    expect(stickClicks(heardAt([0.67, 1.17, 1.67, 2.17], clicks))).toBeNull();
  });
});
