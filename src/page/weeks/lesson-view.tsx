import '../library/views/takes.css';
import { useMemo, useState } from 'preact/hooks';
import { dayNumber, dayOf } from '../../core/progress/day-number.ts';
import type { LibraryClient } from '../../library/library-calls.ts';
import { plainWords } from '../../library/take-file/take-file-name.ts';
import type { ShownWeeks } from '../engine/engine-messages.ts';
import { localDay } from '../library/local-day.ts';
import { LibraryWays } from '../library/views/library-ways.tsx';
import { useLibrary } from '../library/views/use-library.ts';
import { Choice } from '../shell/choice.tsx';
import { goTo, type Route } from '../shell/route.ts';
import { keptLineSound } from './kept-line-sound.ts';
import { WeekReport } from './week-report.tsx';

/** Lessons are a week apart, common practice. */
const usualDays = 7;

/** `#/lesson`: everybody since the last lesson on one page; `#/lesson/ID`: the page for the lesson with one player. */
export function LessonView({ route: { parts } }: { readonly route: Route }) {
  const person = parts[0] ?? null;
  const today = localDay(Date.now());
  const [since, setSince] = useState(() => dayOf(dayNumber(today) - usualDays));
  const people = useLibrary((library) => library.listPeople());
  const found = useLibrary((library) => lessonPage(library, person, { since, today }), [person, since]);
  const page = useMemo(
    () => (found.value?.person === person && found.value.since === since ? found.value : null),
    [found.value, person, since],
  );
  const player = people.value?.find(({ id }) => id === person)?.name ?? null;
  const fault = people.fault ?? found.fault;
  const title = player === null ? 'Everybody since the last lesson' : `For the lesson with ${player}`;
  return (
    <>
      <LibraryWays />
      <h1>For the lesson</h1>
      <div class="week-fields">
        <Choice label="With" value={person ?? ''} set={(id) => goTo(id === '' ? 'lesson' : `lesson/${id}`)}>
          <option value="">everybody, on one page</option>
          {people.value?.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </Choice>
        <label class="field">
          <span>Last lesson</span>
          <input
            type="date"
            max={today}
            value={since}
            onChange={({ currentTarget: { value } }) => value !== '' && value <= today && setSince(value)}
          />
        </label>
      </div>
      {fault !== null ? (
        <p class="fault" role="alert">
          {fault}
        </p>
      ) : people.value?.length === 0 ? (
        <p role="status">
          Nobody has a name here yet. Add your students under <a href="#/people">People</a>, or take in the
          files that they sent under <a href="#/takes">All takes</a>.
        </p>
      ) : page === null ? (
        <p class="quiet">The takes are being read …</p>
      ) : (
        <WeekReport
          page={page.shown}
          title={title}
          file={`lesson-${player === null ? 'everybody' : plainWords(player) || 'player'}-${today}.html`}
        />
      )}
    </>
  );
}

interface LessonPage {
  readonly person: string | null;
  readonly since: string;
  readonly shown: ShownWeeks;
}

async function lessonPage(
  library: LibraryClient,
  person: string | null,
  days: { readonly since: string; readonly today: string },
): Promise<LessonPage> {
  const { since } = days;
  if (person === null) {
    const lessons = await library.lessonsOf(days);
    return { person, since, shown: { kind: 'lessons', shown: { ...days, lessons } } };
  }
  const lesson = await library.lessonOf({ personId: person, ...days });
  const people = await library.listPeople();
  const player = people.find(({ id }) => id === person)?.name ?? 'A player who is gone';
  const sounds: (string | null)[] = [];
  for (const line of lesson.weakest) sounds.push(await keptLineSound(library, line));
  return { person, since, shown: { kind: 'lesson', shown: { player, lesson, sounds } } };
}
