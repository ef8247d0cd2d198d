/** About ten minutes' rest in every hour. Common practice of those who advise musicians. */
export const breakRule = { playMinutes: 50, restMinutes: 10 } as const;

/** Playing from one moment to another, minutes on any clock. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/**
 * Minutes played since the last rest of ten minutes, and whether a break is due: fifty minutes without one. Stretches in
 * order of time; silence between them counts as playing time unless it is a rest.
 *
 * @example breakDue([{ from: 0, to: 30 }, { from: 33, to: 55 }]) // { minutes: 55, due: true }
 */
export function breakDue(stretches: readonly Stretch[]): { readonly minutes: number; readonly due: boolean } {
  const last = stretches.at(-1);
  if (last === undefined) return { minutes: 0, due: false };
  let from = last.from;
  for (let i = stretches.length - 1; i > 0; i--) {
    if (stretches[i]!.from - stretches[i - 1]!.to >= breakRule.restMinutes) break;
    from = stretches[i - 1]!.from;
  }
  const minutes = last.to - from;
  return { minutes, due: minutes >= breakRule.playMinutes };
}
