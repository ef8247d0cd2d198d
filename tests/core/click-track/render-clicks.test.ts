import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ClickOptions, type ClickSound, plainClick } from '../../../src/core/click-track/click-plan.ts';
import { planClicks } from '../../../src/core/click-track/plan-clicks.ts';
import { clickBlocks, renderClicks, trackLength } from '../../../src/core/click-track/render-clicks.ts';
import { parseSheet } from '../../../src/core/exercise/parse-sheet.ts';

function sheet(text: string) {
  const parsed = parseSheet(text);
  if (!parsed.ok) throw new Error('no sheet');
  return parsed.sheet;
}

const planOf = (text: string, options: Partial<ClickOptions> = {}) =>
  planClicks(sheet(text), { ...plainClick, ...options });

const peakOf = (samples: Float32Array) =>
  samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);

const sounds: readonly ClickSound[] = ['wood', 'tick', 'beep'];
const rates = [44_100, 48_000, 96_000];

describe('renderClicks', () => {
  it('begins each click at the sample nearest to its time, after silence, always the same', () => {
    for (const bpm of [40, 97.3, 220]) {
      for (const rate of rates) {
        const plan = planOf(`>RLR >LRL >RLR >LRL ; tempo: ${bpm} ; times: 4`, { sound: 'tick' });
        const track = renderClicks(plan, rate);
        const starts = Array.from(track.keys()).filter((i) => track[i] !== 0 && track[i - 1] === 0);
        for (const [i, { time }] of plan.clicks.entries()) {
          const at = Math.round(time * rate);
          expect(track[at]).not.toBe(0);
          if (i > 0) expect(track[at - 1]).toBe(0);
          if (i > 0) expect(starts).toContain(at);
        }
        const beat = (i: number) => {
          const at = Math.round(plan.clicks[i]!.time * rate);
          return track.slice(at, at + 500);
        };
        expect(beat(5)).toEqual(beat(6));
      }
    }
  });

  it('is silent where it shall be', () => {
    const plan = planOf('>RLR >LRL >RLR >LRL ; tempo: 120 ; times: 4', {
      silence: { heard: 1, lengths: [1] },
    });
    const track = renderClicks(plan, 44_100);
    for (const { time, audible } of plan.clicks) {
      const at = Math.round(time * 44_100);
      expect(peakOf(track.slice(at, at + 4000)) > 0.2).toBe(audible);
    }
  });

  it('has the levels that are stated for each kind, dBFS, and neither steps nor an end cut off', () => {
    for (const sound of sounds) {
      for (const bell of [false, true]) {
        const plan = planOf('>RLR >LRL ; tempo: 40 ; times: 2', { sound, bell, subdivisions: 2 });
        for (const rate of rates) {
          const track = renderClicks(plan, rate);
          const levels = { 'count-in': -3.1, bar: -1.9, beat: -4, subdivision: -13.2 };
          for (const { time, kind } of plan.clicks) {
            const at = Math.round(time * rate);
            const click = track.slice(at, at + Math.round(0.7 * rate));
            expect(20 * Math.log10(peakOf(click))).toBeCloseTo(levels[kind], 0);
            expect(Math.abs(click[0]!)).toBeLessThan(0.06 * peakOf(click));
            const end = click.findLastIndex((sample) => sample !== 0);
            expect(Math.abs(click[end]!)).toBeLessThan(1e-5);
          }
        }
      }
    }
  });

  it('comes in blocks that make the whole track, and never leaves full scale', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 400, noNaN: true }),
        fc.constantFrom(1, 2, 3, 4, 6),
        fc.constantFrom(...sounds),
        fc.boolean(),
        (bpm, subdivisions, sound, bell) => {
          const line = { ...sheet('>RLR >LRL ; times: 3').lines[0]!, bpm };
          const plan = planClicks({ title: '', lines: [line] }, { ...plainClick, subdivisions, sound, bell });
          const whole = renderClicks(plan, 8000);
          const blocks = [...clickBlocks(plan, 8000)];
          expect(blocks.reduce((sum, block) => sum + block.length, 0)).toBe(trackLength(plan, 8000));
          expect(peakOf(whole)).toBeLessThanOrEqual(1);
          expect(peakOf(whole)).toBeGreaterThan(0.5);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('has no drift over an hour', () => {
    const line = { ...sheet('>RLR >LRL >RLR >LRL ; tempo: 97.3').lines[0]!, repeats: 1460 };
    const plan = planClicks({ title: '', lines: [line] }, { ...plainClick, sound: 'tick' });
    const rate = 8000;
    const track = renderClicks(plan, rate);
    expect(plan.duration).toBeGreaterThan(3600);
    plan.clicks.forEach(({ time }, beat) => {
      const asked = (beat * 60 * rate) / 97.3;
      expect(Math.abs(time * rate - asked)).toBeLessThan(1e-3);
      const at = Math.floor(asked) - 1;
      const first = at + track.slice(Math.max(0, at), at + 4).findIndex((sample) => sample !== 0);
      if (beat > 0) expect(Math.abs(first - asked)).toBeLessThanOrEqual(0.501);
    });
  });
});
