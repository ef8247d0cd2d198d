import { parseSheet } from '../../core/exercise/parse-sheet.ts';
import { writeSheet } from '../../core/exercise/write-sheet.ts';
import { assignmentState, assignmentWords, playedWords } from '../../core/progress/assignment-words.ts';
import { atTempo } from '../../library/assignment-sheet.ts';
import type { PlayedAssignment } from '../../library/open-assignments.ts';
import { localDay } from '../library/local-day.ts';
import { pageLibrary } from '../library/page-library.ts';
import { dayInWords } from '../library/take-words.ts';
import { usePlayer } from '../library/use-player.ts';
import { useLibrary } from '../library/views/use-library.ts';
import './assignments-due.css';

interface Props {
  /** Changes when another assignment may have come. */
  readonly on: unknown;
  readonly play: (sheet: { readonly name: string; readonly text: string }) => void;
}

/** What the player is to practise until when, with what was played to it; one press opens its sheet. */
export function AssignmentsDue({ on, play }: Props) {
  const player = usePlayer();
  const { value, fault, again } = useLibrary((library) => library.openAssignments(player), [player, on]);
  if (fault !== null) return <p class="fault">{fault}</p>;
  if (value === null || value.length === 0) return null;
  const today = localDay(Date.now());
  return (
    <section class="assignments-due" aria-labelledby="assignments">
      <h2 id="assignments">{value.length === 1 ? 'Your assignment' : 'Your assignments'}</h2>
      <ul>
        {value.map((one) => (
          <li key={one.id} class={assignmentState(one, today)}>
            <p>
              <strong>{titleOf(one)}</strong>: {assignmentWords(one, today, dayInWords)};{' '}
              {playedWords(one.plays, dayInWords)}.
            </p>
            {one.note !== '' && <p class="assignment-note">{one.note}</p>}
            <div class="buttons">
              <button type="button" onClick={() => play({ name: titleOf(one), text: textOf(one) })}>
                Open<span class="unseen"> {titleOf(one)}</span>
              </button>
              <button
                type="button"
                onClick={() =>
                  void pageLibrary().finishAssignment({ id: one.id, doneAt: Date.now() }).then(again)
                }
              >
                Done<span class="unseen">: {titleOf(one)}</span>
              </button>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}

const titleOf = ({ title }: PlayedAssignment): string => (title === '' ? 'A sheet without a title' : title);

/** Its sheet, at the assignment's own tempo where it has one. */
function textOf({ sheetText, bpm }: PlayedAssignment): string {
  const parsed = parseSheet(sheetText);
  if (bpm === null || !parsed.ok) return sheetText;
  const { title, lines } = parsed.sheet;
  return writeSheet({ title, lines: atTempo(lines, bpm) });
}
