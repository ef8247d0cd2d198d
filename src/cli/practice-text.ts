import type { PracticeLoad, PracticeSum } from '../core/progress/practice-load.ts';
import {
  jumpNote,
  jumpSentences,
  practiceCare,
  recordedOnlyWords,
  restNote,
} from '../core/progress/practice-words.ts';
import { rounded } from '../core/result/figures.ts';
import type { DiscomfortNote, PracticeEntry } from '../library/practice.ts';
import { shortId } from './library/short-id.ts';
import { table } from './progress-text.ts';
import { hanging, printable } from './text-layout.ts';

const width = 88;
const minutes = (value: number) => (value === 0 ? '–' : `${rounded(value, 1)} min`);

const row = (name: string, { recordedMinutes, loggedMinutes, strokes: { R, L, untold } }: PracticeSum) => [
  name,
  minutes(recordedMinutes),
  minutes(loggedMinutes),
  `${R}`,
  `${L}`,
  `${untold}`,
];

/** A player's practice as lines of text. Names and notes are untrusted. */
export function practiceText({
  name,
  fromDay,
  today,
  load,
  written,
  discomfort,
  restDue,
}: {
  readonly name: string;
  readonly fromDay: string;
  readonly today: string;
  readonly load: PracticeLoad;
  readonly written: readonly PracticeEntry[];
  readonly discomfort: readonly DiscomfortNote[];
  readonly restDue: boolean;
}): string[] {
  const head = (what: string) => [what, 'recorded', 'logged', 'right', 'left', 'hand not told'];
  const sums =
    load.days.length === 0
      ? ['Nothing was recorded or logged.']
      : [
          ...table([head('day'), ...load.days.map((day) => row(day.from, day))]),
          '',
          ...table([head('week from'), ...load.weeks.map((week) => row(week.from, week))]),
          '',
          recordedOnlyWords(load),
        ];
  const jumps = jumpSentences(load);
  const log = written.map(
    ({ id, day, minutes: logged, note }) =>
      `  ${shortId(id)}  ${day}  ${rounded(logged, 0)} min${note === '' ? '' : `  ${printable(note)}`}`,
  );
  const notes = discomfort.map(({ id, day, text }) => `  ${shortId(id)}  ${day}  ${printable(text)}`);
  return [
    `${printable(name)}, ${fromDay} to ${today}`,
    '',
    ...sums,
    ...(jumps.length === 0
      ? []
      : ['', ...jumps.flatMap((one) => hanging('', one, width)), ...hanging('', jumpNote, width)]),
    ...(log.length === 0 ? [] : ['', 'Logged', ...log]),
    ...(notes.length === 0 ? [] : ['', 'Discomfort (private)', ...notes]),
    '',
    ...(restDue ? hanging('', restNote, width) : []),
    ...hanging('', practiceCare, width),
  ];
}
