import { measureName, measureNames } from '../core/result/names.ts';

/** What people read about a measure. */
export interface MeasureWords {
  readonly title: string;
  readonly describes: string;
  readonly source: string;
}

/** Title, meaning and source of a measure; of an unknown one its id in words. */
export function measureWords(id: string): MeasureWords {
  return { title: measureName(id), describes: measureNames[id]?.says ?? '', source: '' };
}
