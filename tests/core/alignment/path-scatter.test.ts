import { describe, expect, it } from 'vitest';
import { mainSlots } from '../../../src/core/alignment/main-slots.ts';
import { firstScatter, scatterOnPath } from '../../../src/core/alignment/path-scatter.ts';
import { temposOnPath } from '../../../src/core/alignment/path-tempo.ts';
import { levelsOnPath } from '../../../src/core/alignment/take-levels.ts';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { line, sheetOf } from './made-sheet.ts';
import { seeded } from './seeded.ts';

const sheet = sheetOf(line('>RLR >LRL >RLR >LRL', { repeats: 40, bpm: 100 }));
const main = mainSlots(layOut(sheet), sheet);
const path = Array.from({ length: main.length }, (_, i) => ({ stroke: i, main: i, kind: 'next' as const }));
const played = (jitter: number) => {
  const random = seeded(5);
  return Float64Array.from(main.beat, (beat) => 1 + 0.62 * beat + jitter * (0.62 / 3) * random.normal());
};

describe('what a first path tells of the take', () => {
  it('scatter, with the allowance for strokes lost', () => {
    for (const jitter of [0.04, 0.06, 0.09]) {
      expect(Math.abs(scatterOnPath(path, main, played(jitter)) / (1.3 * jitter) - 1)).toBeLessThan(0.12);
    }
    expect(scatterOnPath(path.slice(0, 6), main, played(0.05))).toBe(firstScatter);
  });

  it('scatter from three strokes in a row of one line, eight times at least', () => {
    // Each second stroke a tenth of its space late: three in a row bend by 0.1, whatever the tempo.
    const late = (beat: number, i: number) => 0.6 * (beat + (i % 2) / 30);
    const bent = Math.min(0.13, (1.3 * 1.4826 * 0.1) / Math.sqrt(1.5));
    expect(scatterOnPath(path.slice(0, 10), main, main.beat.map(late))).toBeCloseTo(bent, 4);
    expect(scatterOnPath(path.slice(0, 9), main, main.beat.map(late))).toBe(firstScatter);

    // The same with a pause before every third stroke: what lies across it tells nothing.
    const paused = main.beat.map(
      (beat, i) => 0.6 * (beat + (i % 3 === 1 ? 1 / 60 : 0)) + 0.4 * Math.floor(i / 3),
    );
    const half = (1.3 * 1.4826 * 0.05) / Math.sqrt(1.5);
    const begun = path.map((step) => ({
      ...step,
      kind: step.main % 3 === 0 ? ('begin' as const) : step.kind,
    }));
    expect(scatterOnPath(begun.slice(0, 24), main, paused)).toBeCloseTo(half, 4);
    expect(scatterOnPath(begun.slice(0, 21), main, paused)).toBe(firstScatter);
    const lines = sheetOf(...Array.from({ length: 8 }, (_, i) => line('RLR', { bpm: 100 + i })));
    expect(scatterOnPath(path.slice(0, 24), mainSlots(layOut(lines), lines), paused)).toBeCloseTo(half, 4);
  });

  it('scatter of lone strokes as a share of the space that scatter is a share of, not of all their room', () => {
    const sparse = sheetOf(line('RLRL RLRL', { repeats: 40 }), line('R L R L', { repeats: 20 }));
    const lone = mainSlots(layOut(sparse), sparse);
    const from = lone.line.indexOf(1);
    expect([lone.room[from], lone.space[from]]).toEqual([1, 0.5]);
    const steps = Array.from({ length: lone.length - from }, (_, i) => ({
      stroke: i,
      main: from + i,
      kind: 'next' as const,
    }));
    // Each second stroke a fiftieth of a beat late: a twenty-fifth of its space.
    const times = Float64Array.from(steps, ({ main: at }, i) => 0.6 * (lone.beat[at]! + (i % 2) * 0.02));
    expect(scatterOnPath(steps, lone, times)).toBeCloseTo((1.3 * 1.4826 * 0.04) / Math.sqrt(1.5), 4);
  });

  it('tempo of each line', () => {
    expect(temposOnPath(path, main, played(0.05))[0]).toBeCloseTo(0.62, 2);
    expect(temposOnPath(path.slice(0, 5), main, played(0.05))).toEqual([null]);
  });

  it('levels of accents and taps', () => {
    const levels = Float64Array.from(main.accent, (accent, i) => (accent === 1 ? -16 : -30) + (i % 5) - 2);
    const model = levelsOnPath(path, main, levels, 1 / 3)!;
    expect([model.accentDb, model.tapDb]).toEqual([-16, -30]);
    expect(levelsOnPath(path, main, levels.fill(-20), 1 / 3)).toBeNull();
  });
});
