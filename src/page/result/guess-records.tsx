import { guessWords } from '../../core/progress/guess-words.ts';
import { currentPlayer } from '../library/current-player.ts';
import { useLibrary } from '../library/views/use-library.ts';

interface Props {
  /** Whose guesses; those of whose turn it is unless given. */
  readonly personId?: string | null;
  /** Asks anew when it changes. */
  readonly on?: unknown;
}

/** How well a player guesses his takes, over all guesses kept; nothing where there is none. */
export function GuessRecords({ personId = currentPlayer(), on }: Props) {
  const { value } = useLibrary((library) => library.judgedGuesses({ personId }), [personId, on]);
  if (value === null || value.length === 0) return null;
  return (
    <section class="guess-records" aria-labelledby="guess-records">
      <h2 id="guess-records">Your guesses so far</h2>
      <ul>
        {value.map((record) => (
          <li key={record.question}>{guessWords(record)}</li>
        ))}
      </ul>
    </section>
  );
}
