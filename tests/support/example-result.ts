import type { TakeResult } from '../../src/core/result/take-result.ts';
import { advise } from '../../src/core/scoring/advise.ts';
import { cannotTell } from '../../src/core/scoring/cannot-tell.ts';
import { handRatioGap } from '../../src/core/scoring/hand-ratio-gap.ts';
import { steady } from '../../src/core/scoring/rubrics/steady.ts';
import { scoreTake } from '../../src/core/scoring/score-take.ts';
import { exampleMeasures } from './example-measures.ts';

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
  const handSet = exampleMeasures();
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
