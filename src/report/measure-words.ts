import { measures } from '../core/measures/index.ts';
import { measureNames } from '../core/result/measure-names.ts';
import { measureName } from '../core/result/names.ts';

/** What people read about a measure. */
interface MeasureWords {
  readonly title: string;
  readonly describes: string;
  readonly source: string;
}

/**
 * Title, meaning and source of a measure; of one that isn't in the list (as from a newer version), what its id tells.
 *
 * @example measureWords('missed').title // 'Missed strokes'
 */
export function measureWords(id: string): MeasureWords {
  const known = measures.find((measure) => measure.id === id);
  return known ?? { title: measureName(id), describes: measureNames[id]?.says ?? '', source: '' };
}
