import { hearStrokes } from '../../src/core/onsets/hear-strokes.ts';
import { type BenchTake, memorySource } from './bench-take.ts';
import { matchEvents } from './match-events.ts';
import { constantOffset, scoreTake, type TakeScore, widestOffset } from './score-take.ts';

/** What the program makes of a take. */
export interface HeardTake {
  readonly score: TakeScore;
  /** Strokes with an attack found on them, whatever it was taken for. */
  readonly anyClass: number;
  /** Clicks in the take, of those found, and claimed. */
  readonly clicks: { readonly there: number; readonly found: number; readonly claimed: number };
}

const clickWindow = 0.005;

/** Hears a take with the program itself. Only what it takes for strokes on the pad counts. */
export function hearTake(take: BenchTake): HeardTake {
  const hearing = hearStrokes(memorySource(take.samples, take.sampleRate));
  const pads = hearing.sounds.filter(({ sound }) => sound === 'pad');
  const claimed = hearing.click?.times ?? [];
  const { clicks, strokes } = take.truth;
  const shift = constantOffset(clicks, claimed, widestOffset.own);
  const moved = claimed.map((time) => time - shift);
  const wanted = strokes.filter(({ role }) => role !== 'bounce').map(({ time }) => time);
  const attacks = hearing.sounds.map(({ time }) => time);
  return {
    score: scoreTake(take, pads),
    anyClass: matchEvents(wanted, attacks, 2 * clickWindow).length,
    clicks: {
      there: clicks.length,
      found: matchEvents(clicks, moved, clickWindow).length,
      claimed: claimed.length,
    },
  };
}
