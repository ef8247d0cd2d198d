import { openTempo } from '../click-track/plan-clicks.ts';
import type { SilentStretch } from '../click-track/silent-stretches.ts';
import { studentTQuantile } from '../stats/student-t-quantile.ts';
import { theilSen } from '../stats/theil-sen.ts';
import { defineMeasure } from './measure.ts';
import { measured, notApplicable, notMeasurable } from './outcomes.ts';
import type { Performance } from './performance.ts';
import type { PlayedStroke } from './played-stroke.ts';
import { comparable } from './worst-strokes.ts';

/** Strokes of a silence below which its line isn't drawn. Our judgement. */
const fewestStrokes = 4;
/** Strokes of a silence that its line is drawn through at most, evenly chosen: pairs are counted. Our judgement. */
const mostStrokes = 200;
/** Silences below which nothing can be said of how they differ. Our judgement. */
const fewestSilences = 3;
/** Strokes shown: the last ones of the silences over which the beat moved most. Our judgement. */
const shown = 3;

/** One silence: by how much each beat comes later, ms, and the beats, strokes and last stroke it rests on. */
interface Silence {
  readonly slope: number;
  readonly beats: number;
  readonly strokes: number;
  readonly last: number;
}

/** Lateness (ms) against beats of strokes in one go at one tempo: Theil–Sen slope, and how much it weighs. */
function line(strokes: readonly PlayedStroke[], beatSeconds: number) {
  const x = strokes.map(({ position }) => position);
  const y = strokes.map(({ time, position }) => 1000 * (time - position * beatSeconds));
  const middle = x.reduce((total, value) => total + value, 0) / x.length;
  const weight = x.reduce((total, value) => total + (value - middle) ** 2, 0);
  return weight === 0 ? [] : [{ slope: theilSen(x, y).slope, weight }];
}

/** Lateness against beats in one silence; where a run ends or the tempo changes, the line begins anew. */
function slopeIn({ strokes, sheet }: Performance, { from, to }: SilentStretch): Silence[] {
  const tempo = ({ slot }: PlayedStroke) => 60 / (sheet.lines[slot.line]!.bpm ?? openTempo);
  const inside = strokes.filter((stroke) => {
    const half = tempo(stroke) / stroke.slot.divisions / 2;
    return stroke.time >= from - half && stroke.time < to - half;
  });
  if (inside.length < fewestStrokes) return [];
  const lines = [...new Set(inside.map(({ stretch }) => stretch))].flatMap((stretch) => {
    const all = inside.filter((stroke) => stroke.stretch === stretch);
    const every = Math.ceil(all.length / mostStrokes);
    const own = all.filter((_, i) => i % every === 0);
    return line(own, tempo(own[0]!));
  });
  const weight = lines.reduce((total, one) => total + one.weight, 0);
  if (weight === 0) return [];
  const slope = lines.reduce((total, one) => total + one.weight * one.slope, 0) / weight;
  const beats = Math.max(1, Math.round((to - from) / tempo(inside[0]!)));
  return [{ slope, beats, strokes: inside.length, last: inside.at(-1)!.stroke }];
}

const sum = (silences: readonly Silence[], of: (one: Silence) => number) =>
  silences.reduce((total, one) => total + of(one), 0);

/** How the beat moves while the click is silent. */
export const silentWander = defineMeasure(
  {
    id: 'silent-wander',
    title: 'Wander per silent beat',
    unit: 'ms',
    better: 'near-zero',
    describes:
      "How much later (with a minus: sooner) each beat comes than the one before, against the click's tempo, while the click is silent.",
    formula:
      'Σ b·s / Σ b over the silences; b: beats of a silence, s: Theil–Sen slope of lateness against beats in it',
    interval:
      "Student's t over the slopes of the silences, each weighted by its beats: not strokes but silences are independent of each other.",
    reading:
      'Near zero: the beat stands without help. A plus slows down, a minus runs away. Make the silences shorter, sing the beat through them, then lengthen them again.',
    limits: [
      'Exists only where this program played the click, with bars left silent.',
      'Silences that run once ahead and once late cancel, and the range is wide then.',
      'Three silences are the least; from six on the range gets useful.',
    ],
    reasons: ['click-never-silent', 'too-few-silences', 'no-stroke-in-silence'],
    source:
      "Theil–Sen slope (Sen 1968) in each silence, which a stray stroke doesn't bend, and a t interval over silences as the units, as for cluster means (textbook method). Least numbers are our judgement.",
  },
  (performance) => {
    const { silences } = performance;
    const part = (outcome: ReturnType<typeof measured>) => [{ scope: {}, outcome }];
    if (silences.length === 0) return part(notApplicable('click-never-silent'));
    const found = silences.flatMap((silence) => slopeIn(performance, silence));
    const count = found.length;
    if (count === 0) return part(notMeasurable('no-stroke-in-silence', { needed: fewestStrokes }));
    const beats = sum(found, (one) => one.beats);
    const value = sum(found, (one) => one.beats * one.slope) / beats;
    if (count < fewestSilences)
      return part(
        notMeasurable('too-few-silences', {
          silences: count,
          needed: fewestSilences,
          beats,
          msPerBeat: value,
        }),
      );
    const squares = sum(found, (one) => (one.beats * (one.slope - value)) ** 2);
    const se = Math.sqrt((squares * count) / (count - 1)) / beats;
    const half = studentTQuantile(0.975, count - 1) * se;
    const pointsAt = found
      .map(({ slope, beats, last }) => ({ size: comparable(Math.abs(slope * beats)), last }))
      .toSorted((a, b) => b.size - a.size || a.last - b.last)
      .slice(0, shown)
      .map(({ last }) => last);
    const strokes = sum(found, (one) => one.strokes);
    return part(measured({ value, low: value - half, high: value + half, strokes, pointsAt }));
  },
);
