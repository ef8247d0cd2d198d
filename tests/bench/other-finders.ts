import { type AubioSetting, aubioMethods, aubioOnsets, aubioThresholds } from './aubio.ts';
import type { BenchTake } from './bench-take.ts';
import { essentiaDetectors, essentiaOnsets, type loadEssentia, samplesForEssentia } from './essentia.ts';
import { agreement } from './match-events.ts';
import { type HeardEvent, scoreTake, type TakeScore, widestOffset } from './score-take.ts';

/** A rendered take as a file, its sound itself let go. */
export interface StoredTake {
  readonly take: Omit<BenchTake, 'samples'>;
  readonly wavPath: string;
}

/** A finder's scores over takes under its name. */
export type ScoresByFinder = ReadonlyMap<string, readonly TakeScore[]>;

/** General-purpose programs of others; undefined where not installed. */
export interface OtherFinders {
  readonly aubio: string | undefined;
  readonly ffmpeg: string | undefined;
  readonly essentia: ReturnType<typeof loadEssentia>;
}

/** So many programs run beside each other. */
const atOnce = 2;

/** Name of a setting in the tables. */
export const aubioName = ({ method, threshold }: AubioSetting): string =>
  `aubio ${method}${threshold === null ? '' : `, threshold ${threshold}`}`;

/**
 * Scores the programs of others on takes. They hear onsets of any sound, so onsets of clicks and other sounds in the
 * take aren't held against them.
 */
export async function scoreOthers(
  takes: readonly StoredTake[],
  finders: OtherFinders,
  settings: readonly AubioSetting[],
  withEssentia: boolean,
): Promise<ScoresByFinder> {
  const scores = new Map<string, TakeScore[]>();
  const keep = (name: string, { take }: StoredTake, heard: readonly HeardEvent[]) => {
    const others = [...take.truth.clicks, ...take.truth.otherSounds.map(({ time }) => time)];
    const list = scores.get(name) ?? [];
    list.push(scoreTake(take, heard, others, widestOffset.others));
    scores.set(name, list);
  };
  const { aubio, ffmpeg, essentia } = finders;
  for (const stored of takes) {
    if (aubio !== undefined) {
      const heard = await inTurn(settings, (setting) => aubioOnsets(aubio, stored.wavPath, setting));
      heard.forEach((events, i) => {
        keep(aubioName(settings[i]!), stored, events);
      });
    }
    if (withEssentia && essentia !== undefined && ffmpeg !== undefined) {
      const samples = await samplesForEssentia(ffmpeg, stored.wavPath);
      for (const detector of essentiaDetectors) {
        keep(`essentia ${detector}`, stored, essentiaOnsets(essentia, detector, samples));
      }
    }
  }
  return scores;
}

/** Every method at its own threshold. */
export const plainSettings: readonly AubioSetting[] = aubioMethods.map((method) => ({
  method,
  threshold: null,
}));

/** Every method at every other threshold. */
export const sweptSettings: readonly AubioSetting[] = aubioMethods.flatMap((method) =>
  aubioThresholds.filter((threshold) => threshold !== null).map((threshold) => ({ method, threshold })),
);

/** The name under which the mean F ±10 ms over takes is highest. */
export function bestFinder(scores: ScoresByFinder): string {
  const means = [...scores].map(([name, list]) => {
    const each = list.map((score) => agreement(score.within10Ms, score.strokes, score.heard).f);
    return { name, mean: each.reduce((sum, f) => sum + f, 0) / each.length };
  });
  return means.reduce((best, one) => (one.mean > best.mean ? one : best)).name;
}

async function inTurn<T, R>(list: readonly T[], work: (item: T) => Promise<R>): Promise<R[]> {
  const results: R[] = new Array(list.length);
  let next = 0;
  const worker = async () => {
    while (next < list.length) {
      const i = next++;
      results[i] = await work(list[i]!);
    }
  };
  await Promise.all(Array.from({ length: atOnce }, worker));
  return results;
}
