import '../library/views/takes.css';
import '../weeks/weeks.css';
import './practice-time.css';
import { useState } from 'preact/hooks';
import { dayNumber, dayOf } from '../../core/progress/day-number.ts';
import { care } from '../../report/parts/care.ts';
import { wholeFiguresHtml } from '../../report/whole-figures-html.ts';
import { currentPlayer } from '../library/current-player.ts';
import { localDay } from '../library/local-day.ts';
import { LibraryWays } from '../library/views/library-ways.tsx';
import { useLibrary } from '../library/views/use-library.ts';
import type { Route } from '../shell/route.ts';
import { Whose } from '../weeks/whose.tsx';
import { DiscomfortNotes } from './discomfort-notes.tsx';
import { LoadTable } from './load-table.tsx';
import { WrittenMinutes } from './written-minutes.tsx';

/** Days that are shown, today the last of them. */
const shownDays = 56;

/** How much a player practises: minutes and strokes a day, minutes written down by hand, notes on discomfort. */
export function PracticeTimeView({ route: { parts } }: { readonly route: Route }) {
  const [person, setPerson] = useState<string | null>(() => parts[0] ?? currentPlayer());
  const today = localDay(Date.now());
  const people = useLibrary((library) => library.listPeople());
  const { value, fault, again } = useLibrary(
    async (library) => {
      const asked = { personId: person, fromDay: dayOf(dayNumber(today) - shownDays + 1), toDay: today };
      return {
        load: await library.practiceOf(asked),
        written: await library.listPractice(asked),
        notes: await library.listDiscomfort(asked),
      };
    },
    [person],
  );
  return (
    <>
      <LibraryWays />
      <h1>Practice time</h1>
      <div class="week-fields">
        <Whose people={people.value ?? []} person={person} choose={setPerson} />
      </div>
      {fault !== null && (
        <p class="fault" role="alert">
          {fault}
        </p>
      )}
      {value === null ? (
        fault === null && <p class="quiet">One moment …</p>
      ) : (
        <>
          <LoadTable load={value.load} />
          <WrittenMinutes
            key={`minutes ${person}`}
            person={person}
            today={today}
            written={value.written}
            changed={again}
          />
          <DiscomfortNotes
            key={`notes ${person}`}
            person={person}
            today={today}
            notes={value.notes}
            changed={again}
          />
        </>
      )}
      {/* The report's own words on strain and hearing. */}
      <div dangerouslySetInnerHTML={{ __html: wholeFiguresHtml(care()) }} />
    </>
  );
}
