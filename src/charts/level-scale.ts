import { scale } from './frame.ts';
import type { Look } from './look.ts';

/** A scale of levels, dB, louder above, with true minus signs. */
export function levelScale(look: Look, title = 'level in dB, louder above') {
  const plain = scale(look, title);
  return {
    ...plain,
    type: 'linear' as const,
    grace: '8%' as const,
    ticks: {
      ...plain.ticks,
      maxTicksLimit: 8,
      callback: (value: string | number) => `${value}`.replace('-', '\u2212'),
    },
  };
}
