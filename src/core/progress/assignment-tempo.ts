import { likeTempo } from './conditions.ts';

/**
 * How the tempo of a take stands to an assignment's: `asked`, every line as it was asked, within 3 %; `slower`, none faster
 * and at least one slower, which is work toward it; `other`, faster or some of each; `unknown`, where the take tells none.
 */
export type AssignmentTempo = 'asked' | 'slower' | 'other' | 'unknown';

/** A line's exercise and its tempo, BPM; null where it is left open, or wasn't found in what was played. */
interface TempoLine {
  readonly exerciseId: string;
  readonly bpm: number | null;
}

/**
 * The tempo of a take against an assignment's lines. A line without a tempo takes any. Where a take holds an exercise at
 * several tempos, the one nearest to what was asked counts. Common practice: a tempo is part of what was asked.
 *
 * @example assignmentTempo([{ exerciseId: 'a', bpm: 96 }], [{ exerciseId: 'a', bpm: 84 }]) // 'slower'
 */
export function assignmentTempo(asked: readonly TempoLine[], played: readonly TempoLine[]): AssignmentTempo {
  const found = asked.map((line) =>
    line.bpm === null ? 'asked' : lineTempo(line.exerciseId, line.bpm, played),
  );
  for (const worst of ['unknown', 'other'] as const) if (found.includes(worst)) return worst;
  return found.includes('slower') ? 'slower' : 'asked';
}

function lineTempo(exerciseId: string, bpm: number, played: readonly TempoLine[]): AssignmentTempo {
  const tempos = played.flatMap((line) =>
    line.exerciseId === exerciseId && line.bpm !== null ? [line.bpm] : [],
  );
  if (tempos.length === 0) return 'unknown';
  const nearest = tempos.reduce((a, b) => (Math.abs(b - bpm) < Math.abs(a - bpm) ? b : a));
  if (likeTempo(nearest, bpm)) return 'asked';
  return nearest < bpm ? 'slower' : 'other';
}
