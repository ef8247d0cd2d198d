import type { Source } from './source.ts';

/** Beyond this no sample was ever meant: whole numbers of 32 bits that a program wrote as they are into a float file. */
const most = 2 ** 31;

/**
 * The same recording with silence where a sample is no number or beyond all measure, as damaged float files have them:
 * one such sample would spoil every filter after it.
 *
 * @example finiteSource(source).read(0, 0, 2) // where the source has NaN, 0.5: 0, 0.5
 */
export function finiteSource(source: Source): Source {
  return {
    ...source,
    read(channel, from, to, room) {
      const samples = source.read(channel, from, to, room);
      for (let i = 0; i < samples.length; i++) if (!(Math.abs(samples[i]!) <= most)) samples[i] = 0;
      return samples;
    },
  };
}
