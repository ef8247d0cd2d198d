import { shareOfPartial } from './share-of-partial.ts';
import { timingSpread } from './timing-spread.ts';

export const timingSpreadShare = shareOfPartial(timingSpread);
