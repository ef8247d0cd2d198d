import { useState } from 'preact/hooks';
import type { DiscomfortNote } from '../../library/practice.ts';
import { pageLibrary } from '../library/page-library.ts';
import { dayInWords } from '../library/take-words.ts';
import { useAttempt } from '../library/views/use-attempt.ts';
import { DayField } from './day-field.tsx';
import { WrittenList } from './written-list.tsx';

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
        <DayField label="Day of the note" day={day} today={today} choose={setDay} />
        <label class="field">
          <span>What, where, since when</span>
          <input type="text" value={text} onInput={({ currentTarget }) => setText(currentTarget.value)} />
        </label>
        <button type="submit">Note it</button>
      </form>
      <p class="fault" role="status">
        {fault}
      </p>
      <WrittenList
        entries={notes.toReversed().map(({ id, day: noted, text: words }) => ({
          id,
          words: `${dayInWords(noted)}: ${words === '' ? 'noted without words' : words}`,
          called: `the note of ${dayInWords(noted)}`,
        }))}
        remove={(id) => void attempt(pageLibrary().deleteDiscomfort(id), done)}
      />
    </section>
  );
}
