import type { Lesson } from '../../core/progress/lesson.ts';
import type { WeakLine } from '../../core/progress/weakest-lines.ts';
import type { TakeResult } from '../../core/result/take-result.ts';
import type { FolderLibrary } from '../../library/open-folder-library.ts';
import { readTake } from '../../library/read-take.ts';
import { lessonPage } from '../../report/weeks/lesson-page.ts';
import { type LessonOfPlayer, lessonsPage } from '../../report/weeks/lessons-page.ts';
import { writeWeekPage } from '../../report/weeks/write-week-page.ts';
import { keptSound } from './kept-sound.ts';

/** Sound before a line's first stroke and after its last, s; and no more of it than this. */
const around = { before: 0.4, after: 0.8, most: 25 };

/** A player's lesson as the text of one HTML file. */
export async function lessonHtml(library: FolderLibrary, player: string, lesson: Lesson): Promise<string> {
  const sounds: (string | null)[] = [];
  for (const line of lesson.weakest) sounds.push(await lineSound(library, line));
  return writeWeekPage((parts) => lessonPage({ player, lesson, sounds }, parts), []);
}

/** Every player's lesson on one page, as the text of one HTML file. */
export const lessonsHtml = (
  since: string,
  today: string,
  lessons: readonly LessonOfPlayer[],
): Promise<string> => writeWeekPage((parts) => lessonsPage({ since, today, lessons }, parts), []);

async function lineSound(library: FolderLibrary, { takeId, place }: WeakLine): Promise<string | null> {
  const { take, result } = await readTake(library.db, takeId);
  const stretch = lineStretch(result, place);
  // Takes cut from a longer recording lie in it at another time.
  const shift = take.partFrom ?? 0;
  if (stretch === null) return null;
  return keptSound(library, take.audioHash, [stretch[0] + shift, stretch[1] + shift]);
}

/**
 * From where to where a line was played, s, with a little around it; null where no stroke of it was heard.
 *
 * @example lineStretch(result, 0) // [0.1, 8.4]
 */
export function lineStretch({ strokes, slots }: TakeResult, place: number): [number, number] | null {
  const times = strokes.time.filter((_, i) => {
    const slot = strokes.slot[i];
    return slot != null && slots.line[slot] === place;
  });
  if (times.length === 0) return null;
  const from = Math.max(0, times[0]! - around.before);
  return [from, Math.min(times.at(-1)! + around.after, from + around.most)];
}
