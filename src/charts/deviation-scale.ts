import { scale } from './frame.ts';
import type { Look } from './look.ts';

/** Half the height of the scale that is shown at least, ms: a tight take shall look tight. Our judgement. */
const leastReachMs = 15;

/** Early or late in words on the ticks of a scale of milliseconds. */
export function deviationTick(value: string | number): string {
  const ms = Number(value);
  if (ms === 0) return 'even';
  return `${Math.abs(ms)} ${ms > 0 ? 'late' : 'early'}`;
}

/** A scale of milliseconds from the even place, early below, with the even line drawn out. */
export function deviationScale(look: Look) {
  const plain = scale(look, 'milliseconds from the even place');
  return {
    ...plain,
    type: 'linear' as const,
    suggestedMin: -leastReachMs,
    suggestedMax: leastReachMs,
    ticks: { ...plain.ticks, maxTicksLimit: 9, callback: deviationTick },
    grid: {
      color: ({ tick }: { tick?: { value: number } }) =>
        tick?.value === 0 ? look.palette.ink : look.palette.grid,
    },
  };
}
