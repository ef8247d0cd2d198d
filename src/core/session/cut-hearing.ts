import type { Hearing } from '../onsets/stroke.ts';
import type { Stretch } from '../signal/cut-source.ts';

/** What was heard from one time to another, its times counted from the first. */
export function cutHearing({ sounds, noiseFloorDb, click }: Hearing, { from, to }: Stretch): Hearing {
  const times = click?.times.filter((time) => time >= from && time < to) ?? [];
  const silent = click?.silent && {
    before: click.silent.before && times[0] === click.times[0],
    after: click.silent.after && times.at(-1) === click.times.at(-1),
  };
  return {
    sounds: sounds
      .filter(({ time }) => time >= from && time < to)
      .map((sound) => ({ ...sound, time: sound.time - from })),
    noiseFloorDb,
    click:
      click && times.length > 1
        ? { ...click, ...(silent && { silent }), times: times.map((time) => time - from) }
        : null,
  };
}
