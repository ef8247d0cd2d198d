import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { alignTake } from '../../../src/core/alignment/align-take.ts';
import { dueTimes, partialsOffClick, referenceOf } from '../../../src/core/alignment/reference-time.ts';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { describeOutside } from '../../outside.ts';
import { line, padStrokes, sheetOf } from './made-sheet.ts';
import { type SimulatedTake, simulateTake } from './simulated-take.ts';

const sheet = sheetOf(line('>RLR >LRL >RLR >LRL', { repeats: 4, bpm: 100 }));
const due = (take: SimulatedTake) => {
  const alignment = alignTake(take);
  return {
    alignment,
    times: dueTimes({ ...take, alignment }),
    off: partialsOffClick({ ...take, alignment }),
  };
};

describe('dueTimes', () => {
  it("are the click's own, whatever the habit of playing ahead", () => {
    const take = simulateTake({ sheet, seed: 1, jitter: 0, click: true });
    const clickAt = take.strokes[0]!.time + 0.025;
    const click = { ...take.click!, times: take.click!.times.map((_, i) => clickAt - 2.4 + 0.6 * i) };
    const { alignment, times, off } = due({ ...take, click });
    expect(alignment.matches).toHaveLength(48);
    alignment.matches.forEach(({ slot }, m) => {
      expect(times[m]).toBeCloseTo(clickAt + (0.6 * slot) / 3, 9);
    });
    expect(off).toEqual([0]);
  });

  it('keep the asked tempo and fit the phase', () => {
    const take = simulateTake({ sheet, seed: 2, jitter: 0.05, tempo: 1.02 });
    const { times } = due(take);
    expect(times[47]! - times[0]!).toBeCloseTo((47 * 0.6) / 3, 9);
    const late = take.strokes.filter(({ time }, i) => time > times[i]!).length;
    expect(late).toBe(24);
  });

  it('are null for grace notes', () => {
    const flams = sheetOf(line('>lRLR >rLRL', { repeats: 4 }));
    const { alignment, times } = due(simulateTake({ sheet: flams, seed: 2, jitter: 0.02 }));
    const slots = layOut(flams);
    expect(times.map((time) => time === null)).toEqual(
      alignment.matches.map(({ slot }) => slots[slot]!.grace),
    );
    expect(times.filter((time) => time === null)).toHaveLength(8);
  });
});

describe('a click that stops', () => {
  const take = simulateTake({ sheet, seed: 4, jitter: 0.02, click: true });
  const { period } = take.click!;
  const stopsAt = (clicks: number) => {
    const click = {
      ...take.click!,
      times: take.click!.times.slice(0, clicks),
      silent: { before: true, after: true },
    };
    const alignment = alignTake({ ...take, click });
    return { click, reference: referenceOf({ ...take, click, alignment }) };
  };

  it('is held against strokes to the end of its last beat', () => {
    const { click, reference } = stopsAt(take.click!.times.length - 4);
    const times = 'asynchrony' in reference ? [...reference.asynchrony.keys()] : [];
    const played = times.map((stroke) => take.strokes[stroke]!.time);
    expect(Math.max(...played)).toBeLessThan(click.times.at(-1)! + 0.9 * period);
    expect(Math.max(...played)).toBeGreaterThan(click.times.at(-1)!);
  });

  it('that only counts in is no reference', () => {
    expect(stopsAt(5).reference).toEqual({ kind: 'asked-tempo' });
  });

  it('may go on under the strokes where nothing is known of it', () => {
    const click = { ...take.click!, times: take.click!.times.slice(0, 5) };
    expect(alignTake({ ...take, click }).reference).toBe('heard-click');
  });
});

describe('partialsOffClick', () => {
  it('tells by how much a run that dropped a partial is early', () => {
    const take = simulateTake({
      sheet,
      seed: 6,
      jitter: 0.03,
      click: true,
      parts: () => [
        { from: 0, to: 19, after: 0, state: 'graded' },
        { from: 21, to: 47, after: 'left-out', state: 'graded' },
      ],
    });
    expect(due(take).off).toEqual([0, -1]);
  });

  it('is not told without a click', () => {
    expect(due(simulateTake({ sheet, seed: 6 })).off).toEqual([null]);
  });
});

describeOutside(
  'people tapping to a click (Bååth & Madison 2012)',
  ['baath_madison_2012/tapping_data_baath_madison_2012.csv'],
  (folder) => {
    it('have the published asynchronies, but for the wild first taps of some trials', () => {
      const text = readFileSync(
        join(folder, 'baath_madison_2012/tapping_data_baath_madison_2012.csv'),
        'utf8',
      );
      const trials = new Map<string, number[][]>();
      for (const row of text.trim().split('\n').slice(1)) {
        const [subject, trial, interval, asynchrony] = row.split(',').map(Number);
        const name = `${subject}-${trial}`;
        trials.set(name, [...(trials.get(name) ?? []), [interval! / 1000, asynchrony! / 1000]]);
      }
      let taps = 0;
      let right = 0;
      for (const trial of trials.values()) {
        const interval = trial[0]![0]!;
        if (interval > 1.2) continue;
        const taped = sheetOf(line('R', { repeats: trial.length, bpm: 60 / interval }));
        const slots = layOut(taped);
        const clicks = trial.map((_, i) => 1 + i * interval);
        const click = { times: clicks, period: interval, levelDb: -20 };
        const strokes = padStrokes(
          trial.map(([, asynchrony], i) => clicks[i]! + asynchrony!),
          trial.map(() => -20),
        );
        const alignment = alignTake({ slots, sheet: taped, strokes, click });
        const times = dueTimes({ alignment, slots, strokes, sheet: taped, click });
        taps += trial.length;
        right += alignment.matches.filter(
          ({ stroke }, m) => Math.abs(strokes[stroke]!.time - times[m]! - trial[stroke]![1]!) < 1e-9,
        ).length;
      }
      expect(taps).toBeGreaterThan(5000);
      expect(right / taps).toBeGreaterThan(0.98);
    });
  },
);
