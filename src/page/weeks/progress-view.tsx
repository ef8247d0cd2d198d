import '../library/views/takes.css';
import { useMemo, useState } from 'preact/hooks';
import { dayNumber, dayOf } from '../../core/progress/day-number.ts';
import { plainWords } from '../../library/take-file/take-file-name.ts';
import type { ShownWeeks } from '../engine/engine-messages.ts';
import { currentPlayer } from '../library/current-player.ts';
import { localDay } from '../library/local-day.ts';
import { LibraryWays } from '../library/views/library-ways.tsx';
import { useLibrary } from '../library/views/use-library.ts';
import { Choice } from '../shell/choice.tsx';
import type { Route } from '../shell/route.ts';
import { BeforeAndAfter } from './before-and-after.tsx';
import { WeekReport } from './week-report.tsx';
import { nameOf, Whose } from './whose.tsx';

const spans = [
  { days: '', words: 'everything kept' },
  { days: '84', words: 'the last twelve weeks' },
  { days: '28', words: 'the last four weeks' },
] as const;

/** Exercises that are shown at once, the ones played last. */
const atOnce = 12;

/** A player's exercises over the weeks: trends, pictures, cleanest takes, the next tempo, practice. */
export function ProgressView({ route: { parts } }: { readonly route: Route }) {
  const [person, setPerson] = useState<string | null>(() => parts[0] ?? currentPlayer());
  const [span, setSpan] = useState('');
  const [limit, setLimit] = useState(atOnce);
  const [marked, setMarked] = useState(false);
  const today = localDay(Date.now());
  const people = useLibrary((library) => library.listPeople());
  const found = useLibrary(
    async (library) => {
      const fromDay = span === '' ? undefined : dayOf(dayNumber(today) - Number(span));
      return { person, ...(await library.playerProgress({ personId: person, today, fromDay, limit })) };
    },
    [person, span, limit],
  );
  const value = found.value?.person === person ? found.value : null;
  const player = nameOf(people.value ?? [], person);
  const page = useMemo((): ShownWeeks | null => {
    if (value === null || people.value === null) return null;
    const { load, discomfort, guesses } = value;
    const exercises = value.exercises.map(({ exercise, plays, progress }) => ({
      label: exercise.label === '' ? exercise.notation : exercise.label,
      plays,
      progress,
    }));
    return { kind: 'progress', shown: { player, today, exercises, load, discomfort, guesses } };
  }, [value, people.value]);
  const fault = people.fault ?? found.fault;
  return (
    <>
      <LibraryWays />
      <h1>Progress over the weeks</h1>
      <div class="week-fields">
        <Whose people={people.value ?? []} person={person} choose={setPerson} />
        <Choice label="Takes of" value={span} set={setSpan}>
          {spans.map(({ days, words }) => (
            <option key={days} value={days}>
              {words}
            </option>
          ))}
        </Choice>
        <label class="tick">
          <input
            type="checkbox"
            checked={marked}
            onChange={({ currentTarget }) => setMarked(currentTarget.checked)}
          />
          Hold the days before and after a day against each other
        </label>
      </div>
      {fault !== null && (
        <p class="fault" role="alert">
          {fault}
        </p>
      )}
      {fault === null && page === null && <p class="quiet">The takes are being read …</p>}
      {value !== null && value.more > 0 && (
        <p>
          The {value.exercises.length} exercises played last; {value.more} more were played.{' '}
          <button type="button" onClick={() => setLimit(limit + atOnce)}>
            Show more exercises
          </button>
        </p>
      )}
      {value !== null && page !== null && value.exercises.length === 0 && (
        <p role="status">
          No take of this player is kept yet. Takes that you record under <a href="#/">Practise</a> come here
          by themselves.
        </p>
      )}
      {value !== null &&
        page !== null &&
        value.exercises.length > 0 &&
        (marked ? (
          <BeforeAndAfter key={person} player={player} exercises={value.exercises} />
        ) : (
          <WeekReport
            page={page}
            title={`Progress of ${player}`}
            file={`progress-${plainWords(player) || 'player'}-${today}.html`}
          />
        ))}
    </>
  );
}
