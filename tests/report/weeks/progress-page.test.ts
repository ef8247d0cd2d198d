import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { dayOf } from '../../../src/core/progress/day-number.ts';
import { type ExercisePlay, exerciseProgress } from '../../../src/core/progress/exercise-progress.ts';
import { periodsCompared } from '../../../src/core/progress/periods-compared.ts';
import { practiceLoad } from '../../../src/core/progress/practice-load.ts';
import { dayCourses } from '../../../src/report/weeks/day-courses.ts';
import { periodsPage } from '../../../src/report/weeks/periods-page.ts';
import { progressPage } from '../../../src/report/weeks/progress-page.ts';
import { plainSpaces } from '../../support/plain-spaces.ts';

const sha256 = (text: string) => createHash('sha256').update(text, 'utf8').digest('base64');
const parts = { fontFaces: '', sha256, script: null, images: {} };
const at = (week: number) => dayOf(20_000 + 7 * week);

/** Two takes a day; another pad from the fifth day on; timing gets clearer. */
const plays = Array.from({ length: 16 }, (_, i): ExercisePlay => {
  const week = Math.floor(i / 2);
  const figure = (value: number) => ({ value, low: value * 0.9, high: value * 1.1, strokes: 48 });
  const conditions = {
    exercise: 'a',
    bpm: 92,
    technique: 'wrist',
    pad: week < 4 ? 'gum pad' : 'mesh pad',
    sticks: 'oak',
    device: 'phone',
  };
  return {
    takeId: `take ${i}`,
    day: at(week),
    conditions,
    bpm: 92,
    figures: {
      'timing-spread': figure(9 - week + 0.1 * (i % 2)),
      'accent-to-tap-ratio': figure(12 + 0.1 * i),
      'timing-spread-share': figure(4),
    },
    take: null,
    score: 80,
  };
});
const today = at(8);
const load = practiceLoad([
  { day: at(6), minutes: 20, kind: 'logged' },
  { day: at(7), minutes: 90, kind: 'logged' },
]);
const page = (player = 'Mirelle', discomfort = false) => {
  const progress = exerciseProgress(plays, { discomfort, daysAgo: () => 3 });
  return plainSpaces(
    progressPage(
      { player, today, discomfort, guesses: [], load, exercises: [{ label: '>RLR', plays, progress }] },
      parts,
    ),
  );
};

describe('pictures over days', () => {
  it("count the takes of a day, leave unlike ones out of the day's middle, and mark where the pad changed", () => {
    const [timing, levels] = dayCourses(plays, { id: 'x', trendOf: () => '' });
    expect(timing!.days).toHaveLength(8);
    expect(timing!.breaks).toEqual([]);
    expect(timing!.takes[1]!.of).toBe('take 2 of 2 that day');
    expect(levels!.days.map(({ day }) => day)).toEqual([4, 5, 6, 7].map(at));
    expect(levels!.takes.filter(({ counts }) => !counts)).toHaveLength(8);
    expect(levels!.breaks).toEqual([{ at: 20_028, day: at(4), what: 'other pad' }]);
  });
});

describe("a player's page", () => {
  it('tells trends, the next tempo and the practice with its jump', () => {
    const html = page();
    expect(html).toContain('getting clearer');
    expect(html).toContain('8 unlike takes left out');
    expect(html).toContain('90 minutes, after 20 a week');
    expect(html).toContain('<strong>Next: ');
    expect(html).toContain('Look after yourself');
    expect(html).toContain('aria-label="Figures of: Do the strokes scatter less from week to week? &gt;RLR"');
    expect(html).toContain('The last four weeks, day by day');
  });

  it('advises no tempo while something hurts', () => {
    const html = page('Mirelle', true);
    expect(html).toContain('no tempo is advised');
    expect(html).toContain('there is no tempo to try next');
  });

  it('gives days before and after their verdict, and says what is missing without one', () => {
    const periods = (fromDay: string) => {
      const compared = periodsCompared(plays, fromDay);
      return periodsPage({ player: 'M', exercise: '>RLR', fromDay, plays, compared }, parts);
    };
    expect(periods(at(4))).toContain('Timing spread: clearer.');
    const few = periods(at(1));
    expect(few).toContain('too few days for a verdict');
    expect(few).toContain('A verdict needs 3 days on each side');
  });

  it.each(['</script><script>alert(1)</script>', '"><img src=x onerror=alert(1)>', '\u202Egnp.exe'])(
    'shows a name from outside as text: %s',
    (hostile) => {
      const html = page(hostile);
      expect(html).not.toContain('<script>alert');
      expect(html).not.toContain('<img src=x');
      expect(html).not.toContain('\u202E');
    },
  );
});
