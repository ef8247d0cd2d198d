import { guessWords } from '../../core/progress/guess-words.ts';
import { currentPlayer } from '../library/current-player.ts';
import { useLibrary } from '../library/views/use-library.ts';

const title = 'Your guesses so far';

interface Props {
  /** Whose guesses; those of whose turn it is unless given. */
  readonly personId?: string | null;
  /** Opened by a press, where there is little room. */
  readonly folded?: boolean;
  /** Asks anew when it changes. */
  readonly on?: unknown;
}

/** How well a player guesses their own takes, over all guesses kept; nothing where there is none. */
export function GuessRecords({ personId = currentPlayer(), folded = false, on }: Props) {
  const { value } = useLibrary((library) => library.judgedGuesses({ personId }), [personId, on]);
  if (value === null || value.length === 0) return null;
  const list = (
    <ul>
      {value.map((record) => (
        <li key={record.question}>{guessWords(record)}</li>
      ))}
    </ul>
  );
  return folded ? (
    <details class="guess-records">
      <summary>{title}</summary>
      {list}
    </details>
  ) : (
    <section class="guess-records" aria-labelledby="guess-records">
      <h2 id="guess-records">{title}</h2>
      {list}
    </section>
  );
}
