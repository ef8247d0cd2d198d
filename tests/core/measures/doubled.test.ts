import { doubled } from '../../../src/core/measures/doubled.ts';
import { describeCompleteness } from './completeness.ts';

describeCompleteness(doubled, { doubledAfter: [5, 60] }, [6, 62]);
