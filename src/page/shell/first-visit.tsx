import { useState } from 'preact/hooks';
import { readKept, writeKept } from './kept.ts';

const key = 'read-first-words';

/** What the page is, in three sentences, until they have been read. */
export function FirstVisit() {
  const [read, setRead] = useState(() => readKept(key) === true);
  if (read) return null;
  return (
    <section class="first-visit" aria-label="What this page is">
      <p>
        Choose an exercise, put the phone or microphone an arm's length from your pad, and play along with the
        click. When you stop, you see how even your notes, accents and hands were, and what to work on next.
        Everything happens on this device: nothing you play is sent anywhere.
      </p>
      <button
        type="button"
        onClick={() => {
          writeKept(key, true);
          setRead(true);
        }}
      >
        Got it
      </button>
    </section>
  );
}
