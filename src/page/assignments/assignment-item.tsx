import { useState } from 'preact/hooks';
import { assignmentState, assignmentWords, playedWords } from '../../core/progress/assignment-words.ts';
import { capital } from '../../core/result/figures.ts';
import { assignmentSheet } from '../../library/assignment-sheet.ts';
import type { PlayedAssignment } from '../../library/open-assignments.ts';
import { plainWords } from '../../library/take-file/take-file-name.ts';
import { localDay } from '../library/local-day.ts';
import { pageLibrary } from '../library/page-library.ts';
import { saveFile } from '../library/save-file.ts';
import { dayInWords } from '../library/take-words.ts';
import { Confirm } from '../library/views/confirm.tsx';
import { useAttempt } from '../library/views/use-attempt.ts';

interface Props {
  readonly assignment: PlayedAssignment;
  /** For whom; empty for anybody. */
  readonly player: string;
  /** Called with what was done. */
  readonly changed: (sentence: string) => void;
}

/** One assignment: for whom, until when, what was played to it, and what can be done with it. */
export function AssignmentItem({ assignment, player, changed }: Props) {
  const { id, note, doneAt, plays } = assignment;
  const [asking, setAsking] = useState(false);
  const { fault, attempt } = useAttempt();
  const title = assignment.title === '' ? 'A sheet without a title' : assignment.title;
  const today = localDay(Date.now());
  const whom = player === '' ? 'anybody' : player;
  const finish = () => {
    const said = doneAt === null ? `${title} is done.` : `${title} is open again.`;
    const finished = { id, doneAt: doneAt === null ? Date.now() : null };
    void attempt(pageLibrary().finishAssignment(finished), () => changed(said));
  };
  const save = () => {
    const name = plainWords(`${player} ${assignment.title}`) || 'sheet';
    const text = assignmentSheet(assignment, player);
    saveFile(`${name}.sheet`, new Blob([text], { type: 'text/plain' }));
  };
  return (
    <li class={assignmentState(assignment, today)}>
      <p>
        <strong>
          {whom}: {title}
        </strong>
        <br />
        {capital(assignmentWords(assignment, today, dayInWords))}; {playedWords(plays, dayInWords)}.
      </p>
      {note !== '' && <p class="assignment-note">{note}</p>}
      <div class="actions">
        <button type="button" onClick={save}>
          Save the sheet to send
          <span class="unseen">
            : {title}, {whom}
          </span>
        </button>
        <button type="button" onClick={finish}>
          {doneAt === null ? 'Done' : 'Open again'}
          <span class="unseen">
            : {title}, {whom}
          </span>
        </button>
        <button type="button" onClick={() => setAsking(true)}>
          Delete
          <span class="unseen">
            : {title}, {whom}
          </span>{' '}
          …
        </button>
      </div>
      <p class="fault" role="status">
        {fault}
      </p>
      {asking && (
        <Confirm
          title={`Delete the assignment ${title}?`}
          action="Delete for good"
          act={() => {
            setAsking(false);
            void attempt(pageLibrary().deleteAssignment(id), () => changed(`${title} is deleted.`));
          }}
          leave={() => setAsking(false)}
        >
          <p>The takes that were played to it stay.</p>
        </Confirm>
      )}
    </li>
  );
}
