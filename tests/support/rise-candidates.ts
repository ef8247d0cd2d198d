import type { RisesFound } from '../../src/core/onsets/rise-candidate.ts';
import { riseSearch } from '../../src/core/onsets/rise-search.ts';
import { bandLayout } from '../../src/core/signal/band-layout.ts';
import type { Source } from '../../src/core/signal/source.ts';
import { bandFrames } from './band-frames.ts';

/** Every rise of power in a recording of one channel. */
export function riseCandidates(source: Source): RisesFound {
  const search = riseSearch(bandLayout(source.sampleRate));
  for (const block of bandFrames(source)) search.add(block);
  return search.end();
}
