import '../library/views/takes.css';
import '../weeks/weeks.css';
import './people.css';
import { useState } from 'preact/hooks';
import { LibraryWays } from '../library/views/library-ways.tsx';
import { PlayerChoice } from '../library/views/player-choice.tsx';
import { useLibrary } from '../library/views/use-library.ts';
import { PersonCard } from './person-card.tsx';

/** Everyone of whom takes are kept: names, takes, progress; renaming, joining two into one, deleting. */
export function PeopleView() {
  const { value: people, fault, again } = useLibrary((library) => library.listPeople());
  const [said, setSaid] = useState('');
  return (
    <>
      <LibraryWays />
      <h1>People</h1>
      {fault !== null && (
        <p class="fault" role="alert">
          {fault}
        </p>
      )}
      <p role="status">{said}</p>
      {people === null ? (
        fault === null && <p class="quiet">One moment …</p>
      ) : (
        <>
          {people.length === 0 && (
            <p>
              Nobody has a name here yet. Add one, and new takes belong to that player until another is
              chosen.
            </p>
          )}
          <ul class="people">
            {people.map((person) => (
              <PersonCard
                key={person.id}
                person={person}
                others={people.filter(({ id }) => id !== person.id)}
                changed={(sentence) => {
                  setSaid(sentence);
                  again();
                }}
              />
            ))}
          </ul>
          <section aria-labelledby="who">
            <h2 id="who">Who plays now</h2>
            <PlayerChoice key={people.map(({ id }) => id).join()} people={people} changed={again} />
          </section>
        </>
      )}
    </>
  );
}
