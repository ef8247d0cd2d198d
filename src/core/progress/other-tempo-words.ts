import { rounded } from '../result/figures.ts';
import type { TakeResult } from '../result/take-result.ts';
import { median } from '../stats/median.ts';
import { likeTempo } from './conditions.ts';

/**
 * How fast a take of one line was played, in words, where that isn't like the tempo asked for; empty otherwise.
 *
 * @example otherTempoWords(result) // 'at 92 BPM (asked: 80 BPM)'
 */
export function otherTempoWords({ sheet, tempo }: Pick<TakeResult, 'sheet' | 'tempo'>): string {
  const asked = sheet.lines[0]?.bpm ?? null;
  if (asked === null || tempo.bpm.length === 0) return '';
  const played = median(tempo.bpm);
  return likeTempo(asked, played) ? '' : `at ${rounded(played, 0)} BPM (asked: ${rounded(asked, 0)} BPM)`;
}
