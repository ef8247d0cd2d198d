import type { TakeResult } from '../core/result/take-result.ts';

/** How far accents shall stand above taps where the sheet doesn't say, dB: our judgement, as the rubric has it. */
const usualRatio = { minDb: 8, maxDb: 20 } as const;

/** The band asked for in a line, dB. */
export const askedRatio = (
  { sheet }: TakeResult,
  line: number,
): { readonly minDb: number; readonly maxDb: number } => sheet.lines[line]?.ratioBand ?? usualRatio;
