import { scale } from './frame.ts';
import type { Look } from './look.ts';

/** Half the height of the scale that is shown at least, ms: even steps shall look even. Our judgement. */
const leastReachMs = 20;

/** A scale of milliseconds by which a step is longer (above) or shorter than even. */
export function stepScale(look: Look) {
  const plain = scale(look, 'milliseconds beyond the even step');
  return {
    ...plain,
    type: 'linear' as const,
    suggestedMin: -leastReachMs,
    suggestedMax: leastReachMs,
    ticks: {
      ...plain.ticks,
      maxTicksLimit: 9,
      callback: (value: string | number) => {
        const ms = Number(value);
        return ms === 0 ? 'even' : `${Math.abs(ms)} ${ms > 0 ? 'longer' : 'shorter'}`;
      },
    },
    grid: {
      color: ({ tick }: { tick?: { value: number } }) =>
        tick?.value === 0 ? look.palette.ink : look.palette.grid,
    },
  };
}
