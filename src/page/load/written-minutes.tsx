import { useState } from 'preact/hooks';
import type { PracticeEntry } from '../../library/practice.ts';
import { pageLibrary } from '../library/page-library.ts';
import { counted, dayInWords } from '../library/take-words.ts';
import { useAttempt } from '../library/views/use-attempt.ts';
import { DayField } from './day-field.tsx';
import { WrittenList } from './written-list.tsx';

interface Props {
  readonly person: string | null;
  readonly today: string;
  readonly written: readonly PracticeEntry[];
  readonly changed: () => void;
}

/** Practice that wasn't recorded, written down by hand, and what was written before. */
export function WrittenMinutes({ person, today, written, changed }: Props) {
  const [day, setDay] = useState(today);
  const [minutes, setMinutes] = useState('');
  const [note, setNote] = useState('');
  const { fault, setFault, attempt } = useAttempt();
  const done = () => {
    setMinutes('');
    setNote('');
    changed();
  };
  const write = () => {
    const count = Number(minutes.trim().replace(',', '.'));
    if (minutes.trim() === '' || !(count > 0))
      return setFault('Write how many minutes you practised, such as 20.');
    const entry = { id: crypto.randomUUID(), personId: person, day, minutes: count, note };
    return void attempt(
      pageLibrary().writePractice({ ...entry, strokesRight: null, strokesLeft: null }),
      done,
    );
  };
  return (
    <section aria-labelledby="written">
      <h2 id="written">Practice without a recording</h2>
      <form
        class="week-fields"
        onSubmit={(event) => {
          event.preventDefault();
          write();
        }}
      >
        <DayField label="Day" day={day} today={today} choose={setDay} />
        <label class="field">
          <span>Minutes</span>
          <input
            type="text"
            inputMode="decimal"
            value={minutes}
            onInput={({ currentTarget }) => setMinutes(currentTarget.value)}
          />
        </label>
        <label class="field">
          <span>What (or nothing)</span>
          <input type="text" value={note} onInput={({ currentTarget }) => setNote(currentTarget.value)} />
        </label>
        <button type="submit">Write it down</button>
      </form>
      <p class="fault" role="status">
        {fault}
      </p>
      <WrittenList
        entries={written.map(({ id, day: on, minutes: count, note: what }) => ({
          id,
          words: `${dayInWords(on)}: ${counted(count, 'minute')}${what === '' ? '' : `, ${what}`}`,
          called: `${counted(count, 'minute')} on ${dayInWords(on)}`,
        }))}
        remove={(id) => void attempt(pageLibrary().deletePractice(id), done)}
      />
    </section>
  );
}
