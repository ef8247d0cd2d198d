import { takeAgainstTake } from '../../core/progress/take-against-take.ts';
import type { FolderLibrary } from '../../library/open-folder-library.ts';
import type { OpenedTake } from '../../library/read-take.ts';
import { type Periods, periodPictures, periodsPage } from '../../report/weeks/periods-page.ts';
import { type PairTake, pairPictures, takePairPage } from '../../report/weeks/take-pair-page.ts';
import { writeWeekPage } from '../../report/weeks/write-week-page.ts';
import { localTime } from '../library/local-day.ts';
import { takeTitle } from '../library/take-list.ts';
import { keptSound } from './kept-sound.ts';
import { takeConditions } from './take-conditions.ts';

/** Two kept takes over each other as the text of one HTML file. */
export async function takePairHtml(
  library: FolderLibrary,
  first: OpenedTake,
  second: OpenedTake,
): Promise<string> {
  const takes = [await pairTake(library, first), await pairTake(library, second)] as const;
  const compared = takeAgainstTake(takeConditions(first), takeConditions(second));
  const pair = { takes, compared };
  return writeWeekPage((parts) => takePairPage(pair, parts), pairPictures(pair));
}

/** Two stretches of days as the text of one HTML file. */
export const periodsHtml = (periods: Periods): Promise<string> =>
  writeWeekPage((parts) => periodsPage(periods, parts), periodPictures(periods));

async function pairTake(library: FolderLibrary, { take, result }: OpenedTake): Promise<PairTake> {
  const { bpm } = takeConditions({ take, result }).conditions;
  return {
    result,
    player: take.personName ?? 'no player',
    played: localTime(take.recordedAt),
    exercise: takeTitle(take),
    conditions: [
      ['Tempo', bpm === null ? '' : `${Math.round(bpm)} BPM`],
      ['Technique', take.technique],
      ['Pad', take.pad],
      ['Sticks', take.sticks],
      ['Device', take.device],
    ],
    sound: take.partFrom === null ? await keptSound(library, take.audioHash) : null,
  };
}
