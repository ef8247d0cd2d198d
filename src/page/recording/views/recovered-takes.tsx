import { useEffect, useState } from 'preact/hooks';
import { writeWav } from '../../../formats/write-wav.ts';
import { saveFile } from '../../library/save-file.ts';
import { Confirm } from '../../library/views/confirm.tsx';
import { type RecoveredSound, recoverTakes, type UnfinishedTake } from '../kept/recover-takes.ts';
import './recording.css';

interface Props {
  /** Grades a recovered recording and keeps it; what keeps it removes this copy. */
  readonly grade: (take: UnfinishedTake, sound: RecoveredSound) => Promise<void>;
}

/** Recordings that a closed or killed page left behind: grade, save as a file, or delete. */
export function RecoveredTakes({ grade }: Props) {
  const [takes, setTakes] = useState<readonly UnfinishedTake[]>([]);
  const [busy, setBusy] = useState<string | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const [deleting, setDeleting] = useState<UnfinishedTake | null>(null);
  useEffect(() => {
    void recoverTakes().then(setTakes);
  }, []);
  if (takes.length === 0) return null;
  const gone = (take: UnfinishedTake) => setTakes((old) => old.filter(({ id }) => id !== take.id));
  const doing = async (take: UnfinishedTake, what: () => Promise<void>) => {
    setBusy(take.id);
    setFault(null);
    try {
      await what();
    } catch (error) {
      setFault(error instanceof Error ? error.message : String(error));
    }
    setBusy(null);
  };
  const gradeNow = (take: UnfinishedTake) =>
    doing(take, async () => {
      await grade(take, await take.load());
      gone(take);
    });
  const save = (take: UnfinishedTake) =>
    doing(take, async () => {
      const { samples, sampleRate } = await take.load();
      const bytes = writeWav({ channels: [samples], sampleRate, depth: 'float32' });
      saveFile(
        take.name.endsWith('.wav') ? take.name : `${take.name}.wav`,
        new Blob([bytes], { type: 'audio/wav' }),
      );
    });
  const remove = async (take: UnfinishedTake) => {
    setDeleting(null);
    await doing(take, async () => {
      await take.remove();
      gone(take);
    });
  };
  return (
    <section class="unfinished" aria-labelledby="unfinished-title">
      <h2 id="unfinished-title">
        {takes.length === 1 ? 'A recording is still here' : `${takes.length} recordings are still here`}
      </h2>
      <p>
        The page was closed before {takes.length === 1 ? 'it was' : 'they were'} done. Nothing of it is lost.
      </p>
      <ul>
        {takes.map((take) => (
          <li key={take.id}>
            <p>
              <strong>{momentWords(take.startedAt)}</strong>, {lengthWords(take.seconds)}
            </p>
            <div class="actions">
              <button type="button" class="main" disabled={busy !== null} onClick={() => void gradeNow(take)}>
                {busy === take.id ? 'One moment …' : 'Grade and keep it'}
              </button>
              <button type="button" disabled={busy !== null} onClick={() => void save(take)}>
                Save as a file
              </button>
              <button type="button" disabled={busy !== null} onClick={() => setDeleting(take)}>
                Delete it
              </button>
            </div>
          </li>
        ))}
      </ul>
      {fault !== null && (
        <p class="fault" role="alert">
          {fault}
        </p>
      )}
      {deleting !== null && (
        <Confirm
          title="Delete this recording?"
          action="Delete it for good"
          act={() => void remove(deleting)}
          leave={() => setDeleting(null)}
        >
          <p>
            {momentWords(deleting.startedAt)}, {lengthWords(deleting.seconds)}. It can't be brought back.
          </p>
        </Confirm>
      )}
    </section>
  );
}

function momentWords(startedAt: string): string {
  const date = new Date(startedAt);
  if (Number.isNaN(date.getTime())) return 'Some time ago';
  return date.toLocaleString('en-GB', {
    weekday: 'long',
    day: 'numeric',
    month: 'long',
    hour: '2-digit',
    minute: '2-digit',
  });
}

function lengthWords(seconds: number): string {
  const whole = Math.round(seconds);
  return whole < 60
    ? `${whole} seconds`
    : `${Math.floor(whole / 60)} min ${String(whole % 60).padStart(2, '0')} s`;
}
