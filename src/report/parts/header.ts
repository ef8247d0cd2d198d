import { clockTime } from '../../charts/clock-time.ts';
import type { TakeResult } from '../../core/result/take-result.ts';
import { outsideText } from '../escape-html.ts';

/** What the result itself doesn't know about a take; texts from outside. */
export interface TakeCaption {
  readonly player?: string;
  readonly recordedOn?: string;
}

const held: Record<TakeResult['reference']['kind'], string> = {
  'played-click': 'the click that was played to it',
  'heard-click': 'the click heard in the recording',
  'asked-tempo': 'the tempo asked for (no click, so nothing about ahead or behind)',
  'fitted-tempo': 'its own tempo (no click, so nothing about ahead or behind)',
};

const handsTold: Record<TakeResult['hands'], string> = {
  'as-written': 'as written in the exercise; not heard',
  'confirmed-by-sound': 'as written, and the sound agrees',
  'not-told': "can't be told in this take",
};

/** Title of the report and what was recorded, how long, and against what it was held. */
export function header(result: TakeResult, caption: TakeCaption): string {
  const { recording, sheet, slots, strokes, segments, grading } = result;
  const main = slots.grace.flatMap((grace, i) => (grace ? [] : [slots.state[i]]));
  const played = main.filter((state) => state === 'played').length;
  const tempos = [...new Set(segments.filter((s) => s.state === 'graded').map((s) => s.bpm.toFixed(1)))];
  const graded = grading.state === 'graded';
  const facts: [string, string][] = [
    ...(caption.player === undefined ? [] : [['Player', outsideText(caption.player)] as [string, string]]),
    ...(caption.recordedOn === undefined
      ? []
      : [['Date', outsideText(caption.recordedOn)] as [string, string]]),
    ['Recording', `${outsideText(recording.name)}, ${clockTime(recording.duration)} long`],
    [
      'Strokes',
      graded ? `${played} of ${main.length} expected were played and graded` : `${strokes.time.length} heard`,
    ],
    ...(graded && tempos.length > 0 ? [['Tempo played', tempoWords(tempos)] as [string, string]] : []),
    ...(graded ? [['Held against', held[result.reference.kind]] as [string, string]] : []),
    ...(graded ? [['Hands', handsTold[result.hands]] as [string, string]] : []),
  ];
  const rows = facts.map(([name, text]) => `<div><dt>${name}</dt><dd>${text}</dd></div>`);
  return `<header><p class="kind">Report on a practice take</p>
<h1>${outsideText(sheet.title || 'Practice take')}</h1>
<dl class="facts">${rows.join('')}</dl></header>`;
}

function tempoWords(tempos: readonly string[]): string {
  if (tempos.length <= 3) return `${tempos.join(', ')} beats a minute`;
  const sorted = [...tempos].sort((a, b) => Number(a) - Number(b));
  return `${sorted[0]} to ${sorted.at(-1)} beats a minute`;
}
