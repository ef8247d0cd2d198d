/** Clicks heard as strokes lie this near to each other, s: one click is as late as the other, a hop is 3 ms: our judgement. */
const alike = 0.008;

/** The longest way of a click from the page to the microphone, s; wireless sound is slower than that. Our judgement. */
const longest = 0.4;

/** Clicks of the count-in that must be found; of four, one may be drowned. Our judgement. */
const fewest = 3;

/**
 * How much later the microphone hears the clicks that the page plays, s, judged from the count-in, when nobody plays
 * yet: null where it doesn't hear them. `countIn` and `strokes` in s of the track, rising.
 *
 * @example clicksHeard([0, 0.5, 1, 1.5], [0.04, 0.54, 1.04, 1.54, 2.01]) // 0.04
 */
export function clicksHeard(countIn: readonly number[], strokes: readonly number[]): number | null {
  const step = countIn.length < 2 ? 0 : countIn[1]! - countIn[0]!;
  const last = (countIn.at(-1) ?? 0) + step;
  const early = strokes.filter((time) => time < last);
  const delays = countIn.flatMap((time) =>
    early
      .filter((stroke) => stroke >= time && stroke < time + Math.min(longest, step))
      .map((stroke) => stroke - time),
  );
  let best: { readonly delay: number; readonly clicks: number } = { delay: 0, clicks: 0 };
  for (const delay of delays) {
    const clicks = countIn.filter((time) =>
      early.some((stroke) => Math.abs(stroke - time - delay) < alike),
    ).length;
    if (clicks > best.clicks) best = { delay, clicks };
  }
  return best.clicks >= Math.min(fewest, countIn.length) && best.clicks >= 2 ? best.delay : null;
}

/** The nearest that a stroke and a click may lie to be told apart, s: what begins within it counts as one. */
const covered = 0.055;

/** The times that lie under no click. Both rise. */
export function outOfClicks(times: readonly number[], clicks: readonly number[]): readonly number[] {
  if (clicks.length === 0) return times;
  let at = 0;
  const off = (click: number, time: number) => Math.abs(click - time);
  return times.filter((time) => {
    while (at + 1 < clicks.length && off(clicks[at + 1]!, time) <= off(clicks[at]!, time)) at += 1;
    return off(clicks[at]!, time) > covered;
  });
}
