import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainClick } from '../../../src/core/click-track/click-plan.ts';
import { planClicks } from '../../../src/core/click-track/plan-clicks.ts';
import { parseSheet } from '../../../src/core/exercise/parse-sheet.ts';

function sheet(text: string) {
  const parsed = parseSheet(text);
  if (!parsed.ok) throw new Error('no sheet');
  return parsed.sheet;
}

const two = sheet('>RLR >LRL >RLR >LRL ; tempo: 120 ; times: 2 ; rest: 2\nRL RL RL ; bar: 3 ; tempo: 60\n');

describe('planClicks', () => {
  it("counts a bar in, then clicks on every beat at each line's tempo", () => {
    const { clicks, firstBeat, duration } = planClicks(two, plainClick);
    expect(firstBeat).toBeCloseTo(2, 12);
    expect(duration).toBeCloseTo(2 + 10 * 0.5 + 3, 12);
    expect(clicks.map(({ time }) => time)).toEqual([
      ...Array.from({ length: 14 }, (_, i) => i * 0.5),
      7,
      8,
      9,
    ]);
    expect(clicks.filter(({ kind }) => kind === 'bar').map(({ time }) => time)).toEqual([2, 4, 6, 7]);
  });

  it('counts bars on over the repeats of a line that is shorter than one', () => {
    const barsOf = (text: string) =>
      planClicks(sheet(text), { ...plainClick, countInBeats: 0 })
        .clicks.map(({ kind }) => (kind === 'bar' ? '|' : '.'))
        .join('');
    expect(barsOf('>RLR >LRL ; tempo: 90 ; times: 6')).toBe('|...|...|...');
    expect(barsOf('>RLR >LRL RLR ; bar: 3 ; tempo: 90 ; times: 2')).toBe('|..|..');
    expect(barsOf('RLR LRL | RLR ; tempo: 90 ; times: 2')).toBe('|.||.|');
  });

  it('divides beats and keeps long lines in time', () => {
    const long = sheet('>RLR ; tempo: 111 ; times: 900\n');
    const { clicks } = planClicks(long, { ...plainClick, subdivisions: 3, countInBeats: 0 });
    expect(clicks).toHaveLength(2700);
    expect(clicks[2697]!.time).toBeCloseTo((899 * 60) / 111, 9);
    expect(clicks[2699]!.time).toBeCloseTo(((899 + 2 / 3) * 60) / 111, 9);
  });

  it('leaves whole bars to the player, as long as the schedule says', () => {
    const bars = sheet('>RLR >LRL >RLR >LRL ; tempo: 120 ; times: 12\n');
    const heardIn = (lengths: number[]) =>
      planClicks(bars, { ...plainClick, silence: { heard: 2, lengths } })
        .clicks.filter(({ kind }) => kind === 'bar')
        .map(({ audible }) => (audible ? 'x' : '-'))
        .join('');
    expect(heardIn([1, 2, 3])).toBe('xx-xx--xx---');
    expect(heardIn([1])).toBe('xx-xx-xx-xx-');
    expect(heardIn([1, 2, 4])).toBe('xx-xx--xx---');
    expect(heardIn([])).toBe('xxxxxxxxxxxx');
  });

  it('counts in as many beats as are asked for', () => {
    const { firstBeat, clicks } = planClicks(two, { ...plainClick, countInBeats: 6 });
    expect(firstBeat).toBe(3);
    expect(clicks.filter(({ kind }) => kind === 'count-in')).toHaveLength(6);
  });

  it('has the same clicks with and without silence and bell; parts lie evenly between beats', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 400, noNaN: true }),
        fc.integer({ min: 1, max: 6 }),
        fc.integer({ min: 1, max: 6 }),
        fc.integer({ min: 1, max: 40 }),
        fc.array(fc.integer({ min: 1, max: 8 }), { minLength: 1, maxLength: 4 }),
        (bpm, beatsInBar, subdivisions, repeats, lengths) => {
          const line = { ...two.lines[0]!, bpm, beatsInBar, repeats, restBeats: 0 };
          const own = { title: '', lines: [line] };
          const options = { ...plainClick, subdivisions };
          const plain = planClicks(own, options).clicks;
          const silent = planClicks(own, { ...options, bell: true, silence: { heard: 1, lengths } }).clicks;
          expect(silent.map(({ time, kind }) => [time, kind])).toEqual(
            plain.map(({ time, kind }) => [time, kind]),
          );
          expect(silent.filter(({ kind }) => kind === 'count-in').every(({ audible }) => audible)).toBe(true);
          plain.forEach(({ time }, i) => {
            if (i > 0) expect(time).toBeGreaterThan(plain[i - 1]!.time);
          });
          const played = plain.filter(({ kind }) => kind !== 'count-in');
          expect(played).toHaveLength(repeats * 4 * subdivisions);
          const last = played.at(-1)!.time - played[0]!.time;
          expect(last).toBeCloseTo(((played.length - 1) * 60) / bpm / subdivisions, 9);
        },
      ),
    );
  });
});
