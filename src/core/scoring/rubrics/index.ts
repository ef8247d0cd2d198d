import type { Rubric } from '../rubric.ts';
import { advanced } from './advanced.ts';
import { firstYears } from './first-years.ts';
import { steady } from './steady.ts';

/** The rubrics that ship, from the most to the least lenient. */
export const rubrics: readonly Rubric[] = [firstYears, steady, advanced];
