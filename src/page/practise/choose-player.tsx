import { PlayerChoice } from '../library/views/player-choice.tsx';
import { useLibrary } from '../library/views/use-library.ts';

/** The list of players, with a place to type another name. */
export function ChoosePlayer() {
  const { value, fault, again } = useLibrary((library) => library.listPeople());
  if (fault !== null)
    return (
      <p class="fault" role="alert">
        {fault}
      </p>
    );
  return value === null ? <p class="quiet">One moment …</p> : <PlayerChoice people={value} changed={again} />;
}
