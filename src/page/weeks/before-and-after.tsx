import { useMemo, useState } from 'preact/hooks';
import { periodsCompared } from '../../core/progress/periods-compared.ts';
import type { ExerciseCourse } from '../../library/player-progress.ts';
import type { ShownWeeks } from '../engine/engine-messages.ts';
import { dayInWords } from '../library/take-words.ts';
import { Choice } from '../shell/choice.tsx';
import { WeekReport } from './week-report.tsx';

interface Props {
  readonly player: string;
  readonly exercises: readonly ExerciseCourse[];
}

const nameOf = ({ exercise: { label, notation } }: ExerciseCourse) => (label === '' ? notation : label);

/** The days of an exercise before a day against those from it on, with verdicts once there are enough days. */
export function BeforeAndAfter({ player, exercises }: Props) {
  const [at, setAt] = useState(0);
  const chosen = exercises[at] ?? exercises[0]!;
  const days = [...new Set(chosen.plays.map(({ day }) => day))];
  const [asked, setAsked] = useState('');
  const fromDay = days.includes(asked) ? asked : days[Math.floor(days.length / 2)]!;
  const page = useMemo((): ShownWeeks => {
    const { plays } = chosen;
    const compared = periodsCompared(plays, fromDay);
    return {
      kind: 'periods',
      periods: { player, exercise: nameOf(chosen), fromDay, plays, compared },
    };
  }, [chosen, fromDay, player]);
  return (
    <>
      <div class="week-fields">
        <Choice label="Exercise" value={`${at}`} set={(index) => setAt(Number(index))}>
          {exercises.map((one, index) => (
            <option key={one.exercise.id} value={index}>
              {nameOf(one)}
            </option>
          ))}
        </Choice>
        <Choice label="After begins with" value={fromDay} set={setAsked}>
          {days.map((day) => (
            <option key={day} value={day}>
              {dayInWords(day)}
            </option>
          ))}
        </Choice>
      </div>
      <WeekReport
        page={page}
        title={`${player}: before and after ${fromDay}`}
        file={`before-and-after-${fromDay}.html`}
      />
    </>
  );
}
