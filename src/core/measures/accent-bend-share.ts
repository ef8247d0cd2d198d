import { accentBend } from './accent-bend.ts';
import { shareOfPartial } from './share-of-partial.ts';

export const accentBendShare = shareOfPartial(accentBend);
