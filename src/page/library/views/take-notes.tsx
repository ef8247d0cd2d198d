import type { ListedTake } from '../../../library/listed-takes.ts';
import type { ListedPerson } from '../../../library/people.ts';
import { Choice } from '../../shell/choice.tsx';
import { pageLibrary } from '../page-library.ts';
import { useAttempt } from './use-attempt.ts';

interface Props {
  readonly take: ListedTake;
  readonly people: readonly ListedPerson[];
  readonly changed: () => void;
}

const fields = [
  { name: 'technique', label: 'Technique' },
  { name: 'pad', label: 'Pad or drum' },
  { name: 'sticks', label: 'Sticks' },
  { name: 'device', label: 'Recorded with' },
] as const;

/** What a player writes down about a take: whose it is, how it was played, on what. None of it is heard. */
export function TakeNotes({ take, people, changed }: Props) {
  const { id } = take;
  const { fault, attempt } = useAttempt();
  const library = pageLibrary();
  return (
    <details class="take-notes">
      <summary>Player, pad, sticks, tags</summary>
      <div class="filter-fields">
        <Choice
          label="Player"
          value={take.personId ?? ''}
          set={(to) => attempt(library.giveTake({ takeId: id, personId: to === '' ? null : to }), changed)}
        >
          <option value="">no name</option>
          {people.map((person) => (
            <option key={person.id} value={person.id}>
              {person.name}
            </option>
          ))}
        </Choice>
        {fields.map(({ name, label }) => (
          <label key={name} class="field">
            <span>{label}</span>
            <input
              type="text"
              value={take[name]}
              onChange={({ currentTarget }) =>
                attempt(library.changeTake({ id, [name]: currentTarget.value }), changed)
              }
            />
          </label>
        ))}
        <label class="field">
          <span>Tags (a, b, c)</span>
          <input
            type="text"
            value={take.tags.join(', ')}
            onChange={({ currentTarget }) =>
              attempt(library.changeTake({ id, tags: currentTarget.value.split(',') }), changed)
            }
          />
        </label>
      </div>
      <p class="fault" role="status">
        {fault}
      </p>
    </details>
  );
}
