import { useState } from 'preact/hooks';
import type { LibraryClient } from '../../library/library-calls.ts';
import type { ListedPerson } from '../../library/people.ts';
import { currentPlayer, setCurrentPlayer } from '../library/current-player.ts';
import { counted } from '../library/take-words.ts';
import { Confirm } from '../library/views/confirm.tsx';

interface Props {
  readonly person: ListedPerson;
  readonly attempt: (work: (library: LibraryClient) => Promise<unknown>, sentence: string) => Promise<void>;
}

/** Deletes a person and everything kept of them, recordings too, after asking. */
export function DeletePerson({ person: { id, name, takes }, attempt }: Props) {
  const [asking, setAsking] = useState(false);
  const act = async () => {
    setAsking(false);
    await attempt(
      (library) => library.deletePerson(id),
      `${name} is deleted${takes === 0 ? '' : `, with ${counted(takes, 'take')} and their recordings`}.`,
    );
    if (currentPlayer() === id) setCurrentPlayer(null);
  };
  return (
    <>
      <button type="button" onClick={() => setAsking(true)}>
        Delete {name} …
      </button>
      {asking && (
        <Confirm
          title={`Delete ${name} for good?`}
          action="Delete for good"
          act={() => void act()}
          leave={() => setAsking(false)}
        >
          <p>
            {takes === 0
              ? 'No take is kept.'
              : `${counted(takes, 'take')} with recordings, results and remarks will be gone`}
            {takes === 0 ? ' Assignments' : ', and assignments'}, practice written down and notes
            {takes === 0 ? ' will be gone' : ' too'}. They can't be brought back. Export the takes first if in
            doubt; a copy that was made before still holds them.
          </p>
        </Confirm>
      )}
    </>
  );
}
