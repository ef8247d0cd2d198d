import { describe, expect, it } from 'vitest';
import { seeded } from '../../../fixtures/generator/random.ts';
import { afterSilence } from '../../../src/core/alignment/after-silence.ts';
import { silentBars } from '../../../src/core/click-track/silent-bars.ts';
import { parseSheet } from '../../../src/core/exercise/parse-sheet.ts';
import { gradeNotes } from '../../../src/core/grade-notes.ts';

const parsed = parseSheet('tempo: 120\n>RLR >LRL >RLR >LRL; x24\n');
if (!parsed.ok) throw new Error('no sheet');
const { sheet } = parsed;
const silent = silentBars({ heard: 2, lengths: [1, 2, 4] });
const bars = Array.from({ length: 24 }, (_, bar) => silent(bar));
const times = Array.from({ length: 96 }, (_, i) => 1 + i / 2);
const audible = times.map((_, i) => !bars[Math.floor(i / 4)]);

/** A player whose silent beats come `drift` ms later each, and who keeps a share of that from stroke to stroke when the click is back. */
function played(drift: number, keep: number, jitter: number, seed: number) {
  const random = seeded(`back to the click ${seed}`);
  let late = 0;
  return Array.from({ length: 288 }, (_, i) => {
    if (bars[Math.floor(i / 12)]) late += drift / 3 + random.normal(0, 1.2);
    else late *= keep;
    return {
      time: 1 + i / 6 + (late + jitter * random.normal()) / 1000,
      step: 1e-4,
      key: 38,
      velocity: Math.round((i % 3 === 0 ? 110 : 50) + 5 * random.normal()),
    };
  });
}

describe('afterSilence', () => {
  it('tells the strokes that come when the click is just back', () => {
    const back = afterSilence([{ from: 4, to: 8 }], Float64Array.of(7, 7.9, 8.1, 9.5, 12));
    expect([0, 1, 2, 3, 4].map(back)).toEqual([false, true, true, true, false]);
  });

  // After the longest silence the player is 64, 128 or 192 ms behind: up to more than a partial of 167 ms.
  it.each([
    [4, 0, 4],
    [4, 0.7, 4],
    [8, 0.7, 4],
    [8, 0.85, 4],
    [12, 0.8, 9],
  ])(
    'a player %i ms a beat behind who finds back loses no stroke by it (keeps %f, scatter %i ms)',
    (drift, keep, jitter) => {
      for (let seed = 0; seed < 2; seed++) {
        const { slots, strokes, segments } = gradeNotes(
          { notes: played(drift, keep, jitter, seed), duration: 52 },
          sheet,
          { playedClick: { times, audible, calibrated: true, uncertaintyMs: 1 } },
        );
        expect(strokes.role.filter((role) => role !== 'matched')).toEqual([]);
        expect(slots.state.filter((state) => state !== 'played')).toEqual([]);
        expect(segments.map(({ began }) => began)).toEqual(['start', ...segments.slice(1).map(() => 'on')]);
      }
    },
  );
});
