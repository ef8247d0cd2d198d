import { useState } from 'preact/hooks';
import { faultInWords } from '../fault-words.ts';
import { pageLibrary } from '../page-library.ts';
import { counted } from '../take-words.ts';
import { Confirm } from './confirm.tsx';

interface Props {
  readonly ids: readonly string[];
  /** Called once they are gone. */
  readonly deleted: () => void;
}

/** A button that deletes takes for good, after asking. */
export function DeleteTakes({ ids, deleted }: Props) {
  const [asking, setAsking] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  const act = async () => {
    try {
      await pageLibrary().deleteTakes(ids);
      setAsking(false);
      deleted();
    } catch (error) {
      setFault(faultInWords(error));
    }
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
          act={act}
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
