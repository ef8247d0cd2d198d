import { useState } from 'preact/hooks';
import { parseSheet } from '../../core/exercise/parse-sheet.ts';
import type { ListedSheet } from '../../library/list-sheets.ts';
import type { ListedPerson } from '../../library/people.ts';
import { pageLibrary } from '../library/page-library.ts';
import { useAttempt } from '../library/views/use-attempt.ts';
import { SheetFile } from '../practise/sheet-file.tsx';
import { Choice } from '../shell/choice.tsx';
import { assignmentOf } from './assignment-of.ts';

interface Props {
  readonly people: readonly ListedPerson[];
  readonly sheets: readonly ListedSheet[];
  /** Called with what was done. */
  readonly changed: (sentence: string) => void;
}

const example = 'title: Week 7\n>RLR >LRL ; times: 4\nR>LR L>RL ; times: 4';

/**
 * Hands out a sheet: written here, opened from a file or one that is kept; for whom, until when, how fast, with a word.
 */
export function HandOut({ people, sheets, changed }: Props) {
  const [text, setText] = useState('');
  const [file, setFile] = useState<string | null>(null);
  const [person, setPerson] = useState('');
  const [dueDay, setDueDay] = useState('');
  const [tempo, setTempo] = useState('');
  const [note, setNote] = useState('');
  const { fault, setFault, attempt } = useAttempt();
  const take = (taken: string, name: string | null) => {
    setText(taken);
    setFile(name);
    setFault(null);
    // What a sheet's own headings say holds until something else is chosen.
    const parsed = parseSheet(taken);
    const assigned = parsed.ok ? parsed.sheet.assigned : undefined;
    if (assigned === undefined) return;
    setDueDay(assigned.due ?? '');
    setNote(assigned.note);
    const named = people.filter(({ name: known }) => known.toLowerCase() === assigned.player.toLowerCase());
    if (named[0] !== undefined) setPerson(named[0].id);
  };
  const handOut = async () => {
    const made = assignmentOf({ text, personId: person === '' ? null : person, dueDay, tempo, note });
    if (!made.ok) return setFault(made.sentence);
    const whom = people.find(({ id }) => id === person)?.name ?? 'anybody';
    await attempt(pageLibrary().setAssignment(made.assignment), () => {
      setText('');
      setFile(null);
      changed(
        `${made.title === '' ? 'The sheet' : made.title} is handed out to ${whom}. Save it above to send it.`,
      );
    });
  };
  return (
    <section class="hand-out" aria-labelledby="hand-out">
      <h2 id="hand-out">Hand out a sheet</h2>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void handOut();
        }}
      >
        <div class="hand-out-sheet">
          <label class="field">
            <span>The sheet: a line for each exercise</span>
            <textarea
              rows={5}
              spellcheck={false}
              placeholder={example}
              value={text}
              onInput={({ currentTarget }) => setText(currentTarget.value)}
            />
          </label>
          <div>
            <SheetFile
              sheet={file === null ? null : { name: file, text }}
              fault={null}
              open={({ name, text: opened }) => take(opened, name)}
            />
            {sheets.length > 0 && (
              <Choice
                label="Or one that is kept"
                value=""
                set={(id) => take(sheets.find((sheet) => sheet.id === id)?.text ?? '', null)}
              >
                <option value="">choose</option>
                {sheets.map(({ id, title, text: kept }) => (
                  <option key={id} value={id}>
                    {title === '' ? kept.slice(0, 40) : title}
                  </option>
                ))}
              </Choice>
            )}
          </div>
        </div>
        <div class="week-fields">
          <Choice label="For" value={person} set={setPerson}>
            <option value="">anybody</option>
            {people.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </Choice>
          <label class="field">
            <span>Until (or nothing)</span>
            <input
              type="date"
              value={dueDay}
              onInput={({ currentTarget }) => setDueDay(currentTarget.value)}
            />
          </label>
          <label class="field">
            <span>Beats per minute (or as written)</span>
            <input
              type="text"
              inputMode="decimal"
              value={tempo}
              onInput={({ currentTarget }) => setTempo(currentTarget.value)}
            />
          </label>
          <label class="field">
            <span>A word to the player</span>
            <input type="text" value={note} onInput={({ currentTarget }) => setNote(currentTarget.value)} />
          </label>
        </div>
        <button type="submit" class="main" disabled={text.trim() === ''}>
          Hand out
        </button>
        <p class="fault sheet-fault" role="status">
          {fault}
        </p>
      </form>
    </section>
  );
}
