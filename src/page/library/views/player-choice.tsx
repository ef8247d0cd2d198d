import { useState } from 'preact/hooks';
import type { ListedPerson } from '../../../library/people.ts';
import { Choice } from '../../shell/choice.tsx';
import { currentPlayer, setCurrentPlayer } from '../current-player.ts';
import { faultInWords } from '../fault-words.ts';
import { pageLibrary } from '../page-library.ts';

interface Props {
  readonly people: readonly ListedPerson[];
  /** Called after a player was chosen or added. */
  readonly changed: () => void;
}

/** Whom new takes belong to: a name on the list, a new one, or nobody in particular. */
export function PlayerChoice({ people, changed }: Props) {
  const [player, setPlayer] = useState(currentPlayer);
  const [name, setName] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  const choose = (id: string | null) => {
    setCurrentPlayer(id);
    setPlayer(id);
    changed();
  };
  const add = async () => {
    const id = crypto.randomUUID();
    try {
      await pageLibrary().addPerson({ id, name, role: 'player', note: '', createdAt: Date.now() });
      setName('');
      setFault(null);
      choose(id);
    } catch (error) {
      setFault(faultInWords(error));
    }
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
