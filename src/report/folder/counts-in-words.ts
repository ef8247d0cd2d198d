import { counted } from '../../core/result/figures.ts';
import type { FolderResult } from './folder-result.ts';

/**
 * How many recordings there were and what became of them, in a sentence.
 *
 * @example countsInWords({ graded: 3, notGradable: 0, unreadable: 1, failed: 0, earlier: 2 })
 * // '4 recordings: 3 graded, 1 could not be read. 2 of them as before, since nothing has changed.'
 */
export function countsInWords({
  graded,
  notGradable,
  unreadable,
  failed,
  earlier,
}: FolderResult['counts']): string {
  const all = graded + notGradable + unreadable + failed;
  const parts = [
    `${graded} graded`,
    ...(notGradable > 0 ? [`${notGradable} could not be graded`] : []),
    ...(unreadable > 0 ? [`${unreadable} could not be read`] : []),
    ...(failed > 0 ? [`${failed} went wrong`] : []),
  ];
  const before =
    earlier === 0
      ? ''
      : ` ${earlier === 1 ? 'One of them' : `${earlier} of them`} as before, since nothing has changed.`;
  return `${counted(all, 'recording')}: ${parts.join(', ')}.${before}`;
}
