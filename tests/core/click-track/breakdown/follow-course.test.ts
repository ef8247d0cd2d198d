import { describe, expect, it } from 'vitest';
import { seeded } from '../../../../fixtures/generator/random.ts';
import { beginCourse } from '../../../../src/core/click-track/breakdown/begin-course.ts';
import { followCourse } from '../../../../src/core/click-track/breakdown/follow-course.ts';
import { plainClick } from '../../../../src/core/click-track/click-plan.ts';
import { planClicks } from '../../../../src/core/click-track/plan-clicks.ts';
import { playRisingSheet, type RisingPlayer } from '../../../bench/breakdown-takes.ts';
import { risingExercise } from '../../../support/rising-notes.ts';

const sheet = risingExercise({ from: 90, to: 160, step: 10 }, 4);
const plan = planClicks(sheet, plainClick);
const practised: RisingPlayer = {
  scatter: 0.05,
  missed: 0.01,
  stumbles: 0.1,
  fall: { kind: 'none' },
  from: 5,
};

/** Where a player breaks down whose strokes are heard so many seconds late, with the click in the microphone or without. */
function brokeIn(player: Partial<RisingPlayer>, seed: number, delay = 0.05, click = false) {
  const slots = playRisingSheet(sheet, { ...practised, ...player }, seeded(seed));
  const own = slots.map(({ time }) => plan.firstBeat + time + delay);
  const clicks = click ? plan.clicks.map(({ time }) => time + delay) : [];
  const strokes = [...own, ...clicks].sort((a, b) => a - b);
  let course = beginCourse(sheet, plan);
  for (let now = 0; now < plan.duration + 3 && course.broke === null; now += 0.25)
    course = followCourse(
      course,
      strokes.filter((time) => time < now),
      now,
    );
  return course.broke;
}

describe('followCourse', () => {
  it('lets a practised player go through, whatever the delay, with the click in the microphone or without', () => {
    for (let seed = 0; seed < 20; seed++)
      expect(brokeIn({}, seed, (seed % 5) * 0.08, seed % 2 === 1), `${seed}`).toBeNull();
  });

  it.each([
    ['strokes without places', { fall: { kind: 'scatter', share: 0.35 } }, ['off-place']],
    ['a player who lags behind the click', { fall: { kind: 'lags', share: 0.08 } }, ['off-place']],
    ['most strokes missing', { fall: { kind: 'drops', share: 0.65 } }, ['missing', 'off-place']],
  ] as const)('ends with %s, within a tempo', (_, player, why) => {
    for (let seed = 0; seed < 6; seed++) {
      const broke = brokeIn(player, seed);
      expect(why).toContain(broke?.why);
      expect([5, 6]).toContain(broke?.line);
    }
  });

  it('ends where the player stops, before the tempo is over, though the microphone hears the click go on', () => {
    for (const click of [false, true])
      expect(brokeIn({ fall: { kind: 'stops' } }, 3, 0.2, click)).toEqual({ line: 5, why: 'stopped' });
  });

  it.each([
    [0.03, false],
    [0.1, true],
    [0.2, false],
    [0.33, false],
  ])(
    'ends where the player stops with a line, heard %f s late, though the next one is over before that is sure',
    (delay, heard) => {
      const quick = risingExercise({ from: 200, to: 320, step: 20 }, 4);
      const clicks = planClicks(quick, plainClick);
      const player = { ...practised, stumbles: 0, fall: { kind: 'stops' }, from: 4 } as const;
      const strokes = [
        ...playRisingSheet(quick, player, seeded(1)).map(({ time }) => clicks.firstBeat + time + delay),
        ...(heard ? clicks.clicks.map(({ time }) => time + delay) : []),
      ].sort((a, b) => a - b);
      let course = beginCourse(quick, clicks);
      for (let now = 0; now < clicks.duration && course.broke === null; now += 0.1)
        course = followCourse(
          course,
          strokes.filter((time) => time < now),
          now,
        );
      expect(course.broke).toEqual({ line: 4, why: 'stopped' });
    },
  );

  it('says that nothing can be judged where clicks that are heard lie on most strokes, and only there', () => {
    const after = (divide: number, heard: boolean) => {
      const clicks = planClicks(sheet, { ...plainClick, subdivisions: divide });
      const played = playRisingSheet(sheet, practised, seeded(2)).map(
        ({ time }) => clicks.firstBeat + time + 0.05,
      );
      const sounding = heard ? clicks.clicks.map(({ time }) => time + 0.05) : [];
      const strokes = [...played, ...sounding].sort((a, b) => a - b).filter((time) => time < 12);
      return followCourse(beginCourse(sheet, clicks), strokes, 12);
    };
    // Triplets: a click on each of them, or on the first alone.
    expect(after(3, true)).toMatchObject({ covered: true, broke: null });
    expect(after(3, false)).toMatchObject({ covered: false });
    expect(after(1, true)).toMatchObject({ covered: false });
  });

  it('does not call it a breakdown when nobody has begun', () => {
    expect(brokeIn({ fall: { kind: 'stops' }, from: 0 }, 1)).toBeNull();
  });
});
