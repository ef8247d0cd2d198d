import type { Reason } from '../result/take-result.ts';
import type { AssignmentTake } from './assignment-words.ts';
import type { PeriodsCompared } from './periods-compared.ts';
import type { WeakLine } from './weakest-lines.ts';

/** A sheet that was handed out, and the takes with its exercises, oldest first. Texts are untrusted. */
interface LessonAssignment {
  readonly assignment: {
    readonly title: string;
    readonly note: string;
    readonly sheetText: string;
    readonly dueDay: string | null;
    readonly doneAt: number | null;
  };
  readonly plays: readonly AssignmentTake[];
}

/** A day's practice, as recorded and as written down. */
interface LessonDay {
  readonly takes: number;
  readonly recordedMinutes: number;
  readonly writtenMinutes: number;
  readonly strokesRight: number;
  readonly strokesLeft: number;
  readonly writtenRight: number;
  readonly writtenLeft: number;
}

/** What a lesson with one player looks back on. Texts are untrusted. */
export interface Lesson {
  /** The day of the last lesson: takes from it on are looked at. */
  readonly since: string;
  readonly today: string;
  /** Open assignments, the newest first, and the newest of those done since. */
  readonly assignments: readonly LessonAssignment[];
  /** Days with practice. */
  readonly days: readonly LessonDay[];
  readonly weakest: readonly WeakLine[];
  /** Exercises played since then, with what changed against the twelve weeks before; all verdicts hold together. */
  readonly exercises: readonly {
    readonly exercise: { readonly label: string };
    /** The tempo to try next. */
    readonly next: Reason;
    readonly compared: PeriodsCompared;
  }[];
  readonly remarks: readonly {
    readonly text: string;
    readonly author: string;
    readonly moment: number | null;
    readonly day: string;
  }[];
  /** Days since then on which discomfort was noted. */
  readonly discomfortDays: readonly string[];
}
