import type { LibraryClient } from '../../library/library-calls.ts';
import { dayInWords, playedInWords, scoreInWords, tempoInWords, timeInWords } from '../library/take-words.ts';
import { useLibrary } from '../library/views/use-library.ts';

const listed = 20;

/** A take, and the same player's other takes of its first exercise, newest first. */
const others = (id: string) => async (library: LibraryClient) => {
  const { take, result } = await library.readTake(id);
  const filter = { personId: take.personId, exerciseId: result.sheet.lines[0]?.id };
  const { takes } = await library.listTakes({ filter, limit: listed + 1 });
  return { take, takes: takes.filter((one) => one.id !== id).slice(0, listed) };
};

/** Asks which take another one is to be held against. */
export function OtherTake({ id }: { readonly id: string }) {
  const { value, fault } = useLibrary(others(id), [id]);
  if (fault !== null)
    return (
      <p class="fault" role="alert">
        {fault}
      </p>
    );
  if (value === null) return <p class="quiet">One moment …</p>;
  const { take, takes } = value;
  return (
    <>
      <p>
        <strong>{playedInWords(take)}</strong>, {dayInWords(take.day)}, {timeInWords(take.recordedAt)},{' '}
        {tempoInWords(take)}
      </p>
      {takes.length === 0 ? (
        <p>
          No other take of this exercise is kept for this player. Any two takes can be chosen in the list of{' '}
          <a href="#/takes">all takes</a>.
        </p>
      ) : (
        <>
          <h2>Against which take?</h2>
          <ul class="pair-list">
            {takes.map((one) => (
              <li key={one.id}>
                <a href={`#/compare/${one.id}/${id}`}>
                  <strong>
                    {dayInWords(one.day)}, {timeInWords(one.recordedAt)}
                  </strong>
                  <span>{tempoInWords(one)}</span>
                  <span>{scoreInWords(one)}</span>
                </a>
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}
