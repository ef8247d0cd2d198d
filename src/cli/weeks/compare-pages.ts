import type { FolderLibrary } from '../../library/open-folder-library.ts';
import type { OpenedTake } from '../../library/read-take.ts';
import { type PairSide, takePair } from '../../library/take-pair.ts';
import { type Periods, periodPictures, periodsPage } from '../../report/weeks/periods-page.ts';
import { pairPictures, takePairPage } from '../../report/weeks/take-pair-page.ts';
import { writeWeekPage } from '../../report/weeks/write-week-page.ts';
import { localTime } from '../library/local-day.ts';
import { takeTitle } from '../library/take-list.ts';
import { keptSound } from './kept-sound.ts';

/** Two kept takes over each other as the text of one HTML file. */
export async function takePairHtml(
  library: FolderLibrary,
  first: OpenedTake,
  second: OpenedTake,
): Promise<string> {
  const pair = takePair(await pairSide(library, first), await pairSide(library, second));
  return writeWeekPage((parts) => takePairPage(pair, parts), pairPictures(pair));
}

/** Two stretches of days as the text of one HTML file. */
export const periodsHtml = (periods: Periods): Promise<string> =>
  writeWeekPage((parts) => periodsPage(periods, parts), periodPictures(periods));

async function pairSide(library: FolderLibrary, opened: OpenedTake): Promise<PairSide> {
  const { take } = opened;
  return {
    opened,
    played: localTime(take.recordedAt),
    exercise: takeTitle(take),
    sound: take.partFrom === null ? await keptSound(library, take.audioHash) : null,
  };
}
