import { describe, expect, it } from 'vitest';
import { practisedPlayer } from '../../../fixtures/generator/player.ts';
import { renderTake } from '../../../fixtures/generator/render-take.ts';
import { plainTake } from '../../../fixtures/generator/take-spec.ts';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { parseSheet } from '../../../src/core/exercise/parse-sheet.ts';
import { gradeTake } from '../../../src/core/grade-take.ts';
import {
  gapWarnings,
  type RecordingGap,
  strokesOutsideGaps,
  withUnheard,
} from '../../../src/core/grading/recording-gaps.ts';
import { sentence } from '../../../src/core/result/sentences.ts';
import { floatSource } from '../../support/float-source.ts';
import { madeTake, padStroke } from './made-take.ts';

const { slots, alignment, strokes } = madeTake();

describe('withUnheard', () => {
  it('takes a slot due in a gap off the missed ones, and leaves one due elsewhere', () => {
    // Slot 7 is missed; it was due at 5 + 7/3 s.
    const inGap = withUnheard(alignment, { slots, strokes }, [{ at: 7300, frames: 100 }], 1000);
    expect(inGap).toMatchObject({ missed: [], unheard: [7] });
    expect(withUnheard(inGap, { slots, strokes }, [{ at: 7300, frames: 100 }], 1000)).toEqual(inGap);
    expect(withUnheard(alignment, { slots, strokes }, [{ at: 6300, frames: 100 }], 1000)).toMatchObject({
      missed: [7],
      unheard: [],
    });
  });
});

describe('a recording that begins or ends inside the exercise', () => {
  it('has the slots that were due outside it unheard, not missed', () => {
    // Slot 7 is missed; it was due at 5 + 7/3 s.
    const ended = withUnheard(alignment, { slots, strokes }, [], 1000, 7.3);
    expect(ended).toMatchObject({ missed: [], unheard: [7] });
    expect(withUnheard(alignment, { slots, strokes }, [], 1000, 12)).toMatchObject({
      missed: [7],
      unheard: [],
    });
    const later = strokes.map((stroke) => ({ ...stroke, time: stroke.time - 7.35 }));
    const segments = alignment.segments.map((segment) => ({ ...segment, origin: segment.origin - 7.35 }));
    const begun = withUnheard({ ...alignment, segments }, { slots, strokes: later }, [], 1000, 12);
    expect(begun).toMatchObject({ missed: [], unheard: [7] });
    expect(gapWarnings([], 1000, [7])).toEqual([{ code: 'cut-inside-exercise', facts: { unheard: 1 } }]);
  });
});

describe('strokesOutsideGaps', () => {
  it("drops what a gap's edges make", () => {
    const strokes = [0.98, 0.995, 1.05, 1.105, 1.12].map((time) => padStroke(time));
    const kept = strokesOutsideGaps(strokes, [{ at: 1000, frames: 100 }], 1000);
    expect(kept.map(({ time }) => time)).toEqual([0.98, 1.12]);
  });
});

it('gapWarnings tells how many, where and how much', () => {
  expect(gapWarnings([], 48000)).toEqual([]);
  const gaps = [
    { at: 480000, frames: 4800 },
    { at: 960000, frames: 2400 },
  ];
  expect(sentence(gapWarnings(gaps, 48000, [3])[0]!)).toBe(
    'Sound was lost while recording: 2 gaps, the first at 0:10.0, 150 ms in all. 1 stroke was due there and not counted as missed.',
  );
});

describe('a take with a gap', () => {
  const parsed = parseSheet('tempo: 100\n>RLR >LRL ; times: 12');
  if (!parsed.ok) throw new Error(parsed.faults[0]!.code);
  const { sheet } = parsed;
  const take = renderTake({
    ...plainTake,
    slots: layOut(sheet),
    bpm: 100,
    seed: 5,
    player: practisedPlayer,
  });
  const graded = (gaps: readonly RecordingGap[], told: boolean) => {
    const samples = take.samples.slice();
    for (const { at, frames } of gaps) samples.fill(0, at, at + frames);
    return gradeTake(floatSource(take.sampleRate, samples), sheet, told ? { gaps } : {});
  };
  const whole = (result: ReturnType<typeof graded>, id: string) =>
    result.measures.find((m) => m.id === id && Object.keys(m.scope).length === 0)!.outcome;
  const share = (result: ReturnType<typeof graded>, id: string) => {
    const outcome = whole(result, id);
    return outcome.state === 'measured' ? outcome.value : Number.NaN;
  };

  it.each([0.05, 0.15, 0.4, 0.9])('of %s s counts no stroke of it as missed or extra', (seconds) => {
    const first = take.truth.strokes[20]!.time - 0.02;
    const gap = { at: Math.round(first * take.sampleRate), frames: Math.round(seconds * take.sampleRate) };
    const lost = take.truth.strokes.filter(({ time }) => time > first && time < first + seconds).length;
    expect(lost).toBeGreaterThan(0);
    const without = graded([gap], false);
    const result = graded([gap], true);
    expect(without.slots.state.filter((state) => state === 'missed').length).toBeGreaterThan(0);
    expect(result.slots.state.filter((state) => state === 'missed')).toEqual([]);
    expect(result.slots.state.filter((state) => state === 'not-reached')).toHaveLength(lost);
    expect(result.strokes.role.filter((role) => role !== 'matched')).toEqual([]);
    // Not told of the gap, the strokes in it count as missed, unless the check of the recording finds it itself.
    const untold = whole(without, 'missed');
    if (untold.state === 'measured') expect(untold.value).toBeGreaterThan(0);
    else expect(untold.reason.code).toBe('spoiled-drop-outs');
    expect(share(result, 'missed')).toBe(0);
    expect(result.warnings.map(({ code }) => code)).toEqual(['gaps-in-recording']);
    expect(result.warnings[0]!.facts).toMatchObject({ gaps: 1, unheard: lost });
    expect(result.hands).not.toBe('not-told');
  });
});
