import type { Sheet } from '../../exercise/sheet.ts';
import type { ClickPlan } from '../click-plan.ts';
import { dueLines } from './due-lines.ts';
import type { Course } from './follow-course.ts';

/** A take that is about to begin. */
export function beginCourse(sheet: Sheet, plan: ClickPlan): Course {
  const { clicks } = plan;
  return {
    lines: dueLines(sheet, plan),
    countIn: clicks.filter(({ kind }) => kind === 'count-in').map(({ time }) => time),
    clicks: clicks.filter(({ audible }) => audible).map(({ time }) => time),
    judged: [],
    broke: null,
    covered: false,
  };
}
