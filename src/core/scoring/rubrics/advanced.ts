import { scaledRubric } from './scaled-rubric.ts';
import { steady } from './steady.ts';

/** For advanced players: six tenths of the room. Our judgement. */
export const advanced = scaledRubric(steady, { id: 'advanced', title: 'Advanced', factor: 0.6 });
