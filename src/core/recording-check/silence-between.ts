import { anyBetween } from '../stats/any-between.ts';
import { quantile } from '../stats/quantile.ts';
import type { HeardRecording } from './heard-recording.ts';
import type { StandStill } from './stand-still.ts';

/** A stroke that begins out of silence does so within these times of its end, s. */
const near = { before: 0.002, after: 0.01 };
/** What begins anew is louder than what broke off by so much, dB; what goes on isn't. Our judgement. */
const leastGainDb = { surely: 6, perhaps: 3 };
/** A stroke softer than what broke off stands no nearer to the others, in one of the shorter intervals. Our judgement. */
const leastInterval = 0.6;
const shortest = 0.25;
/** As many strokes that begin out of silence, and such a share of them, aren't lost sound's, which meets a few. */
const usual = { fewest: 5, share: 0.2 };

/**
 * Where a channel stands still between one stroke and the next, as a gate leaves it, or who lays single strokes on
 * silence: many of its strokes begin out of it. None where that isn't so, and none that sound goes on behind as it was.
 */
export function silenceBetween(
  standStills: readonly StandStill[],
  { hearing, performance, sound }: Pick<HeardRecording, 'hearing' | 'performance' | 'sound'>,
): ReadonlySet<StandStill> {
  const heard = hearing.sounds.filter((one) => one.sound !== 'click').map(({ time }) => time);
  const laid = performance.strokes.map(({ time }) => time);
  const endsIn = ({ at, samples }: StandStill, strokes: readonly number[]) => {
    const end = (at + samples) / sound.sampleRate;
    return anyBetween(strokes, end - near.before, end + near.after);
  };
  const begun = new Set(
    standStills.filter(
      (one) => (one.gainDb >= leastGainDb.surely && endsIn(one, heard)) || endsIn(one, laid),
    ),
  );
  const strokes = laid.length === 0 ? heard.length : laid.length;
  if (begun.size < Math.max(usual.fewest, usual.share * strokes)) return new Set();
  const endOf = ({ at, samples }: StandStill) => at + samples;
  const ends = [...begun].map(endOf);
  const alone =
    leastInterval *
    quantile(
      ends.slice(1).map((end, i) => end - ends[i]!),
      shortest,
    );
  const standsAlone = (one: StandStill) =>
    endsIn(one, heard) && !anyBetween(ends, endOf(one) - alone, endOf(one) + alone);
  return new Set(
    standStills.filter((one) => begun.has(one) || one.gainDb >= leastGainDb.perhaps || standsAlone(one)),
  );
}
