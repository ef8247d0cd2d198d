import { describe, expect, it } from 'vitest';
import { plainClick } from '../../../src/core/click-track/click-plan.ts';
import { planClicks } from '../../../src/core/click-track/plan-clicks.ts';
import { parseSheet } from '../../../src/core/exercise/parse-sheet.ts';
import { heldSilence } from '../../../src/page/practise/held-silence.ts';
import { trackBars } from '../../../src/page/practise/track-bars.ts';

const parsed = parseSheet('>RLR >LRL >RLR >LRL ; tempo: 120 ; times: 24\n');
if (!parsed.ok) throw new Error('no sheet');
const bars = trackBars(parsed.sheet, planClicks(parsed.sheet, plainClick));

/** The bars that sound for a player who is late by `late(s)`; a delay that nobody knows lies over all of it. */
function played(late: (time: number) => number): string {
  const silence = heldSilence(bars);
  const strokes = Array.from({ length: 24 * 12 }, (_, i) => 2 + i / 6).map(
    (time) => time + 0.043 + late(time),
  );
  return bars
    .map(({ from }, i) =>
      silence.sounds(
        i,
        strokes.filter((time) => time < from),
      )
        ? 'x'
        : '-',
    )
    .join('');
}

describe('heldSilence', () => {
  it('counts bars and their steps', () => {
    expect(bars).toHaveLength(24);
    expect(bars[1]).toEqual({ from: 4, to: 6, beatSeconds: 0.5, stepSeconds: 0.5 / 3 });
  });

  it('doubles the silence for a player who holds the beat, up to eight bars', () => {
    expect(played((time) => 0.008 * Math.sin(40 * time))).toBe('xx-xx--xx----xx--------x');
  });

  it('stays short for one who loses it', () => {
    // 40 ms more with every bar of two seconds: lost at the end of a silence of two bars.
    expect(played((time) => 0.02 * (time - 2))).toBe('xx-xx-xx-xx-xx-xx-xx-xx-');
  });

  it('stays as it is where nothing is heard', () => {
    const silence = heldSilence(bars);
    expect(bars.map((_, i) => (silence.sounds(i, []) ? 'x' : '-')).join('')).toBe('xx-xx-xx-xx-xx-xx-xx-xx-');
    expect(silence.stretches()).toHaveLength(8);
    expect(silence.stretches()[0]).toEqual({ from: 6, to: 8 });
  });
});
