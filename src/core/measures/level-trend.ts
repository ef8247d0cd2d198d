import { beatOf } from './beat-of.ts';
import type { PlayedStroke } from './played-stroke.ts';
import { fitTempo, type Mixture, type WanderModel } from './tempo-fit.ts';

/** How levels fade from beat to beat, coarser than for timing: they hang together less. */
const models: readonly WanderModel[] = [0, 0.5, 0.8, 0.93].flatMap((memory) =>
  [0.1, 0.3, 1, 3].map((ratio) => ({ memory, ratio })),
);

interface BeatLevel {
  readonly stretch: number;
  readonly beat: number;
  readonly time: number;
  readonly accent: boolean;
  sum: number;
  n: number;
}

/**
 * Levels less the mean of their kind (accent, partial and hand), averaged over the accents and the taps of each beat.
 */
function beatLevels(strokes: readonly PlayedStroke[]): BeatLevel[] {
  const kindOf = ({ slot, hand }: PlayedStroke) =>
    `${slot.line} ${slot.accent} ${slot.divisions} ${slot.partial} ${hand ?? slot.hand}`;
  const kinds = new Map<string, { sum: number; n: number }>();
  for (const stroke of strokes) {
    const { sum, n } = kinds.get(kindOf(stroke)) ?? { sum: 0, n: 0 };
    kinds.set(kindOf(stroke), { sum: sum + stroke.levelDb, n: n + 1 });
  }
  const beats = new Map<string, BeatLevel>();
  for (const stroke of strokes) {
    const { sum, n } = kinds.get(kindOf(stroke))!;
    const key = `${beatOf(stroke)} ${stroke.slot.accent}`;
    const { stretch, time } = stroke;
    const beat = beats.get(key) ?? {
      stretch,
      time,
      beat: Math.floor(stroke.position + 1e-6),
      accent: stroke.slot.accent,
      sum: 0,
      n: 0,
    };
    beat.sum += stroke.levelDb - sum / n;
    beat.n++;
    beats.set(key, beat);
  }
  return [...beats.values()];
}

/**
 * Change of level from the start of the take to its end, dB, with memory from beat to beat (a Kalman filter averaged
 * over models of it, Harvey 1989): of the strokes, or with `ratio` of accents against taps. Each line has a mean of its
 * own, so that a later line that asks for other levels is no change; what changes only from line to line goes with it.
 * Null where there is nothing to tell it by.
 */
export function levelTrend(
  strokes: readonly PlayedStroke[],
  { ratio }: { readonly ratio: boolean },
): Mixture | null {
  const beats = beatLevels(strokes).sort((a, b) => a.time - b.time);
  const n = beats.length;
  if (n < 4) return null;
  const [from, to] = [beats[0]!.time, beats[n - 1]!.time];
  // Half a unit to either side: a coefficient is the change from start to end.
  const course = Float64Array.from(beats, ({ time }) => (time - from) / (to - from) - 0.5);
  const place = Float64Array.from(beats, ({ beat }) => beat);
  const accents = Float64Array.from(beats, ({ accent }) => (accent ? 1 : 0));
  const opposite = course.map((t, i) => t * accents[i]!);
  return fitTempo(
    {
      y: Float64Array.from(beats, (one) => one.sum / one.n),
      columns: ratio ? [accents, course, opposite] : [course],
      stretch: Int32Array.from(beats, ({ stretch }) => stretch),
      place,
    },
    models,
    n / 2,
  );
}
