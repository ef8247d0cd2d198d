import { breakRange, breakWords, stopWords } from '../core/result/breaking-words.ts';
import { dimensionName } from '../core/result/names.ts';
import type { TakeResult } from '../core/result/take-result.ts';
import { hanging, padded, printable, type Styles } from './text-layout.ts';

/** Where each exercise breaks whose tempo rises line by line: for each dimension the tempo, and its range below. */
export function breakingRows(
  { breaking = [], sheet }: TakeResult,
  width: number,
  styles: Styles,
): readonly string[] {
  return breaking.flatMap((one) => {
    const { notation } = sheet.lines[one.lines[0]!]!;
    const head = breaking.length > 1 ? hanging('  ', printable(notation), width) : [];
    const rows = one.dimensions.flatMap((dimension) => [
      `  ${padded(dimensionName(dimension.id), 20)}  ${breakWords(dimension)}`,
      ...hanging(' '.repeat(24), breakRange(dimension), width).map(styles.faint),
    ]);
    return [...head, ...hanging('  ', stopWords(one), width), ...rows];
  });
}
