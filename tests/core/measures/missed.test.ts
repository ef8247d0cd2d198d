import { missed } from '../../../src/core/measures/missed.ts';
import { describeCompleteness } from './completeness.ts';

describeCompleteness(missed, { missed: [5, 60] }, [4, 58]);
