import { extra } from '../../../src/core/measures/extra.ts';
import { describeCompleteness } from './completeness.ts';

describeCompleteness(extra, { extraAfter: [5, 60] }, [6, 62]);
