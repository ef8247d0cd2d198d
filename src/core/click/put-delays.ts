import type { Attack } from './click-seed.ts';
import type { ClickTimes } from './click-times.ts';

/** Ways of a click to the recording, s, less and more than none. */
const ways = { least: -0.05, most: 0.45 };
/** Clicks of the beginning that tell the delay, so that no difference of clocks has grown yet. */
const firstClicks = 32;
/** Delays are counted in steps, s; a click is as late as the other to a part of it. */
const step = 0.0005;
const mostDelays = 8;

/**
 * Delays by which many of the first clicks lie on attacks, s, the likeliest first. `attacks` in order of time.
 *
 * @example likelyDelays([{ kind: 'beat', times: [0, 0.5] }], [{ time: 0.1, … }, { time: 0.6, … }])[0] // 0.1
 */
export function likelyDelays(clicks: readonly ClickTimes[], attacks: readonly Attack[]): number[] {
  const first = clicks
    .flatMap(({ times }) => times.slice(0, firstClicks))
    .sort((a, b) => a - b)
    .slice(0, firstClicks);
  const later = first.flatMap((put) => {
    return attacks
      .filter(({ time }) => time >= put + ways.least && time <= put + ways.most)
      .map(({ time }) => time - put);
  });
  later.sort((a, b) => a - b);
  const spans = later.map((from, i) => {
    let end = i;
    while (end < later.length && later[end]! <= from + step) end++;
    return { delay: later[(i + end - 1) >> 1]!, clicks: end - i };
  });
  spans.sort((a, b) => b.clicks - a.clicks);
  const found: number[] = [];
  for (const { delay } of spans) {
    if (found.length === mostDelays) break;
    if (found.every((other) => Math.abs(other - delay) > step)) found.push(delay);
  }
  return found;
}
