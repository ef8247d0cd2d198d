/** What people read about a measure. */
export interface MeasureWords {
  readonly title: string;
  readonly describes: string;
  readonly source: string;
}

/** Title, meaning and source of a measure; of an unknown one its id in words. */
export function measureWords(id: string): MeasureWords {
  const words = id.replaceAll('-', ' ');
  return { title: words.charAt(0).toUpperCase() + words.slice(1), describes: '', source: '' };
}
