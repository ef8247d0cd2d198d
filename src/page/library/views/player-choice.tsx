import { useState } from 'preact/hooks';
import type { ListedPerson } from '../../../library/people.ts';
import { Choice } from '../../shell/choice.tsx';
import { setCurrentPlayer } from '../current-player.ts';
import { pageLibrary } from '../page-library.ts';
import { usePlayer } from '../use-player.ts';
import { useAttempt } from './use-attempt.ts';

interface Props {
  readonly people: readonly ListedPerson[];
  /** Called after a player was chosen or added. */
  readonly changed: () => void;
}

/** Whom new takes belong to: a name on the list, a new one, or nobody in particular. */
export function PlayerChoice({ people, changed }: Props) {
  const player = usePlayer();
  const [name, setName] = useState('');
  const { fault, attempt } = useAttempt();
  const choose = (id: string | null) => {
    setCurrentPlayer(id);
    changed();
  };
  const add = () => {
    const person = {
      id: crypto.randomUUID(),
      name,
      role: 'player',
      note: '',
      createdAt: Date.now(),
    } as const;
    return attempt(pageLibrary().addPerson(person), () => {
      setName('');
      choose(person.id);
    });
  };
  return (
    <div class="player-choice">
      <Choice label="New takes belong to" value={player ?? ''} set={(id) => choose(id === '' ? null : id)}>
        <option value="">no name</option>
        {people.map(({ id, name: known }) => (
          <option key={id} value={id}>
            {known}
          </option>
        ))}
      </Choice>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void add();
        }}
      >
        <label class="field">
          <span>Another name</span>
          <input
            type="text"
            autocomplete="off"
            value={name}
            onInput={({ currentTarget }) => setName(currentTarget.value)}
          />
        </label>
        <button type="submit">Add</button>
      </form>
      <p class="fault" role="status">
        {fault}
      </p>
    </div>
  );
}
