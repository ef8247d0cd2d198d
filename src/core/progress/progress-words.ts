import { counted, rounded } from '../result/figures.ts';
import type { JudgedChange, Verdict } from './change-verdicts.ts';
import { fewestDays } from './compare-days.ts';
import type { ComparedFigure } from './compared-figures.ts';
import type { ConditionName } from './conditions.ts';
import { type DayTrend, fewestTrendDays } from './trend-over-days.ts';

/** A figure with its unit, as people read it. */
export function figureText(value: number, { unit }: ComparedFigure): string {
  return unit === 'share' ? `${rounded(value * 100)} %` : `${rounded(value)} ${unit}`;
}

/**
 * A change: of a spread in per cent, else in the figure's unit, with its sign.
 *
 * @example changeText(0.9, spread) // '−10 %'
 */
export function changeText(value: number, figure: ComparedFigure): string {
  // What rounds to nought has no sign.
  const signed = (text: string, above: boolean) => (above && /[1-9]/.test(text) ? `+${text}` : text);
  if (figure.scale === 'ratio') {
    const percent = (value - 1) * 100;
    return `${signed(rounded(percent, 0), percent > 0)} %`;
  }
  return signed(figureText(value, figure), value > 0);
}

export const verdictWords: Readonly<Record<Verdict, string>> = {
  clearer: 'clearer',
  worse: 'worse',
  higher: 'higher',
  lower: 'lower',
  'no-clear-change': 'no clear change',
  'too-few-days': 'too few days',
};

/** What a judged change leaves open, in a sentence; empty where it leaves nothing open. */
export function stillNeeded({ verdict, days, daysForAFifth }: JudgedChange): string {
  const most = Math.min(...days);
  if (verdict === 'too-few-days')
    return `A verdict needs ${fewestDays} days on each side; there ${most === 1 ? 'is' : 'are'} ${most} on the shorter one.`;
  if (verdict !== 'no-clear-change' || daysForAFifth === null || daysForAFifth <= most) return '';
  return `About ${counted(daysForAFifth - most, 'more day')} on each side would show a change of a fifth.`;
}

/** What a trend comes to: clearer or worse where the figure has a better side, else rising or falling. */
export function trendWord({ verdict, days }: DayTrend, { better }: ComparedFigure): string {
  if (verdict === 'too-few-days') return `${counted(fewestTrendDays - days, 'more day')} needed`;
  if (verdict === 'no-clear-trend') return 'no clear trend';
  if (better === 'either') return verdict;
  return (verdict === 'rising') === (better === 'high') ? 'getting clearer' : 'getting worse';
}

const conditionWords: Readonly<Record<ConditionName, string>> = {
  exercise: 'exercise',
  bpm: 'tempo',
  technique: 'technique',
  pad: 'pad',
  sticks: 'sticks',
  device: 'recording device',
};

/** Names of conditions as part of a sentence. */
export function conditionList(names: readonly ConditionName[]): string {
  const words = names.map((name) => conditionWords[name]);
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
