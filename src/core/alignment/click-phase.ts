import type { HeardClick } from '../onsets/stroke.ts';
import type { Segment } from './alignment.ts';
import { periodNear, placeAmong, soundsAt } from './click-places.ts';
import type { MainSlots } from './main-slots.ts';

/** Clicks per beat that a metronome is set to. */
const clicksPerBeat = [1, 2, 3, 4, 6, 0.5, 0.25, 1 / 3];
/** How far the played tempo may lie from the click's. This and the next: half to twice aligns simulated takes alike. */
const tempoTolerance = 0.04;
/** Scatter of a first stroke round its place in the click's beat, and the share of starts that ignore it. */
const phaseScatter = 0.07;
const ignored = 0.02;

/** How many clicks fall on a beat of this length (s) at this time, or null when the click keeps another tempo. */
export const clicksOnBeat = (
  click: HeardClick,
  period: number,
  time: number,
  tolerance = tempoTolerance,
): number | null => {
  const clickPeriod = periodNear(click, time);
  let best: number | null = null;
  let least = tolerance;
  for (const ratio of clicksPerBeat) {
    const off = Math.abs(Math.log((clickPeriod * ratio) / period));
    if (off < least) {
      least = off;
      best = ratio;
    }
  }
  return best;
};

/** Whether a click keeps the tempo of what was played. */
export const clickFits = (click: HeardClick, segments: readonly Segment[]): boolean => {
  const graded = segments.filter(({ state }) => state === 'graded');
  const fitting = graded.filter(({ period, origin }) => clicksOnBeat(click, period, origin, 0.02) !== null);
  return fitting.length > 0 && fitting.length >= graded.length / 2;
};

/** Whether a click sounds at half of a take's strokes (s) or more; with one that only counts in, it was played alone. */
export const clickGoesAlong = (click: HeardClick, times: readonly number[]): boolean =>
  2 * times.filter((time) => soundsAt(click, time)).length >= times.length;

/**
 * Price (nats, against a start at any phase) of a run that begins with this stroke on this slot, by where the
 * slot should lie between two clicks. Zero where the click keeps another tempo or comes less than once a beat.
 */
export const clickPhase =
  (click: HeardClick, main: MainSlots, times: Float64Array) =>
  (stroke: number, slot: number, period: number): number => {
    if (click.times.length < 2) return 0;
    const ratio = clicksOnBeat(click, period, times[stroke]!);
    if (ratio === null || ratio < 1) return 0;
    const place = main.position[slot]! * ratio;
    const off = placeAmong(click, times[stroke]!) - place;
    const beats = (off - Math.round(off)) / ratio;
    const density = Math.exp(-0.5 * (beats / phaseScatter) ** 2) / (phaseScatter * Math.sqrt(2 * Math.PI));
    return Math.log(((1 - ignored) * density) / ratio + ignored);
  };
