import { scaledRubric } from './scaled-rubric.ts';
import { steady } from './steady.ts';

/** For players in their first years: one and a half times the room. Our judgement. */
export const firstYears = scaledRubric(steady, { id: 'first-years', title: 'First years', factor: 1.5 });
