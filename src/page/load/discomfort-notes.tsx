import { useState } from 'preact/hooks';
import type { DiscomfortNote } from '../../library/practice.ts';
import { pageLibrary } from '../library/page-library.ts';
import { dayInWords } from '../library/take-words.ts';
import { useAttempt } from '../library/views/use-attempt.ts';

interface Props {
  readonly person: string | null;
  readonly today: string;
  readonly notes: readonly DiscomfortNote[];
  readonly changed: () => void;
}

/** Private notes that something hurt, tingled or was numb: they stop advice on tempo, and judge nothing. */
export function DiscomfortNotes({ person, today, notes, changed }: Props) {
  const [text, setText] = useState('');
  const [day, setDay] = useState(today);
  const { fault, attempt } = useAttempt();
  const done = () => {
    setText('');
    changed();
  };
  return (
    <section aria-labelledby="discomfort">
      <h2 id="discomfort">Does something hurt?</h2>
      <p>
        Stop at pain, tingling or numbness and don't play through it; see a physician or physiotherapist if it
        comes back. Nothing here judges what it is. After a note no faster tempo is advised for a week. Notes
        stay in this library: they never go along with a take.
      </p>
      <form
        class="week-fields"
        onSubmit={(event) => {
          event.preventDefault();
          const note = { id: crypto.randomUUID(), personId: person, day, text: text.trim() };
          void attempt(pageLibrary().writeDiscomfort(note), done);
        }}
      >
        <label class="field">
          <span>Day of the note</span>
          <input
            type="date"
            max={today}
            value={day}
            onChange={({ currentTarget }) => setDay(currentTarget.value)}
          />
        </label>
        <label class="field">
          <span>What, where, since when</span>
          <input type="text" value={text} onInput={({ currentTarget }) => setText(currentTarget.value)} />
        </label>
        <button type="submit">Note it</button>
      </form>
      <p class="fault" role="status">
        {fault}
      </p>
      {notes.length > 0 && (
        <ul class="written-list">
          {notes.toReversed().map((note) => (
            <li key={note.id}>
              <span>
                {dayInWords(note.day)}: {note.text === '' ? 'noted without words' : note.text}
              </span>
              <button
                type="button"
                aria-label={`Delete the note of ${dayInWords(note.day)}`}
                onClick={() => void attempt(pageLibrary().deleteDiscomfort(note.id), done)}
              >
                Delete
              </button>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
