import type { MeasureResult, Scope, TakeResult } from '../../src/core/result/take-result.ts';
import { advise } from '../../src/core/scoring/advise.ts';
import { cannotTell } from '../../src/core/scoring/cannot-tell.ts';
import { handRatioGap } from '../../src/core/scoring/hand-ratio-gap.ts';
import { steady } from '../../src/core/scoring/rubrics/steady.ts';
import { scoreTake } from '../../src/core/scoring/score-take.ts';

const lineA = '>RLR >LRL >RLR >LRL';
const lineB = 'R>LR L>RL R>LR L>RL';
const bpm = 100;
const partial = 60 / bpm / 3;
const missedSlot = 41;
const extraAfterSlot = 17;

/** Deterministic noise with mean 0 and standard deviation close to 1 (twelve uniform numbers added). */
function noise(seed: number): () => number {
  let state = seed;
  const uniform = () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
  return () => Array.from({ length: 12 }, uniform).reduce((sum, u) => sum + u, -6);
}

/** 72 slots: two lines of four triplets, each line three times, without a gap. */
function exampleSlots() {
  return [lineA, lineB].flatMap((notation, line) =>
    [0, 1, 2].flatMap((repeat) =>
      notation.split(' ').flatMap((beatText, beat) => {
        const notes = [...beatText.matchAll(/(>?)([RL])/g)];
        return notes.map(([, mark, hand], i) => ({
          line,
          repeat,
          bar: 0,
          beat,
          partial: i + 1,
          divisions: 3,
          hand: hand as 'R' | 'L',
          accent: mark === '>',
          position: beat + i / 3,
        }));
      }),
    ),
  );
}

function handSetMeasures(): MeasureResult[] {
  const measured = (
    id: string,
    unit: string,
    value: number,
    low: number,
    high: number,
    scope: Scope = {},
    pointsAt: number[] = [],
    strokes = 71,
  ): MeasureResult => ({
    id,
    unit,
    scope,
    outcome: { state: 'measured', value, low, high, strokes, pointsAt },
  });
  return [
    measured('timing-spread', 'ms', 11.6, 9.8, 14.1, {}, [29, 52, 63]),
    measured('timing-spread-share', '%', 5.8, 4.9, 7.1, {}, [29, 52, 63]),
    measured('placement', 'ms', 9.4, 5.2, 13.6, {}, [2, 5, 8]),
    measured('placement', 'ms', -2.1, -6.0, 1.8, { partial: 1 }, [], 24),
    measured('placement', 'ms', -7.3, -11.2, -3.4, { partial: 2 }, [1, 4, 7], 23),
    measured('placement', 'ms', 9.4, 5.2, 13.6, { partial: 3 }, [2, 5, 8], 24),
    measured('placement-share', '%', 4.7, 2.6, 6.8, {}, [2, 5, 8]),
    measured('accent-bend', 'ms', 3.9, 0.4, 7.4, {}),
    measured('accent-bend', 'ms', 1.2, -2.4, 4.8, { place: 'before' }, [], 24),
    measured('accent-bend', 'ms', -0.8, -4.1, 2.5, { place: 'on' }, [], 24),
    measured('accent-bend', 'ms', -3.9, -7.4, -0.4, { place: 'after' }, [], 23),
    measured('accent-bend-share', '%', 2.0, 0.2, 3.7),
    measured('hand-offset', 'ms', 3.1, -0.9, 7.1),
    measured('hand-offset-share', '%', 1.6, -0.5, 3.6),
    measured('ioi-evenness', '%', 7.9, 6.7, 9.6),
    measured('tempo-error', '%', 0.6, 0.1, 1.1),
    measured('tempo-change', '%', 1.4, 0.3, 2.5),
    measured('accent-to-tap-ratio', 'dB', 9.2, 8.4, 10.0),
    measured('accent-to-tap-ratio', 'dB', 10.8, 9.7, 11.9, { hand: 'R' }, [], 36),
    measured('accent-to-tap-ratio', 'dB', 7.6, 6.4, 8.8, { hand: 'L' }, [], 35),
    measured('accent-to-tap-ratio', 'dB', 9.9, 8.8, 11.0, { line: 0 }, [], 36),
    measured('accent-to-tap-ratio', 'dB', 8.5, 7.3, 9.7, { line: 1 }, [], 35),
    measured('separation', 'probability', 0.985, 0.952, 0.996, {}, [22, 46]),
    measured('tap-ceiling', '%', 21.3, 12.0, 34.9, {}, [10, 22, 34, 46, 58, 70]),
    measured('tap-spread', 'dB', 2.4, 1.9, 3.2, {}, [10, 22, 46], 47),
    measured('tap-spread', 'dB', 1.9, 1.4, 2.9, { hand: 'R' }, [], 24),
    measured('tap-spread', 'dB', 2.8, 2.1, 4.1, { hand: 'L' }, [10, 22, 46], 23),
    measured('accent-spread', 'dB', 1.3, 0.9, 2.0, {}, [], 24),
    measured('accent-spread', 'dB', 1.1, 0.7, 2.1, { hand: 'R' }, [], 12),
    measured('accent-spread', 'dB', 1.4, 0.9, 2.7, { hand: 'L' }, [], 12),
    measured('missed', '%', 1.4, 0.2, 7.5, {}, [], 72),
    measured('extra', '%', 1.4, 0.2, 7.5, {}, [18], 72),
    measured('doubled', '%', 0, 0, 5.1, {}, [], 72),
    measured('missed-and-extra', '%', 2.8, 0.8, 9.6, {}, [18], 72),
  ];
}

