import type { Lesson } from '../../core/progress/lesson.ts';
import type { WeakLine } from '../../core/progress/weakest-lines.ts';
import { lineStretch } from '../../core/result/line-stretch.ts';
import type { LessonOfPlayer } from '../../library/lesson.ts';
import type { FolderLibrary } from '../../library/open-folder-library.ts';
import { readTake } from '../../library/read-take.ts';
import { lessonPage } from '../../report/weeks/lesson-page.ts';
import { lessonsPage } from '../../report/weeks/lessons-page.ts';
import { writeWeekPage } from '../../report/weeks/write-week-page.ts';
import { keptSound } from './kept-sound.ts';

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
  const stretch = lineStretch(result, place, take.partFrom ?? 0);
  return stretch === null ? null : keptSound(library, take.audioHash, stretch);
}
