import '../library/views/takes.css';
import '../weeks/weeks.css';
import '../load/practice-time.css';
import './assignments.css';
import { useState } from 'preact/hooks';
import type { LibraryClient } from '../../library/library-calls.ts';
import { LibraryWays } from '../library/views/library-ways.tsx';
import { useLibrary } from '../library/views/use-library.ts';
import { AssignmentItem } from './assignment-item.tsx';
import { HandOut } from './hand-out.tsx';

const everything = async (library: LibraryClient) => ({
  people: await library.listPeople(),
  sheets: await library.listSheets(30),
  assignments: await library.assignmentsPlayed(),
});

/** What was handed out, open and done, with what was played to it; and handing out more. */
export function AssignmentsView() {
  const { value, fault, again } = useLibrary(everything);
  const [said, setSaid] = useState('');
  const changed = (sentence: string) => {
    setSaid(sentence);
    again();
  };
  const nameOf = (id: string | null) =>
    id === null ? '' : (value?.people.find((person) => person.id === id)?.name ?? '');
  const items = (done: boolean) =>
    (value?.assignments ?? [])
      .filter(({ doneAt }) => (doneAt !== null) === done)
      .map((one) => (
        <AssignmentItem key={one.id} assignment={one} player={nameOf(one.personId)} changed={changed} />
      ));
  const [open, done] = [items(false), items(true)];
  return (
    <>
      <LibraryWays />
      <h1>Assignments</h1>
      {fault !== null && (
        <p class="fault" role="alert">
          {fault}
        </p>
      )}
      <p role="status">{said}</p>
      {value === null ? (
        fault === null && <p class="quiet">One moment …</p>
      ) : (
        <>
          <section aria-labelledby="open-assignments">
            <h2 id="open-assignments">Open</h2>
            {open.length === 0 ? <p>Nothing is open.</p> : <ul class="assignment-list">{open}</ul>}
          </section>
          {done.length > 0 && (
            <details>
              <summary>Done: {done.length}</summary>
              <ul class="assignment-list">{done}</ul>
            </details>
          )}
          <HandOut people={value.people} sheets={value.sheets} changed={changed} />
        </>
      )}
    </>
  );
}
