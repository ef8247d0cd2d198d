import { useState } from 'preact/hooks';
import { pageLibrary } from '../page-library.ts';
import { counted } from '../take-words.ts';
import { Confirm } from './confirm.tsx';
import { useAttempt } from './use-attempt.ts';

interface Props {
  readonly ids: readonly string[];
  /** Called once they are gone. */
  readonly deleted: () => void;
}

/** A button that deletes takes for good, after asking. */
export function DeleteTakes({ ids, deleted }: Props) {
  const [asking, setAsking] = useState(false);
  const { fault, attempt } = useAttempt();
  const done = () => {
    setAsking(false);
    deleted();
  };
  const many = ids.length > 1;
  return (
    <>
      <button
        type="button"
        disabled={ids.length === 0}
        aria-label={many ? `Delete ${counted(ids.length, 'take')}` : 'Delete'}
        onClick={() => setAsking(true)}
      >
        Delete
      </button>
      {asking && (
        <Confirm
          title={many ? `Delete ${counted(ids.length, 'take')} for good?` : 'Delete this take for good?'}
          action="Delete for good"
          act={() => void attempt(pageLibrary().deleteTakes(ids), done)}
          leave={() => setAsking(false)}
        >
          <p>
            {many ? 'Their recordings, results and remarks' : 'Its recording, result and remarks'} will be
            gone from this device and can't be brought back. Export {many ? 'them' : 'it'} first if in doubt.
          </p>
          <p class="fault" role="status">
            {fault}
          </p>
        </Confirm>
      )}
    </>
  );
}
