import { comparedFigures, followed, type TakeFigure } from '../core/progress/compared-figures.ts';
import type { ExercisePlay } from '../core/progress/exercise-progress.ts';
import { tempoTold } from '../core/progress/tempo-told.ts';
import type { LibraryDb } from './library.ts';
import { type LinePlay, listLinePlays } from './line-plays.ts';
import { keptResult } from './stored-result.ts';
import { notedOf } from './take-conditions.ts';
import { endGaveWay } from './take-summary.ts';

interface Asked {
  readonly personId: string | null;
  readonly exerciseId: string;
  readonly fromDay?: string;
  readonly toDay?: string;
  /** Whether the end gave way is asked of a newest take from this day on only; of any without. */
  readonly freshFrom?: string;
}

/** Takes at different tempos are held against each other by shares of a partial. */
const alsoFollowed = {
  id: 'timing-spread-share',
  unit: '%',
  better: 'low',
  scale: 'ratio',
  ofLevels: false,
} as const;

/**
 * A player's playings of one exercise, oldest first, as comparing and progress want them. Whether the end of a take gave
 * way is told of the newest one only, since advice asks for no other.
 */
export async function exercisePlays(db: LibraryDb, asked: Asked): Promise<readonly ExercisePlay[]> {
  return comparedPlays(db, await listLinePlays(db, asked), asked);
}

/** The same of playings that have been read, oldest first. */
export async function comparedPlays(
  db: LibraryDb,
  plays: readonly LinePlay[],
  asked: Pick<Asked, 'exerciseId' | 'freshFrom'>,
): Promise<readonly ExercisePlay[]> {
  const last = plays.at(-1);
  const newest = last?.takeId;
  const fading =
    last !== undefined &&
    last.day >= (asked.freshFrom ?? '') &&
    (last.endGaveWay === null ? await readEndGaveWay(db, last.takeId) : last.endGaveWay === 1);
  return plays.map((play) => {
    const { takeId, day, score, dimensions } = play;
    const bpm = tempoTold(play.bpm, play.bpmPlayed);
    return {
      takeId,
      day,
      conditions: { exercise: asked.exerciseId, bpm, ...notedOf(play) },
      bpm,
      figures: figuresOf(play),
      score,
      take:
        bpm === null || dimensions.length === 0
          ? null
          : {
              day,
              bpm,
              weakest: Math.min(...dimensions.map((one) => one.score)),
              scores: {
                dimensions: dimensions.map(({ id, score: value }) => ({ id, score: { score: value } })),
              },
              fading: fading && takeId === newest,
            },
    };
  });
}

function figuresOf({ figures }: LinePlay): Record<string, TakeFigure> {
  return Object.fromEntries(
    [...comparedFigures, alsoFollowed].flatMap((figure) => {
      const found = figures[figure.id];
      if (found === undefined) return [];
      const [value, low, high, strokes] = found;
      return [[figure.id, followed(figure, { value, low, high, strokes })]];
    }),
  );
}

async function readEndGaveWay(db: LibraryDb, takeId: string): Promise<boolean> {
  const kept = await db
    .selectFrom('takeResult')
    .select('json')
    .where('takeId', '=', takeId)
    .executeTakeFirst();
  return kept !== undefined && endGaveWay(keptResult(kept.json));
}
