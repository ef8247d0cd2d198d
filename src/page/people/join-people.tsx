import { useState } from 'preact/hooks';
import type { LibraryClient } from '../../library/library-calls.ts';
import type { ListedPerson } from '../../library/people.ts';
import { currentPlayer, setCurrentPlayer } from '../library/current-player.ts';
import { counted } from '../library/take-words.ts';
import { Confirm } from '../library/views/confirm.tsx';
import { Choice } from '../shell/choice.tsx';

interface Props {
  readonly person: ListedPerson;
  readonly others: readonly ListedPerson[];
  readonly attempt: (work: (library: LibraryClient) => Promise<unknown>, sentence: string) => Promise<void>;
}

/** Makes one person of two who are the same one, after asking. */
export function JoinPeople({ person, others, attempt }: Props) {
  const [other, setOther] = useState('');
  const [asking, setAsking] = useState(false);
  const into = others.find(({ id }) => id === other);
  const act = async () => {
    if (into === undefined) return;
    setAsking(false);
    await attempt(
      (library) => library.mergePeople({ from: person.id, into: into.id }),
      `${person.name} and ${into.name} are one now: ${into.name}.`,
    );
    if (currentPlayer() === person.id) setCurrentPlayer(into.id);
  };
  return (
    <div class="person-form">
      <Choice label="Is the same person as" value={other} set={setOther}>
        <option value="">choose</option>
        {others.map(({ id, name, takes }) => (
          <option key={id} value={id}>
            {`${name}, ${counted(takes, 'take')}`}
          </option>
        ))}
      </Choice>
      <button type="button" disabled={into === undefined} onClick={() => setAsking(true)}>
        Make one of both
      </button>
      {asking && into !== undefined && (
        <Confirm
          title={`Make ${person.name} and ${into.name} one person?`}
          action="Make one of both"
          act={() => void act()}
          leave={() => setAsking(false)}
        >
          <p>
            {counted(person.takes, 'take')} of {person.name}, with all assignments, practice and notes, will
            belong to {into.name}. The name {person.name} goes. They can't be told apart again.
          </p>
        </Confirm>
      )}
    </div>
  );
}
