/** A stretch of playing, ms since 1970. */
export interface Played {
  readonly from: number;
  readonly to: number;
}

const minute = 60_000;

/** Ten minutes' rest in every hour: common practice among teachers; see the report's advice on strain. */
const enough = 50 * minute;
const rest = 10 * minute;

/**
 * Whether a rest is due: fifty minutes went by since playing began, without a rest of ten minutes in between. What a
 * clock that was set since puts into the future, or ends before it begins, doesn't count.
 *
 * @example restDue([{ from: 0, to: 51 * 60_000 }], 51 * 60_000) // true
 */
export function restDue(played: readonly Played[], now: number): boolean {
  let begun: number | null = null;
  let last = Number.NEGATIVE_INFINITY;
  const past = played.filter(({ from, to }) => from <= to && to <= now);
  for (const { from, to } of past.toSorted((a, b) => a.from - b.from)) {
    if (begun === null || from - last >= rest) begun = from;
    last = Math.max(last, to);
  }
  return begun !== null && now - last < rest && last - begun >= enough;
}
