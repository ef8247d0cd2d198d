import { beginCourse } from '../../core/click-track/breakdown/begin-course.ts';
import { type Course, clearlyHeard, followCourse } from '../../core/click-track/breakdown/follow-course.ts';
import type { ClickPlan } from '../../core/click-track/click-plan.ts';
import type { Sheet } from '../../core/exercise/sheet.ts';
import { type LiveStroke, liveDelaySeconds } from '../../core/onsets/live-strokes.ts';

/** Watches a take whose tempo rises for the place where it breaks down. */
export interface BreakdownWatch {
  /** Strokes heard, and up to where all are told by now; both s from the recording's first sample. */
  hear(strokes: readonly LiveStroke[], heardSeconds: number): Pick<Course, 'broke' | 'covered'>;
}

interface Track {
  readonly sheet: Sheet;
  readonly plan: ClickPlan;
  /** s of the track that have left the page. */
  readonly position: () => number;
}

export function breakdownWatch({ sheet, plan, position }: Track): BreakdownWatch {
  let course = beginCourse(sheet, plan);
  const strokes: number[] = [];
  // From the recording's clock to the track's; what is wrong with it is the same all through.
  let shift: number | null = null;
  return {
    hear(told, heardSeconds) {
      shift ??= position() - heardSeconds - liveDelaySeconds;
      for (const { time } of told.filter(clearlyHeard)) strokes.push(time + shift);
      course = followCourse(course, strokes, heardSeconds + shift);
      return course;
    },
  };
}
