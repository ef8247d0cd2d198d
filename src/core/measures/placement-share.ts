import { placement } from './placement.ts';
import { shareOfPartial } from './share-of-partial.ts';

export const placementShare = shareOfPartial(placement);
