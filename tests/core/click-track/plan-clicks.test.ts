import { describe, expect, it } from 'vitest';
import { plainClick } from '../../../src/core/click-track/click-plan.ts';
import { planClicks } from '../../../src/core/click-track/plan-clicks.ts';
import { renderClicks } from '../../../src/core/click-track/render-clicks.ts';
import { parseSheet } from '../../../src/core/exercise/parse-sheet.ts';

function sheet(text: string) {
  const parsed = parseSheet(text);
  if (!parsed.ok) throw new Error('no sheet');
  return parsed.sheet;
}

const two = sheet('>RLR >LRL >RLR >LRL ; tempo: 120 ; times: 2 ; rest: 2\nRL RL RL ; bar: 3 ; tempo: 60\n');

describe('planClicks', () => {
  it('counts a bar in, then clicks on every beat at each line’s tempo', () => {
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
      planClicks(sheet(text), { ...plainClick, countInBars: 0 })
        .clicks.map(({ kind }) => (kind === 'bar' ? '|' : '.'))
        .join('');
    expect(barsOf('>RLR >LRL ; tempo: 90 ; times: 6')).toBe('|...|...|...');
    expect(barsOf('>RLR >LRL RLR ; bar: 3 ; tempo: 90 ; times: 2')).toBe('|..|..');
    expect(barsOf('RLR LRL | RLR ; tempo: 90 ; times: 2')).toBe('|.||.|');
  });

  it('divides beats and keeps long lines in time', () => {
    const long = sheet('>RLR ; tempo: 111 ; times: 900\n');
    const { clicks } = planClicks(long, { ...plainClick, subdivisions: 3, countInBars: 0 });
    expect(clicks).toHaveLength(2700);
    expect(clicks[2697]!.time).toBeCloseTo((899 * 60) / 111, 9);
    expect(clicks[2699]!.time).toBeCloseTo(((899 + 2 / 3) * 60) / 111, 9);
  });

  it('leaves whole bars to the player, one more each time', () => {
    const bars = sheet('>RLR >LRL >RLR >LRL ; tempo: 120 ; times: 12\n');
    const silence = { heard: 2, silent: 1, grows: true };
    const { clicks } = planClicks(bars, { ...plainClick, silence });
    const heard = clicks.filter(({ kind }) => kind === 'bar').map(({ audible }) => (audible ? 'x' : '-'));
    expect(heard.join('')).toBe('xx-xx--xx---');
    const even = planClicks(bars, { ...plainClick, silence: { ...silence, grows: false } });
    expect(
      even.clicks
        .filter(({ kind }) => kind === 'bar')
        .map(({ audible }) => (audible ? 'x' : '-'))
        .join(''),
    ).toBe('xx-xx-xx-xx-');
  });
});

describe('renderClicks', () => {
  it('begins each click at the sample nearest to its time, each of a kind alike, and is silent where it shall be', () => {
    const plan = planClicks(two, { ...plainClick, silence: { heard: 1, silent: 1, grows: false } });
    const rate = 44_100;
    const track = renderClicks(plan, rate);
    expect(track).toHaveLength(Math.ceil(plan.duration * rate));
    const at = (time: number) => track.slice(Math.round(time * rate), Math.round(time * rate) + 400);
    for (const { time, audible } of plan.clicks) {
      const peak = at(time).reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
      expect(peak > 0.2).toBe(audible);
      if (audible && time > 0) expect(track[Math.round(time * rate) - 1]).toBeCloseTo(0, 2);
    }
    expect(at(2.5)).toEqual(at(3));
    expect(track.every((sample) => Math.abs(sample) <= 1)).toBe(true);
  });
});
