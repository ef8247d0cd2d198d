import type { QueuedFile } from '../import-queue.ts';
import { counted } from '../take-words.ts';

interface Props {
  readonly files: readonly QueuedFile[];
  readonly stop: () => void;
  readonly clear: () => void;
}

const marks: Readonly<Record<QueuedFile['state'], string>> = {
  waiting: '…',
  working: '▸',
  kept: '✓',
  'already-there': '=',
  failed: '✗',
};

/** Files on their way into the library, each with what became of it. */
export function QueueList({ files, stop, clear }: Props) {
  const open = files.filter(({ state }) => state === 'waiting' || state === 'working').length;
  const done = files.length - open;
  const failed = files.filter(({ state }) => state === 'failed').length;
  return (
    <section class="queue" aria-labelledby="queue-title">
      <h3 id="queue-title">
        <span role="status">
          {open > 0
            ? `${done} of ${counted(files.length, 'file')} done`
            : `All done: ${counted(files.length, 'file')}${failed > 0 ? `, ${failed} not taken in` : ''}`}
        </span>
      </h3>
      <progress max={files.length} value={done} aria-label="Files done" />
      <ul>
        {files.map(({ number, file, state, sentence, ids }) => (
          <li key={number} class={state}>
            <span aria-hidden="true">{marks[state]}</span>
            <strong>{file.name}</strong>
            <span>{sentence}</span>
            {ids.length === 1 && <a href={`#/takes/${ids[0]}`}>Open</a>}
          </li>
        ))}
      </ul>
      <div class="actions">
        {files.some(({ state }) => state === 'waiting') && (
          <button type="button" onClick={stop}>
            Stop after this one
          </button>
        )}
        {open === 0 && (
          <button type="button" onClick={clear}>
            Clear this list
          </button>
        )}
      </div>
    </section>
  );
}
