/** Something that was written down by hand. */
interface Written {
  readonly id: string;
  readonly words: string;
  /** What is deleted, for who doesn't see the list. */
  readonly called: string;
}

interface Props {
  readonly entries: readonly Written[];
  readonly remove: (id: string) => void;
}

/** What was written down, each with a way to take it back. */
export function WrittenList({ entries, remove }: Props) {
  if (entries.length === 0) return null;
  return (
    <ul class="written-list">
      {entries.map(({ id, words, called }) => (
        <li key={id}>
          <span>{words}</span>
          <button type="button" aria-label={`Delete ${called}`} onClick={() => remove(id)}>
            Delete
          </button>
        </li>
      ))}
    </ul>
  );
}
