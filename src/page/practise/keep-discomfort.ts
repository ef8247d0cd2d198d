import { currentPlayer } from '../library/current-player.ts';
import { faultInWords } from '../library/fault-words.ts';
import { localDay } from '../library/local-day.ts';
import { pageLibrary } from '../library/page-library.ts';

/** Notes that something hurts today, or takes that note back; says what went wrong, or null. */
export async function keepDiscomfort(hurts: boolean): Promise<string | null> {
  const personId = currentPlayer();
  const day = localDay(Date.now());
  // One for each player and day, so that the same box takes it back.
  const id = `${personId ?? 'nobody'} ${day}`;
  try {
    const library = pageLibrary();
    if (hurts) await library.writeDiscomfort({ id, personId, day, text: '' });
    else await library.deleteDiscomfort(id);
    return null;
  } catch (error) {
    return `This is heeded now, but not kept: ${faultInWords(error)}`;
  }
}
