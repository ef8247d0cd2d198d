import { useEffect, useRef, useState } from 'preact/hooks';
import { takeTime } from '../../../core/result/figures.ts';
import { momentOf } from '../../../core/result/moment-of.ts';
import type { Remark } from '../../../library/remarks.ts';
import { pageLibrary } from '../page-library.ts';
import { useAttempt } from './use-attempt.ts';

interface Props {
  readonly takeId: string;
  readonly remarks: readonly Remark[];
  /** Length of the recording, s. */
  readonly duration: number;
  /** The moment that was chosen by ear for the next remark, s; another object each time. */
  readonly wanted: { readonly at: number } | null;
  /** Lets a moment be heard, s; null where there is no sound. */
  readonly play: ((moment: number) => void) | null;
  readonly changed: () => void;
}

/** What was written about a take, each remark at its moment, and a place to write one. */
export function TakeRemarks({ takeId, remarks, duration, wanted, play, changed }: Props) {
  const [text, setText] = useState('');
  const [moment, setMoment] = useState('');
  const { fault, setFault, attempt } = useAttempt();
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (wanted === null) return;
    // Rounded down, so that it never lies behind the recording's end.
    setMoment(takeTime(Math.floor(10 * Math.min(wanted.at, duration)) / 10));
    input.current?.focus();
  }, [wanted]);
  const write = async () => {
    const at = momentOf(moment);
    if (at !== null && !(at <= duration)) {
      setFault(`Write the moment like 0:12.5; the recording is ${takeTime(duration)} long.`);
      return;
    }
    const now = Date.now();
    const remark = {
      id: crypto.randomUUID(),
      takeId,
      moment: at,
      text,
      author: '',
      writtenAt: now,
      changedAt: now,
    };
    if (!(await attempt(pageLibrary().writeRemark(remark), changed))) return;
    setText('');
    setMoment('');
  };
  return (
    <section aria-labelledby="remarks">
      <h2 id="remarks">Remarks</h2>
      {remarks.length > 0 && (
        <ul class="remarks">
          {remarks.map((remark) => (
            <li key={remark.id}>
              <span>
                {remark.moment === null ? (
                  ''
                ) : play === null ? (
                  <strong>{takeTime(remark.moment)} </strong>
                ) : (
                  <button
                    type="button"
                    aria-label={`Play from ${takeTime(remark.moment)}`}
                    onClick={() => play(remark.moment!)}
                  >
                    ▶ {takeTime(remark.moment)}
                  </button>
                )}{' '}
                {remark.text}
                {remark.author === '' ? '' : <span class="quiet"> ({remark.author})</span>}
              </span>
              <button
                type="button"
                aria-label={`Delete the remark: ${remark.text.slice(0, 40)}`}
                onClick={() => attempt(pageLibrary().deleteRemark(remark.id), changed)}
              >
                Delete
              </button>
            </li>
          ))}
        </ul>
      )}
      <form
        class="remark-form"
        onSubmit={(event) => {
          event.preventDefault();
          void write();
        }}
      >
        <label class="field">
          <span>A remark</span>
          <input
            type="text"
            ref={input}
            value={text}
            onInput={({ currentTarget }) => setText(currentTarget.value)}
          />
        </label>
        <label class="field">
          <span>At (0:12.5), or nothing</span>
          <input
            type="text"
            inputMode="text"
            value={moment}
            onInput={({ currentTarget }) => setMoment(currentTarget.value)}
          />
        </label>
        <button type="submit" disabled={text.trim() === ''}>
          Write it down
        </button>
      </form>
      {play !== null && (
        <p class="quiet">
          While you listen in the report below, "Remark here" takes over the moment that you hear.
        </p>
      )}
      <p class="fault" role="status">
        {fault}
      </p>
    </section>
  );
}
