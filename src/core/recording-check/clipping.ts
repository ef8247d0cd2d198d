import { anyBetween } from '../stats/any-between.ts';
import { mean } from '../stats/mean.ts';
import type { Finding, HeardRecording } from './heard-recording.ts';
import { accentLevels, tapLevels } from './spoiled-measures.ts';

/** A stroke's tops lie so near its onset, s. */
const stroke = { before: 0.001, after: 0.025 };
/** A click that is cut itself says nothing of a stroke under it, s. */
const nearClick = 0.06;
/** Less isn't worth a word, dB. */
const leastDb = 0.3;
/**
 * Strokes of a kind whose tops lack so much on average have levels that are wrong: rendered takes leave their intervals
 * from 1 to 3 dB on (`reports/recording-check.md`).
 */
const spoilingDb = 1;

/**
 * Waves cut off flat, at full scale or, where it happened before the converter, below it. Says how many strokes it met
 * and how much of the loudest is missing, by the slopes at the edges of the cut.
 */
export function clipping({ channels, hearing, performance }: HeardRecording): Finding | null {
  const { sampleRate } = channels[0]!;
  const tops = channels
    .flatMap(({ flatTops }) => flatTops)
    .map(({ at, overDb, level }) => ({ time: at / sampleRate, overDb, level: Math.abs(level) }))
    .sort((a, b) => a.time - b.time);
  if (tops.length === 0) return null;
  const strokeTimes = hearing.sounds.filter(({ sound }) => sound !== 'click').map(({ time }) => time);
  const alone = (hearing.click?.times ?? []).filter(
    (time) => !anyBetween(strokeTimes, time - nearClick, time + nearClick),
  );
  const topTimes = tops.map(({ time }) => time);
  const clicksAreCut = alone.some((time) => anyBetween(topTimes, time - stroke.before, time + nearClick));
  const clicks = clicksAreCut ? hearing.click!.times : [];
  let next = 0;
  const overOf = performance.strokes.map(({ time }) => {
    if (anyBetween(clicks, time - nearClick, time + stroke.after)) return 0;
    while (next < tops.length && tops[next]!.time < time - stroke.before) next++;
    let over = 0;
    for (let i = next; i < tops.length && tops[i]!.time < time + stroke.after; i++)
      over = Math.max(over, tops[i]!.overDb);
    return over;
  });
  const cut = overOf.filter((over) => over >= leastDb).length;
  if (cut === 0) return null;
  const ofKind = (accent: boolean) => {
    const some = overOf.filter((_, i) => performance.strokes[i]!.slot.accent === accent);
    return some.length === 0 ? 0 : mean(some);
  };
  const spoils = new Set([
    ...(ofKind(true) >= spoilingDb ? accentLevels : []),
    ...(ofKind(false) >= spoilingDb ? [...accentLevels, ...tapLevels] : []),
  ]);
  const overDb = overOf.reduce((most, over) => Math.max(most, over), 0);
  const facts = { cut, of: overOf.length, overDb };
  return { code: 'clipped', facts, spoils: [...spoils] };
}
