import { handOffset } from './hand-offset.ts';
import { shareOfPartial } from './share-of-partial.ts';

export const handOffsetShare = shareOfPartial(handOffset);