/**
 * A valid take result as a player in the second year might get it: two lines at 100 BPM, 72 slots, one stroke
 * missed, one too many. Deterministic; columns are made from a seed, measures are set by hand to fit them roughly;
 * scores, advice and open questions follow from the measures by the steady rubric. `changes` replaces top-level parts.
 */
export function exampleResult(changes: Partial<TakeResult> = {}): TakeResult {
  const draw = noise(20240613);
  const slots = exampleSlots();
  const strokes: TakeResult['strokes'] = {
    time: [],
    timeSe: [],
    levelDb: [],
    levelSe: [],
    role: [],
    slot: [],
    hand: [],
    deviationMs: [],
  };
  const strokeOfSlot: (number | null)[] = [];
  const start = 2.4;
  const push = (time: number, levelDb: number, slot: number | null, deviationMs: number | null) => {
    strokes.time.push(time);
    strokes.timeSe.push(0.0004);
    strokes.levelDb.push(levelDb);
    strokes.levelSe.push(0.15);
    strokes.role.push(slot === null ? 'extra' : 'matched');
    strokes.slot.push(slot);
    strokes.hand.push(slot === null ? null : slots[slot]!.hand);
    strokes.deviationMs.push(deviationMs);
    return strokes.time.length - 1;
  };
  slots.forEach((slot, index) => {
    const deviationMs = [-2.1, -7.3, 9.4][slot.partial - 1]! + 11 * draw();
    const even = start + index * partial * (1 - index * 0.0001);
    const levelDb =
      (slot.accent ? -14 : -23.5) + (slot.hand === 'L' ? -1 : 0) + (slot.accent ? 1.2 : 2.3) * draw();
    if (index === missedSlot) strokeOfSlot.push(null);
    else strokeOfSlot.push(push(even + deviationMs / 1000, levelDb, index, deviationMs));
    if (index === extraAfterSlot) push(even + 0.09, -31, null, null);
  });
  const end = strokes.time.at(-1)!;
  const line = (id: string, label: string, notation: string): TakeResult['sheet']['lines'][number] => ({
    id,
    label,
    notation,
    repeats: 3,
    bpm,
    beatsInBar: 4,
    restBeats: 0,
    leadChange: false,
    ratioBand: null,
  });
  const lines = [
    line('accent-1-hand-to-hand', 'Accent on 1, hand-to-hand', lineA),
    line('accent-2-hand-to-hand', 'Accent on 2, hand-to-hand', lineB),
  ];
  const handSet = handSetMeasures();
  const measures = [...handSet, handRatioGap(handSet, 'as-written')];
  const rubric = steady;
  const scored = scoreTake({ measures, lines, strokes: 71, rubric });
  const scores = scored.state === 'scored' ? scored.scores : null;
  return {
    schema: 'evenhand-take-result',
    version: 1,
    recording: {
      name: 'tuesday-pad.wav',
      sha256: '5f2b'.repeat(16),
      sampleRate: 48000,
      channels: 1,
      duration: end + 1.8,
      noiseFloorDb: -62,
      envelope: Array.from({ length: 240 }, (_, i) => (i < 30 || i > 215 ? 0.002 : i % 3 === 0 ? 0.2 : 0.07)),
    },
    sheet: {
      title: 'Accents on 1 and 2',
      lines,
    },
    grading: { state: 'graded' },
    reference: { kind: 'asked-tempo' },
    strokes,
    slots: {
      line: slots.map((s) => s.line),
      repeat: slots.map((s) => s.repeat),
      bar: slots.map((s) => s.bar),
      beat: slots.map((s) => s.beat),
      partial: slots.map((s) => s.partial),
      divisions: slots.map((s) => s.divisions),
      hand: slots.map((s) => s.hand),
      accent: slots.map((s) => s.accent),
      grace: slots.map(() => false),
      buzz: slots.map(() => false),
      position: slots.map((s) => s.position),
      stroke: strokeOfSlot,
      state: strokeOfSlot.map((stroke) => (stroke === null ? 'missed' : 'played')),
    },
    segments: [
      {
        firstSlot: 0,
        lastSlot: 71,
        state: 'graded',
        leadSwapped: false,
        from: strokes.time[0]!,
        to: end,
        bpm: 100.6,
      },
    ],
    tempo: {
      time: Array.from({ length: 24 }, (_, i) => start + i * 3 * partial),
      bpm: Array.from({ length: 24 }, (_, i) => 99.9 + i * 0.06),
      segment: Array.from({ length: 24 }, () => 0),
    },
    hands: 'as-written',
    measures,
    scores,
    advice: advise({ measures, lines, rubric, scores, bpm }),
    warnings: [],
    cannotTell: cannotTell({
      measures,
      lines,
      rubric,
      scored,
      reference: 'asked-tempo',
      hands: 'as-written',
    }),
    ...changes,
  };
}
