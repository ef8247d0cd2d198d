import { readAt } from '../signal/fractional-read.ts';
import type { Source } from '../signal/source.ts';
import { clearSeconds, wobble } from './clear-seconds.ts';
import { type ClickGrid, fitGrid } from './click-grid.ts';
import { type ClickMatch, isSure, leftOver, matchClick, matchSeconds } from './click-match.ts';
import { type Attack, type ClickSeed, periods, soundLead } from './click-seed.ts';
import { learnClickSound } from './click-sound-learned.ts';
import { closerThanChance } from './closer-than-chance.ts';

/** So many places in a row without a click that is surely heard, and it isn't followed on. */
const longestGap = 12;
/** Share of a click's power that may be left over where it is taken for heard, or for half covered by a stroke. */
export const halfCovered = 0.25;
/**
 * Into how many parts a found period may have to be divided, and how many clicks must be seen between those found:
 * at least so many, and this share of the places, for strokes cover the others.
 */
const between = { parts: [4, 3, 2] as const, fewest: 3, share: 0.2 };

/** A surely heard click and its number. */
export interface HeardAt extends ClickMatch {
  readonly k: number;
}

/** Clicks, in order, of which only every second, third or fourth was found, with those between them. */
export function everyClick(
  source: Source,
  heard: HeardAt[],
  duration: number,
  attacks: readonly Attack[],
): HeardAt[] {
  const grid = fitGrid(heard.map(({ k, time }) => ({ k, time, weight: 1 })));
  const count = Math.round(matchSeconds * source.sampleRate);
  const sound = commonStart(source, heard, duration, attacks);
  const first = heard[0]!.k;
  const span = heard.at(-1)!.k - first;
  for (const parts of between.parts) {
    const period = grid.period / parts;
    if (period < periods.shortest) continue;
    // Only places that no larger share of the period has: a click at every half doesn't make one at every quarter.
    const places = Array.from({ length: span * parts }, (_, i) => i).filter(
      (i) => i % parts !== 0 && (parts % 2 !== 0 || i % 2 !== 0),
    );
    const there = places.filter((i) => {
      const time = grid.origin + first * grid.period + i * period;
      return leftOver(readAt(source, time, count), sound, source.sampleRate) < halfCovered;
    });
    if (there.length < Math.max(between.fewest, between.share * places.length)) continue;
    const all = follow(source, { time: grid.origin + soundLead, period, sound }, duration);
    if (all.length > heard.length && isEven(all)) return all;
  }
  return heard;
}

/** Follows again what the clicks found have in common. */
export function followAgain(
  source: Source,
  heard: readonly HeardAt[],
  duration: number,
  attacks: readonly Attack[],
): HeardAt[] {
  const grid = fitGrid(heard.map(({ k, time }) => ({ k, time, weight: 1 })));
  const sound = commonStart(source, heard, duration, attacks);
  return follow(source, { time: grid.origin + soundLead, period: grid.period, sound }, duration);
}

/** The first milliseconds that the clicks found have in common. */
function commonStart(
  source: Source,
  heard: readonly HeardAt[],
  duration: number,
  attacks: readonly Attack[],
): Float32Array {
  const places = heard.map(({ time }) => ({
    start: time,
    clear: clearSeconds(time + soundLead, attacks, duration),
  }));
  return learnClickSound(source, places, Math.round(matchSeconds * source.sampleRate));
}

/** Follows a seed to both ends of the recording; the surely heard clicks with their numbers. */
export function follow(source: Source, seed: ClickSeed, duration: number): HeardAt[] {
  const heard: HeardAt[] = [];
  for (const direction of [1, -1]) {
    let gap = 0;
    let grid: ClickGrid = { origin: seed.time - soundLead, period: seed.period };
    for (let k = direction > 0 ? 0 : -1; gap < longestGap; k += direction) {
      const due = grid.origin + k * grid.period;
      if (due < 0 || due > duration - 0.01) break;
      const match = matchClick(source, seed.sound, due, wobble + gap * 0.00005);
      if (!isSure(match)) {
        gap++;
        continue;
      }
      gap = 0;
      heard.push({ ...match, k });
      if (heard.length >= 3)
        grid = fitGrid(heard.slice(-16).map((h) => ({ k: h.k, time: h.time, weight: 1 })));
    }
  }
  return heard.sort((a, b) => a.k - b.k);
}

/** Whether the clicks lie closer to their grid than strokes that happen to fall near one would. */
export function isEven(heard: readonly HeardAt[]): boolean {
  const { origin, period } = fitGrid(heard.map(({ k, time }) => ({ k, time, weight: 1 })));
  return closerThanChance(heard.map(({ k, time }) => time - origin - k * period));
}
