import { lessonPage } from '../../report/weeks/lesson-page.ts';
import { lessonsPage } from '../../report/weeks/lessons-page.ts';
import { periodsPage } from '../../report/weeks/periods-page.ts';
import { progressPage } from '../../report/weeks/progress-page.ts';
import { takePairPage } from '../../report/weeks/take-pair-page.ts';
import type { PageParts } from '../../report/weeks/week-page.ts';
import type { ShownWeeks } from './engine-messages.ts';
import { withDigests } from './with-digests.ts';

/** A page on several takes as one HTML file, whose pictures its script draws. */
export async function weekPageOf(shown: ShownWeeks): Promise<string> {
  const { fontFaces, weeksScript } = await import('virtual:report-parts');
  return withDigests((sha256) => written(shown, { fontFaces, script: weeksScript, images: {}, sha256 }));
}

function written(shown: ShownWeeks, parts: PageParts): string {
  switch (shown.kind) {
    case 'pair':
      return takePairPage(shown.pair, parts);
    case 'progress':
      return progressPage(shown.shown, parts);
    case 'periods':
      return periodsPage(shown.periods, parts);
    case 'lesson':
      return lessonPage(shown.shown, parts);
    case 'lessons':
      return lessonsPage(shown.shown, parts);
  }
}
