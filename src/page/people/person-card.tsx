import { useState } from 'preact/hooks';
import type { LibraryClient } from '../../library/library-calls.ts';
import type { ListedPerson } from '../../library/people.ts';
import { localDay } from '../library/local-day.ts';
import { pageLibrary } from '../library/page-library.ts';
import { counted, dayInWords } from '../library/take-words.ts';
import { useAttempt } from '../library/views/use-attempt.ts';
import { Choice } from '../shell/choice.tsx';
import { DeletePerson } from './delete-person.tsx';
import { JoinPeople } from './join-people.tsx';

interface Props {
  readonly person: ListedPerson;
  readonly others: readonly ListedPerson[];
  /** Called with what was done. */
  readonly changed: (sentence: string) => void;
}

/** One person: what is kept of them, and what can be done about it. */
export function PersonCard({ person, others, changed }: Props) {
  const { id, name, role, note, takes, lastAt } = person;
  const [typed, setTyped] = useState(name);
  const { fault, attempt: tryOut } = useAttempt();
  const attempt = async (work: (library: LibraryClient) => Promise<unknown>, sentence: string) => {
    await tryOut(work(pageLibrary()), () => changed(sentence));
  };
  return (
    <li>
      <h2>{name}</h2>
      <p>
        {role === 'student' ? 'Student, ' : ''}
        {lastAt === null
          ? 'no take yet'
          : `${counted(takes, 'take')}, the last on ${dayInWords(localDay(lastAt))}`}
        {note === '' ? '' : `. ${note}`}
      </p>
      <p class="person-ways">
        <a href={`#/progress/${id}`}>Progress</a> <a href={`#/lesson/${id}`}>For the lesson</a>{' '}
        <a href={`#/practice-time/${id}`}>Practice time</a>
      </p>
      <details>
        <summary>
          Change<span class="unseen"> {name}</span>
        </summary>
        <form
          class="person-form"
          onSubmit={(event) => {
            event.preventDefault();
            void attempt(
              (library) => library.changePerson({ id, name: typed }),
              `${name} is called ${typed.trim()} now.`,
            );
          }}
        >
          <label class="field">
            <span>Name</span>
            <input
              type="text"
              autocomplete="off"
              value={typed}
              onInput={({ currentTarget }) => setTyped(currentTarget.value)}
            />
          </label>
          <button type="submit" disabled={typed.trim() === '' || typed.trim() === name}>
            Rename
          </button>
        </form>
        <div class="week-fields">
          <Choice
            label="Here as"
            value={role}
            set={(to) =>
              void attempt(
                (library) => library.changePerson({ id, role: to === 'student' ? 'student' : 'player' }),
                'Written down.',
              )
            }
          >
            <option value="player">a player</option>
            <option value="student">a student</option>
          </Choice>
          <label class="field">
            <span>Note (lead hand, lesson day, grip …)</span>
            <input
              type="text"
              value={note}
              onChange={({ currentTarget }) =>
                void attempt(
                  (library) => library.changePerson({ id, note: currentTarget.value }),
                  'Written down.',
                )
              }
            />
          </label>
        </div>
        {others.length > 0 && <JoinPeople person={person} others={others} attempt={attempt} />}
        <DeletePerson person={person} attempt={attempt} />
      </details>
      <p class="fault" role="status">
        {fault}
      </p>
    </li>
  );
}
