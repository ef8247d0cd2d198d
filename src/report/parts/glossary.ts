import type { TakeResult } from '../../core/result/take-result.ts';
import { fold } from './fold.ts';

const words: readonly (readonly [string, string])[] = [
  ['accent, tap', 'a stroke that is to stand out, and one that is to stay low'],
  ['partial', 'the place in the divided beat: 1, 2, 3 in a triplet'],
  [
    'even place',
    'where a stroke would fall if the beat, at its tempo just then, were divided into equal parts',
  ],
  [
    'early, late',
    'before or after the even place; without a click it says nothing about ahead of or behind one',
  ],
  ['level', 'how loud the stroke is in the recording, in decibels (dB) below the loudest it can hold'],
  ['spread', 'how far strokes of one kind scatter: the smaller, the more alike'],
  [
    'middle, middle half',
    'the stroke in the middle when all are put in order, and the half of all strokes round it',
  ],
  ['line, repeat', 'one exercise of the sheet, and one time through it'],
  [
    'missed, too many, doubled',
    'written but not heard; heard but not written; two hits where one is written',
  ],
  ['grace note', 'a soft stroke right before a written one: one for a flam, two for a drag'],
  ['likely between', 'the range in which the true figure lies in about 95 of 100 such takes'],
  ['secure, nearly there, not yet', 'where a score stands on the scale of the rubric named beside it'],
  ['rubric', 'the list of what is scored, how strictly, and how much each thing counts'],
];

/** What a level is where an electronic pad sent the strokes. */
const velocityLevel = 'how hard the pad took the stroke, in decibels (dB) below the hardest it can tell';

/** The words of the report, in short. */
export function glossary({ recording }: Pick<TakeResult, 'recording'>): string {
  const own = words.map(([word, meaning]) => [
    word,
    word === 'level' && recording.levels === 'velocity' ? velocityLevel : meaning,
  ]);
  const items = own.map(([word, meaning]) => `<div><dt>${word}</dt><dd>${meaning}</dd></div>`);
  return `<section id="words">${fold('<h2>Words used here</h2>', `<dl class="words">${items.join('')}</dl>`)}</section>`;
}
