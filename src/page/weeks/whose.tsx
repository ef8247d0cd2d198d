import type { ListedPerson } from '../../library/people.ts';
import { Choice } from '../shell/choice.tsx';

interface Props {
  readonly people: readonly ListedPerson[];
  readonly person: string | null;
  readonly choose: (person: string | null) => void;
}

/** Takes without a player, as a name. */
const withoutName = 'Takes without a name';

/** Whose takes are shown. */
export function Whose({ people, person, choose }: Props) {
  return (
    <Choice label="Player" value={person ?? ''} set={(id) => choose(id === '' ? null : id)}>
      {people.map(({ id, name }) => (
        <option key={id} value={id}>
          {name}
        </option>
      ))}
      <option value="">takes without a name</option>
    </Choice>
  );
}

/** The name of a player, or of nobody. */
export const nameOf = (people: readonly ListedPerson[], person: string | null): string =>
  people.find(({ id }) => id === person)?.name ?? withoutName;
